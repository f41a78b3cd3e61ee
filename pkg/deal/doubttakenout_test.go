package deal_test

import (
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/pricebook"
)

// What comes out whole, by its own line or with other work, and is not put back is doubted once
// for the room; not where something else takes its place, a line of the file tells of it, or the
// file says that none is wanted.
func TestWhatIsTakenOutAndNotPutBackIsDoubted(t *testing.T) {
	places := map[string]string{
		"kitchen":     "rooms: {kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 10' x 2', sink: 1}, work: {WORK}LEFT}}\n",
		"bath":        "rooms: {bath: {size: 9' x 10', doors: 1, fixed: {tub: 5' x 2.5', shower: 3' x 3', vanity: 3' x 2', toilet: 1, sink: 1}, work: {WORK}LEFT}}\n",
		"shower room": "rooms: {shower room: {size: 9' x 10', doors: 1, fixed: {shower: 3' x 3'}, work: {WORK}LEFT}}\n",
		"den":         "rooms: {den: {size: 9' x 10', doors: 1, windows: 1, stairs: 13, work: {WORK}LEFT}}\n",
		"layered den": "rooms: {layered den: {size: 9' x 10', doors: 1, layers: [carpet, wood], work: {WORK}LEFT}}\n",
		"outside":     "outside: {deck: 12' x 10', work: {WORK}LEFT}\n",
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
		{"kitchen", "strip backsplash tile", "", "", `"strip backsplash tile" takes out all of the backsplash of kitchen, and no work makes it new`},
		{"kitchen", "strip backsplash tile, tile backsplash", "", "", ""},
		{"kitchen", "strip backsplash tile", "tile backsplash", "", ""},
		{"kitchen", "take out appliances", "", "", `"take out appliances" takes out all of the appliances of kitchen, and no work makes it new`},
		{"kitchen", "take out appliances, range gas", "", "", ""},
		{"kitchen", "take out appliances", "range electric", "", ""},
		{"bath", "take out appliances", "", "", ""},
		{"bath", "strip wall tile", "", "", `"strip wall tile" takes out all of the tub walls of bath, and no work makes it new`},
		{"bath", "strip mortar bed wall tile, hang bath wall board, paint bath walls", "", "", `"strip mortar bed wall tile" takes out all of the tub walls of bath, and no work makes it new`},
		{"shower room", "strip wall tile", "", "", `"strip wall tile" takes out all of the shower walls of shower room, and no work makes it new`},
		{"shower room", "strip wall tile, tile shower walls", "", "", ""},
		{"shower room", "strip wall tile", "tile shower walls", "", ""},
		{"shower room", "strip wall tile, shower base: {quote: $1950}", "", "", ""}, // whose quote holds the panels
		{"bath", "strip wall tile, tub", "", "", ""},
		{"bath", "strip wall tile, tub surround tile", "", "", ""},
		{"bath", "strip wall tile", "tub surround tile", "", ""},
		{"bath", "strip wall tile", "tile shower walls", "", ""}, // a shower for the tub, which a quote holds
		{"shower room", "strip wall tile", "tub wall panels", "", ""},
		{"bath", "take out tub, shower base: {quote: $4800, count: 1, holds more: yes}", "tile shower walls", "", ""},
		{"bath", "take out tub", "tile shower walls", "", `"take out tub" takes out all of the tub of bath, and no work makes it new`}, // the walls alone are left
		{"bath", "strip wall tile", "", "renovation: {lines: [{trade: tile, work: surround, amount: $3k}]}\n", ""},
		{"bath", "strip tub surround panels", "", "", `"strip tub surround panels" takes out all of the tub walls of bath, and no work makes it new`},
		{"den", "strip nailed wood floor", "", "", `"strip nailed wood floor" takes out all of the floor of den, and no work makes it new`},
		{"den", "strip carpet", "", "", `"strip carpet" takes out all of the floor of den, and no work makes it new`},
		{"den", "strip carpet, refinish wood floor", "", "", ""},
		{"den", "strip sheet vinyl", "", "renovation: {lines: [{trade: carpet, amount: $3k}]}\n", ""},
		{"layered den", "strip carpet", "", "", ""},
		{"layered den", "strip carpet, strip nailed wood floor", "", "", `"strip carpet" takes out all of the floor of layered den, and no work makes it new`},
		{"den", "strip base", "", "", `"strip base" takes out all of the base of den, and no work makes it new`},
		{"den", "strip base", "", "renovation: {lines: [{trade: finish carpentry, work: trim, amount: $3k}]}\n", ""},
		{"den", "strip base", "", "renovation: {lines: [{trade: mason, work: basement wall, amount: $3k}]}\n", `"strip base" takes out all of the base of den, and no work makes it new`},
		{"den", "strip base, wainscot", "", "", ""},
		{"den", "strip casing, door casing", "", "", ""},
		{"den", "strip casing", "", "", `"strip casing" takes out all of the casing of den, and no work makes it new`},
		{"den", "take out inside doors", "", "", `"take out inside doors" takes out all of the inside doors of den, and no work makes it new`},
		{"den", "take out inside doors", "prehung inside door", "", ""},
		{"den", "prehung inside door", "", "", ""},
		{"den", "strip wallpaper", "", "", `"strip wallpaper" takes out all of the wall finish of den, and no work makes it new`},
		{"den", "strip wallpaper, paint walls", "", "", ""},
		{"den", "strip panelling, hang wall board", "", "", ""},
		{"den", "strip hung ceiling", "", "", `"strip hung ceiling" takes out all of the hung ceiling of den, and no work makes it new`},
		{"den", "strip hung ceiling, paint ceiling", "", "", ""},
		{"den", "strip hung ceiling", "hang ceiling board", "", ""},
		{"den", "strip stair carpet", "", "", `"strip stair carpet" takes out all of the stair treads of den, and no work makes it new`},
		{"den", "strip stair carpet, paint stair parts", "", "", ""},
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

// leftBare are the items of the starter book that take something away and need nothing new in its
// place, each with why.
var leftBare = map[string]string{
	"strip floor adhesive":       "takes off what lies between floors, with work that takes up a floor",
	"strip second floor layer":   "comes beside work that takes up the first layer",
	"strip second wall layer":    "the older wall stands behind it",
	"strip crown":                "a room does without crown",
	"strip closet shelves":       "brings new rod and shelf along",
	"strip painted trim":         "takes off paint; the trim stays",
	"strip second paper layer":   "comes beside work that strips the first",
	"roof second layer tear-off": "comes beside work that strips the first",
	"wall removal":               "is to be gone",
	"tree removal":               "is to be gone",
	"outbuilding removal":        "is to be gone",
	"oil tank removed":           "is to be gone",
	"oil tank buried removed":    "is to be gone",
	"hazard removal":             "is to be gone",
}

// Each item that takes something away says what needs a new one in its place, or is known to
// need none.
func TestAllThatIsTakenAwaySaysWhatIsPutBack(t *testing.T) {
	for _, name := range pricebook.Starter().Items() {
		it := pricebook.Starter().Item(name)
		goes := it.Trade == "demolition" || it.TakesOut != "" || away().MatchString(name)
		_, bare := leftBare[name]
		require.Equal(t, goes, bare != (it.TakesOut != ""), "%s", name)
	}
}

var away = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(strip|take out) |tear-o|remov`) })
