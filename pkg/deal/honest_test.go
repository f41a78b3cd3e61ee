package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// Plans that look like slips and are none. The houses are invented.
func TestHonestPlansAreLetStand(t *testing.T) {
	for _, c := range []struct {
		code, rooms, keys string
		told              int
	}{
		{"ceiling-low", "  cellar: {size: 24' x 22', ceiling: 6'3\", work: {paint block walls: own hands}}\n", "", 0},
		{"ceiling-low", "  cellar: {size: 24' x 22', ceiling: 5'3\", work: {paint block walls: own hands}}\n", "", 1},
		{"ceiling-low", "  lower level: {kind: basement, size: 24' x 22', ceiling: 6'3\", work: {paint block walls: own hands}}\n", "", 0},
		{"ceiling-low", "  lower level: {kind: basement, size: 24' x 22', ceiling: 5'3\", work: {paint block walls: own hands}}\n", "", 1},
		{"ceiling-low", "  basement bath: {size: 8' x 5', ceiling: 6'3\", work: {paint bath walls: own hands}}\n", "", 0},
		{"ceiling-low", "  den: {size: 24' x 22', ceiling: 6'3\", work: {paint walls: own hands}}\n", "", 1},
		{"ceiling-low", "  attic: {size: 20' x 20', living area: no, ceiling: 2' to 6' both sides, work: {paint walls: own hands}}\n", "", 0},
		{"ceiling-low", "  unfinished attic: {size: 20' x 20', ceiling: 2' to 6' both sides, work: {paint walls: own hands}}\n", "", 0},
		{"ceiling-low", "  attic bedroom: {size: 20' x 20', ceiling: 2' to 6' both sides, work: {paint walls: own hands}}\n", "", 1},
		{"ceiling-low", "  cellar: {size: 24' x 22', living area: no, ceiling: 5'3\", work: {paint block walls: own hands}}\n", "", 1},
		{"layer-stays", "  den: {size: 14' x 10', layers: [vinyl, wood], work: {tile floor: {part: 50%}, refinish wood floor: {part: 50%}}}\n", "", 1},
		{"layer-stays", "  den: {size: 14' x 10', layers: [vinyl, wood], work: {tile floor: {part: 50%}, refinish wood floor: {part: 50%}, strip sheet vinyl: hired}}\n", "", 0},
		{"layer-stays", "  den: {size: 14' x 10', layers: [carpet, wood], work: {tile floor: {part: 50%}, refinish wood floor: {part: 50%}}}\n", "", 0},
		{"layer-stays", "  den: {size: 14' x 10', layers: [vinyl], work: {nail-down oak floor: {part: 50%}, refinish wood floor: {part: 50%}}}\n", "", 0},
		{"layer-stays", "  den: {size: 14' x 10', layers: [vinyl, wood], work: {tile floor: {part: 60%}, resilient plank floor: {part: 40%}}}\n", "", 0},
		{"ceiling-flat", "  attic room: {size: 18' x 13', work: {paint walls: own hands}}\n", "", 1},
		{"ceiling-flat", "  attic room: {size: 18' x 13', work: {paint walls: own hands}}\n", "ceiling: 8 ft\n", 1},
		{"ceiling-flat", "  attic room: {size: 18' x 13', ceiling: 8 ft, work: {paint walls: own hands}}\n", "", 0},
		{"ceiling-flat", "  attic room: {size: 18' x 13', ceiling: 4' to 8' both sides, work: {paint walls: own hands}}\n", "", 0},
		{"ceiling-flat", "  attic room: {size: 18' x 13', work: {paint walls: $900}}\n", "", 0},
		{"ceiling-flat", "  attic: {size: 18' x 13', work: {carpet: hired}}\n", "", 0},
		{"ceiling-flat", "  attic bath: {size: 8' x 6', work: {paint bath walls: own hands}}\n", "", 0},
		{"ceiling-flat", "  attic stairs: {size: 3' x 11', work: {paint walls: own hands}}\n", "", 0},
		{"ceiling-flat", "  loft: {size: 18' x 13', work: {paint walls: own hands}}\n", "", 0}, // open, under a flat ceiling
		{"door-small", "  attic knee wall: {size: 24' x 5', kind: closet, ceiling: 1' to 4'6\", doors: 2' x 4', work: {paint walls: own hands}}\n", "", 0},
		{"door-small", "  cellar: {size: 24' x 22', ceiling: 6'4\", doors: 2'6\" x 5'10\", work: {paint walls: own hands}}\n", "", 0},
		{"door-small", "  cellar: {size: 24' x 22', doors: 2'6\" x 5'10\", work: {paint walls: own hands}}\n", "ceiling: 6'4\"\n", 0},
		{"door-small", "  attic: {size: 24' x 22', ceiling: 4' to 8' both sides, doors: 2' x 4', work: {paint walls: own hands}}\n", "", 0},
		{"door-small", "  attic: {size: 24' x 22', ceiling: 4' to 8' both sides, doors: 2'8\" x 68\", work: {paint walls: own hands}}\n", "", 1},
		{"door-small", "  attic bedroom: {size: 20' x 11', ceiling: 4' to 7' both sides, doors: [2'4\" x 5'8\"], work: {paint walls: own hands}}\n", "", 0},
		{"door-small", "  attic bedroom: {size: 20' x 11', ceiling: 4' to 9' both sides, doors: [28\" x 68\"], work: {paint walls: own hands}}\n", "", 0},
		{"door-small", "  attic bedroom: {size: 20' x 11', ceiling: 4' to 9' both sides, doors: [2'4\" x 4'8\"], work: {paint walls: own hands}}\n", "", 1},
		{"door-small", "  attic bedroom: {size: 20' x 11', ceiling: 4' to 9' both sides, doors: [1'4\" x 5'8\"], work: {paint walls: own hands}}\n", "", 1},
		{"door-small", "  den: {size: 20' x 11', ceiling: 7'4\", doors: [2'4\" x 5'8\"], work: {paint walls: own hands}}\n", "", 0},
		{"door-small", "  den: {size: 20' x 11', ceiling: 7'6\", doors: [2'4\" x 5'8\"], work: {paint walls: own hands}}\n", "", 1},
		{"outside-size", "  den: {size: 12' x 12', work: {paint walls: own hands}}\n", "outside: {around: 110 ft, wall height: 20 ft, siding: 520 sq ft}\n", 0},
		{"outside-size", "  den: {size: 12' x 12', work: {paint walls: own hands}}\n", "outside: {around: 110 ft, wall height: 20 ft, siding: 52 sq ft}\n", 1},
		{"outside-size", "  den: {size: 12' x 12', work: {paint walls: own hands}}\n", "outside: {roof: [{size: 18' x 34', pitch: 6/12}], around: 100 ft, wall height: 18 ft, siding: 540 sq ft, gutters: 18 ft, work: {gutters: hired}}\n", 0},
	} {
		require.Len(t, toldOf(t, c.code, c.rooms, c.keys), c.told, "%s of %s%s", c.code, c.rooms, c.keys)
	}
}

// One firm's quote for a whole kitchen takes hours that nobody knows. The house is invented.
func TestTimeOfAQuoteThatHoldsMore(t *testing.T) {
	for holds, want := range map[string]bool{"holds more: yes": false, "holds more: no": true} {
		_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "time: {", "time: {renovation: 2 months, ", 1)+`rooms:
  kitchen: {size: 12' x 11', fixed: {base cabinets: 14' x 2', sink: 1}, work: {kitchen cabinets: {quote: "$29,500", from: Fern, `+holds+`}}}
`))
		require.False(t, found.HasErrors(), found)
		require.Equal(t, want, slices.ContainsFunc(found, func(d diag.Diag) bool { return d.Code == "renovation-long" }), holds)
	}
}

// The workbook takes the low ceiling of a basement by its kind too. The house is invented.
func TestTheSheetKnowsABasementByItsKind(t *testing.T) {
	for kind, want := range map[string]string{"basement": "5.5", "living": "6.5"} {
		d := readDeal(t, walked+"rooms:\n  lower level: {kind: "+kind+", size: 24' x 22', ceiling: 7'6\", work: {paint walls: own hands}}\n")
		edges := d.UsualAlone(d.Model.Find(d.Root.In("inside")[0], "room_ceiling"))
		require.Equal(t, want, edges[0].At.String(), kind)
	}
}

// A door under a roof may be lower, in the workbook by the same rule; the sentence says which side is small.
func TestDoorsUnderARoof(t *testing.T) {
	for _, c := range []struct{ ceiling, door, least, says string }{
		{"4' to 9' both sides", `1'4" x 5'8"`, "5", `is under 1'6" wide`},
		{"4' to 9' both sides", `2'4" x 4'8"`, "5", "is under 5 ft high"},
		{"4' to 9' both sides", `2'8" x 68"`, "6", "is under 6 ft high"},
		{"8'", `1'4" x 5'8"`, "6", `is under 1'6" wide and under 6 ft high`},
	} {
		text := walked + "rooms:\n  den: {size: 20' x 11', ceiling: " + c.ceiling + ", doors: [" + c.door + "], work: {paint walls: own hands}}\n"
		d, found := deal.Read("a.yaml", []byte(text))
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "door-small" })
		require.GreaterOrEqual(t, i, 0, c.door)
		require.Regexp(t, c.says+"$", found[i].Message)
		edges := d.UsualAlone(d.Model.Find(d.Root.In("inside")[0].In("opening")[0], "opening_height"))
		require.Equal(t, c.least, edges[0].At.String(), c.door)
	}
}
