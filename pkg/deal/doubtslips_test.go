package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// toldOf are the messages of one code in a deal with these rooms and other keys.
func toldOf(t *testing.T, code, rooms, keys string) []string {
	t.Helper()
	return toldIn(t, code, walked+keys+"rooms:\n"+rooms)
}

// toldIn are the messages of one code in a deal, which has no mistakes.
func toldIn(t *testing.T, code, text string) (out []string) {
	t.Helper()
	_, found := deal.Read("a.yaml", []byte(text))
	require.False(t, found.HasErrors(), "%s: %v", text, found)
	for _, d := range found {
		if d.Code == code {
			out = append(out, d.Message)
		}
	}
	return out
}

// Inches and feet that changed places are told of a hall and of a part of a room too.
func TestSlipsOfMarksInHallsAndParts(t *testing.T) {
	for _, c := range []struct {
		code, room string
		want       int
	}{
		{"room-large", "hall: {size: 14' x 36', work: {paint walls: hired}}", 1},
		{"room-large", "upstairs landing: {size: 11' x 12', work: {paint walls: hired}}", 1},
		{"room-large", "hall: {size: 14' x 3' 6\", work: {paint walls: hired}}", 0},
		{"room-large", "entry hall: {size: 9' x 10', work: {paint walls: hired}}", 0},
		{"room-large", "living room: {size: 14' x 16', work: {paint walls: hired}}", 0},
		{"room-narrow", "living room: {size: [15\" x 13' 2\", 6' x 3' 4\" sharing 15\"], work: {paint walls: hired}}", 1},
		{"room-narrow", "living room: {size: [18\" x 12' 6\", 7' x 5' sharing 18\"], work: {paint walls: hired}}", 1},
		{"room-narrow", "living room: {size: [7' x 5', 18\" x 12' 6\" sharing 18\"], work: {paint walls: hired}}", 1},
		{"room-narrow", "living room: {size: [15' x 12' 6\", 18\" x 7' sharing 7'], work: {paint walls: hired}}", 0}, // a bay
		{"room-narrow", "living room: {size: [1' 6\" x 12' 6\", 7' x 5' sharing 1' 6\"], work: {paint walls: hired}}", 0},
		{"room-narrow", "living room: {size: [1'3\" x 13' 2\", 6' x 3' 4\" sharing 1'3\"], work: {paint walls: hired}}", 1},
		{"room-narrow", "living room: {size: [18' x 3' 6\", 7' x 4' sharing 7'], work: {paint walls: hired}}", 1}, // 13' 6"
		{"room-narrow", "living room: {size: [1' x 13' 6\", 7' x 4' sharing 7'], work: {paint walls: hired}}", 1},
		{"room-narrow", "living room: {size: [18' x 13' 6\", 7' x 4' sharing 7'], work: {paint walls: hired}}", 0},
		{"room-narrow", "living room: {size: [4' x 10', 14' x 12' sharing 4'], work: {paint walls: hired}}", 0}, // from the door on
		{"room-narrow", "entry hall: {size: [18' x 3' 6\", 7' x 4' sharing 7'], work: {paint walls: hired}}", 0},
		{"room-narrow", "living room: {size: [15' x 13' 2\", 6' x 2' sharing 6'], work: {paint walls: hired}}", 0},
	} {
		require.Len(t, toldOf(t, c.code, "  "+c.room+"\n", ""), c.want, c.room)
	}
}

// A kitchen whose work would bring a sink says that it has one, or that it stays.
func TestAKitchenWithoutItsSink(t *testing.T) {
	const kitchen = "  kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 10' x 2'"
	require.Equal(t, []string{`nothing is priced of sink and faucet set, which "stone counter" would bring along: kitchen does not say that it has a sink`},
		toldOf(t, "sink-unsaid", kitchen+"}, work: {stone counter: hired}}\n", ""))
	require.Empty(t, toldOf(t, "sink-unsaid", kitchen+", sink: 1}, work: {stone counter: hired}}\n", ""))
	require.Empty(t, toldOf(t, "sink-unsaid", kitchen+"}, work: {stone counter: hired}, without: [sink and faucet set]}\n", ""))
	require.Empty(t, toldOf(t, "sink-unsaid", "  pantry: {size: 12' x 13', doors: 1, fixed: {base cabinets: 10' x 2'}, work: {stone counter: hired}}\n", ""))
}

// A line for what rooms make is told by the name of that as well as by its trade.
func TestALineByTheNameOfTheWork(t *testing.T) {
	const rooms = "  den: {size: 12' x 13', work: {carpet: hired}}\n"
	for line, want := range map[string]int{"carpet": 1, "carpets": 1, "hardwood": 0, "tile": 0} {
		require.Len(t, toldOf(t, "trade-twice", rooms, "renovation: {lines: [{trade: "+line+", work: bedrooms, amount: $900}]}\n"), want, line)
	}
}

// Quotes for the labour and for all are told apart by what the book comes to.
func TestAQuoteForTheOtherHalf(t *testing.T) {
	room := func(detail string) string {
		return "  kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 14' x 2', wall cabinets: 11' x 1', sink: 1}, work: {kitchen cabinets: {" + detail + "}, stone counter: hired}}\n"
	}
	for detail, want := range map[string]int{
		"quote: $1250": 1, "quote: $1250, covers: all": 0, "quote: $1250, covers: labour": 0, "quote: $4300": 0, "quote: $3000": 0,
		"quote: $4400, covers: labour": 1, "quote: $1900, covers: labour": 0, "quote: $4400, covers: labour, holds more: yes": 0,
	} {
		require.Len(t, toldOf(t, "quote-half", room(detail), ""), want, detail)
	}
	require.Len(t, toldOf(t, "quote-beside", room("quote: $16500, holds more: yes"), ""), 1)
	require.Empty(t, toldOf(t, "quote-beside", "  kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 14' x 2', sink: 1}, work: {kitchen cabinets: {quote: $16500, holds more: yes}}, without: [strip cabinets]}\n", ""))
}

// Factors of the place that are meant as by how much dearer it is are told.
func TestFactorsFarFromTheBook(t *testing.T) {
	for factor, want := range map[string]int{"30%": 1, "194%": 1, "104%": 0, "60%": 0, "170%": 0} {
		for _, key := range []string{"labour", "materials"} {
			require.Len(t, toldOf(t, "factor-unusual", "  den: {size: 12' x 13', work: {paint walls: hired}}\n", "local prices: {"+key+" factor: "+factor+"}\n"), want, factor)
		}
	}
	_, found := deal.Read("a.yaml", []byte(walked+"local prices: {labour factor: 30%}\n"))
	require.Contains(t, found[len(found)-1].Hint+found[0].Hint+found.Error(), "30%")
}

// A general line that names a trade, or work by its own name, is told beside rooms that price it; not
// one of other work, what goes by the month, or little beside it.
func TestAGeneralLineOfWhatRoomsPrice(t *testing.T) {
	const rooms = "  kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 14' x 2', sink: 1}, work: {kitchen cabinets: hired, stone counter: hired, paint walls: hired}}\n  bath: {size: 5' x 8', fixed: {toilet: 1}, work: {toilet: hired, asbestos test: hired}}\n"
	for line, want := range map[string]int{
		"painter: $4000": 1, "cabinets: $6000": 1, "plumbers: $900": 1, "asbestos tests: $400": 1,
		"permits: $900": 0, "cleaning: $380": 0, "portable toilet: $115": 0, "painter of the fence: $900": 0,
		"plumbing: $90/month": 0, "asbestos test: $40k": 0, "kitchen design: $900": 0, "insurance of the work: $900": 0, "painter: 4%": 0,
	} {
		require.Len(t, toldOf(t, "trade-twice", rooms, "renovation: {general: {"+line+"}}\n"), want, line)
	}
	for built, want := range map[string]int{"1960": 1, "1995": 0} { // by own hands in an old house it comes along
		require.Len(t, toldOf(t, "trade-twice", "  den: {size: 12' x 13', work: {paint walls: own hands}}\n", "house: {year built: "+built+"}\nrenovation: {general: {lead-safe certificate: $500}}\n"), want, built)
	}
}

// Cabinets that come out are not painted, and a tub that does is not reglazed, but for a part.
func TestWhatComesOutIsNotMadeNewAsItStands(t *testing.T) {
	for work, want := range map[string]int{
		"strip cabinets: hired, paint cabinets: hired":                                   1,
		"strip cabinets: {by: hired, part: 40%}, paint cabinets: {by: hired, part: 60%}": 0,
		"paint cabinets: hired":                         0,
		"kitchen cabinets: hired, stone counter: hired": 0,
		"strip cabinets: hired, kitchen cabinets: hired, laminate counter: hired, sink and faucet set: hired": 0,
	} {
		require.Len(t, toldOf(t, "done-twice", "  kitchen: {size: 12' x 13', doors: 1, fixed: {base cabinets: 14' x 2', sink: 1}, work: {"+work+"}}\n", ""), want, work)
	}
}

// Permits of a tenth of the work, and a ceiling of all rooms that only a hall is as high as, are told.
func TestPermitsAndCeilingsThatAreHigh(t *testing.T) {
	const den = "  den: {size: 12' x 13', work: {paint walls: hired}}\n"
	for permits, want := range map[string]int{"permits: 11%": 1, "permits: 1.1%": 0, "building permit: 5%": 0, "permits: {amount: 11%, of: works cost}": 1, "permits: $900": 0, "overhead: 11%": 0} {
		require.Len(t, toldOf(t, "share-high", den, "renovation: {general: {"+permits+"}}\n"), want, permits)
	}
	for ceiling, want := range map[string]int{"9 ft": 0, "12 ft": 0, "18 ft": 1, "27 ft": 1} {
		require.Len(t, toldOf(t, "ceiling-high", den, "ceiling: "+ceiling+"\n"), want, ceiling)
	}
	require.Empty(t, toldOf(t, "ceiling-high", "  den: {size: 12' x 13', ceiling: 18 ft, work: {paint walls: hired}}\n", ""))
}
