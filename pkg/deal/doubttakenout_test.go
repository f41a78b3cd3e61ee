package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// What comes out whole, by its own line or with other work, and is not put back is doubted once
// for the room; not where something else takes its place, a line of the file tells of it, or the
// file says that none is wanted.
func TestWhatIsTakenOutAndNotPutBackIsDoubted(t *testing.T) {
	places := map[string]string{
		"kitchen": "rooms: {kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 10' x 2', sink: 1}, work: {WORK}LEFT}}\n",
		"bath":    "rooms: {bath: {size: 9' x 10', doors: 1, fixed: {tub: 5' x 2.5', shower: 3' x 3', vanity: 3' x 2', toilet: 1, sink: 1}, work: {WORK}LEFT}}\n",
		"outside": "outside: {deck: 12' x 10', work: {WORK}LEFT}\n",
	}
	for _, c := range []struct{ place, work, left, more, says string }{
		{"kitchen", "kitchen cabinets: $9400", "", "", "the old counter and sink of kitchen come out, and no work puts new ones in"},
		{"kitchen", "strip cabinets", "", "", "the old cabinets, counter and sink of kitchen come out, and no work puts new ones in"},
		{"kitchen", "strip counter", "", "", "the old counter and sink of kitchen come out, and no work puts new ones in"},
		{"kitchen", "kitchen cabinets: $9400, stone counter", "", "", ""},
		{"kitchen", "kitchen cabinets: $9400", "laminate counter", "", ""},
		{"kitchen", "kitchen cabinets: $9400", "stone counter", "", ""},
		{"kitchen", "kitchen cabinets, stone counter", "sink and faucet set", "", ""},
		{"kitchen", "kitchen cabinets: $9400, sink and faucet set", "", "renovation: {lines: [{trade: shop, work: countertops, amount: $3k}]}\n", ""},
		{"kitchen", "kitchen cabinets, stone counter", "strip counter", "", ""},
		{"bath", "take out tub, tub rough-in, tub surround tile", "", "", `"take out tub" takes out all of the tub of bath, and no work makes it new`},
		{"bath", "take out tub, tub", "", "", ""},
		{"bath", "take out tub, tile shower walls", "", "", ""},
		{"bath", "take out tub", "tub", "", ""},
		{"bath", "take out shower, tub", "", "", ""},
		{"bath", "take out shower", "", "", `"take out shower" takes out all of the shower pan of bath, and no work makes it new`},
		{"bath", "take out vanity", "", "", `"take out vanity" takes out all of the vanity of bath, and no work makes it new`},
		{"bath", "take out vanity, sink and faucet set", "", "", ""},
		{"bath", "take out toilet", "", "", `"take out toilet" takes out all of the toilet of bath, and no work makes it new`},
		{"bath", "tub, vanity, toilet, shower base", "", "", ""},
		{"bath", "strip floor tile", "", "", `"strip floor tile" takes out all of the floor of bath, and no work makes it new`},
		{"bath", "strip floor tile: {by: hired, part: 20%}", "", "", ""},
		{"bath", "strip floor tile, refinish wood floor", "", "", ""},
		{"bath", "strip floor tile, paint concrete floor", "", "", ""},
		{"outside", "deck tear-out", "", "", `"deck tear-out" takes out all of the deck frame of outside, and no work makes it new`},
		{"outside", "deck tear-out", "deck frame", "", ""},
	} {
		left := ""
		if c.left != "" {
			left = ", without: [" + c.left + "]"
		}
		_, found := deal.Read("house.yaml", []byte(walked+c.more+strings.NewReplacer("WORK", worksOf(c.work), "LEFT", left).Replace(places[c.place])))
		var got []string
		for _, d := range found {
			switch d.Code {
			case "not-put-back":
				got = append(got, d.Message)
			case "without-unneeded", "unknown-key", "unknown-item":
				t.Error(c.work, c.left, d.Message)
			}
		}
		require.Equal(t, c.says, strings.Join(got, "; "), c.work)
	}
}
