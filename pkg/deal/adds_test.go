package deal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// An option that adds over 15% of the price ($160k) and over five times what its work costs, or over 10% and over
// eight times, is told: a nought too many. Dear work may add as much, and cheap work little of the price.
func TestAnOptionThatAddsFarMoreThanItCosts(t *testing.T) {
	for option, want := range map[string][2]int{
		"adds: $40k, work: {paint walls: hired}":                            {1, 0},
		"adds: $40k, work: {paint walls: own hands}":                        {1, 0}, // what trades would cost counts
		"adds: $81k, work: {paint walls: hired}":                            {0, 1}, // over half of the price
		"adds: $17k, work: {paint walls: hired}":                            {1, 0},
		"adds: $15k, work: {paint walls: hired}":                            {0, 0},
		"adds: $17k, work: {paint walls: hired, vanity: {quote: $2,500}}":   {0, 0},
		"adds: $60k, work: {paint walls: hired, vanity: {quote: $40k}}":     {0, 0},
		"adds: $40k, work: {paint walls: hired, vanity: {quote: $7,300}}":   {0, 0}, // with paint over $8k
		"adds: $0, work: {paint walls: hired}":                              {0, 0},
		"adds: $40k, work: {}":                                              {0, 0}, // told as having no work
		"adds: $40k, work: {paint walls: hired, vanity: {quote: \"$730\"}}": {1, 0},
	} {
		room := "  bath: {size: 12' x 13', fixed: {vanity: 3' x 2'}, options: {fresh: {" + option + "}}}\n"
		require.Len(t, toldOf(t, "adds-far", room, ""), want[0], option)
		require.Len(t, toldOf(t, "adds-high", room, ""), want[1], option)
	}
}

// An option with all of another's work and more hardly adds under half as much.
func TestAnOptionThatAddsLessForMoreWork(t *testing.T) {
	for gut, want := range map[string]int{
		"{adds: $2,700, work: {strip wall plaster: hired, hang wall board: hired, paint walls: own hands}}": 1,
		"{adds: $4,500, work: {strip wall plaster: hired, hang wall board: hired, paint walls: own hands}}": 0,
		"{adds: $0, work: {strip wall plaster: hired, hang wall board: hired, paint walls: own hands}}":     0,
		"{adds: $2,700, work: {resilient plank floor: hired, hang ceiling board: hired}}":                   0, // other work
		"{adds: $2,700, work: {paint walls: own hands}}":                                                    0, // the same, by whom may tell
	} {
		room := "  den:\n    size: 12' x 10'\n    doors: 1\n    options: {fresh: {adds: $9,000, work: {paint walls: hired}}, gut: " + gut + "}\n"
		require.Len(t, toldOf(t, "adds-less", room, ""), want, gut)
	}
	const house = "whole house: {options: {light: {adds: $9,000, work: {final cleaning: hired}}, gut: {adds: %s, work: {final cleaning: hired, air conditioner: hired}}}}\n"
	require.Len(t, toldOf(t, "adds-less", "  den: {size: 12' x 10'}\n", fmt.Sprintf(house, "$900")), 1)
	require.Empty(t, toldOf(t, "adds-less", "  den: {size: 12' x 10'}\n", fmt.Sprintf(house, "$7,000")))
	const dear = "scope: gut\nwhole house: {options: {light: {adds: $3,000, work: {final cleaning: hired}}, gut: {adds: %s, work: {final cleaning: hired, rewire: {quote: $14,000}}}}}\n"
	require.Len(t, toldOf(t, "adds-far", "  den: {size: 12' x 10'}\n", fmt.Sprintf(dear, "$2,400")), 1)
	require.Empty(t, toldOf(t, "adds-far", "  den: {size: 12' x 10'}\n", fmt.Sprintf(dear, "$3,000")))
}

// An option that names more than another, and half of that one's work, hardly adds under a third of what
// its work costs and of what the other adds. By trades the work of the gut comes to over $12,300.
func TestAnOptionThatAddsLittleBesideAnother(t *testing.T) {
	const work = "kitchen cabinets: hired, stone counter: hired, sink and faucet set: hired, resilient plank floor: hired"
	for gut, want := range map[string][2]int{
		"{adds: $3,100, work: {" + work + ", paint walls: hired, paint ceiling: hired}}":                        {1, 0},
		"{adds: $4,100, work: {" + work + ", paint walls: hired, paint ceiling: hired}}":                        {0, 0},
		"{adds: $0, work: {" + work + ", paint walls: hired, paint ceiling: hired}}":                            {0, 0},
		"{adds: $3,100, work: {" + work + ", paint walls: hired}}":                                              {0, 0}, // mostly other work
		"{adds: $3,100, work: {" + work + ", paint walls: hired, paint ceiling: hired, paint cabinets: hired}}": {0, 1}, // all of the other's
		"{adds: $900, work: {paint walls: hired, paint ceiling: hired, light fixture: hired, outlet: hired}}":   {0, 0}, // which costs little
	} {
		room := "  kitchen:\n    size: 12' x 13'\n    lights: 1\n    fixed: {base cabinets: 14' x 2', wall cabinets: 11' x 1', sink: 1}\n    options: {gut: " + gut + ", fresh: {adds: $12,000, work: {paint cabinets: hired, paint walls: hired, paint ceiling: hired}}}\n"
		require.Len(t, toldOf(t, "adds-far", room, ""), want[0], gut)
		require.Len(t, toldOf(t, "adds-less", room, ""), want[1], gut)
	}
}

// An option with much of the work does not say what it adds, though those of another room do: it is
// told. Stating it ends that, and so does nothing; small work, and what hardly sells a house, need not.
func TestAnOptionThatDoesNotSayWhatItAddsBesideThoseOfOtherRooms(t *testing.T) {
	const (
		den     = "  den: {size: 12' x 14', options: {fresh: {%s, work: {paint walls: hired}}}}\n"
		kitchen = "  %s: {size: 12' x 14', fixed: {base cabinets: 15' x 2', sink: 1}%s, options: {fresh: {%swork: {%s}}}}\n"
		large   = "kitchen cabinets: hired, stone counter: hired"
	)
	for _, c := range []struct {
		adds, room, keys, says, work string
		want                         int
	}{
		{"adds: $3k", "kitchen", "", "", large, 1},
		{"adds: $3k", "kitchen", "", "adds: $0, ", large, 0},
		{"adds: $3k", "kitchen", "", "adds: $9k, ", large, 0},
		{"adds: $0", "kitchen", "", "", large, 0}, // nothing says that an option adds
		{"without: []", "kitchen", "", "", large, 0},
		{"adds: $3k", "kitchen", "", "", "sink and faucet set: hired", 0},
		{"adds: $3k", "cellar", "", "", large, 0},
		{"adds: $3k", "closet", "", "", large, 0},
		{"adds: $3k", "kitchen", ", living area: no", "", large, 0},
	} {
		rooms := fmt.Sprintf(den, c.adds) + fmt.Sprintf(kitchen, c.room, c.keys, c.says, c.work)
		require.Len(t, toldOf(t, "adds-missing", rooms, ""), c.want, rooms)
	}
	alone := fmt.Sprintf(den, "adds: $3k") + "  kitchen: {size: 12' x 14', fixed: {base cabinets: 15' x 2'}, work: {" + large + "}}\n"
	require.Empty(t, toldOf(t, "adds-missing", alone, ""))
	house := "whole house: {options: {fresh: {work: {rewire: hired}}}}\noutside: {roof: 1200 sq ft, options: {fresh: {work: {shingle roof gable: hired}}}}\n"
	require.Empty(t, toldOf(t, "adds-missing", fmt.Sprintf(den, "adds: $3k"), house))
	counted := "quick: {kitchens: 1}\n" // which cannot say it
	require.Empty(t, toldOf(t, "adds-missing", fmt.Sprintf(den, "adds: $3k"), counted))
}
