package deal_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/pricebook"
)

// A place that has something of every measure.
const allMeasures = `
house: {year built: 1940, utilities: off}
rooms:
  bath:
    size: [20' x 12', 5' x 3' sharing 5']
    dark walls: yes
    layers: [carpet]
    doors: 1
    windows: 1
    cased openings: 1
    closets: 5' x 2'
    stairs: {treads: 4, rail: 6'}
    registers: 1
    fixed: {tub: 5' x 2' 6", shower: 3' x 3', vanity: 3' x 2', toilet: 1, base cabinets: 6' x 2', sink: 1}
    %s
outside:
  roof: [{size: 38' x 26', pitch: 8/12, overhang: 1'}]
  around: 128 ft
  doors: 2
  windows: 4
  soffit: 40 sq ft
  deck: 10' x 10'
  deck rail: 20'
  yard: 100 sq ft
  driveway: 10' x 20'
  walk: 3' x 20'
  patio: 8' x 8'
  fence: 40'
  trees: 1
  %s
whole house: {%s}
`

// A quote for all of a piece of work holds the companions of its trade and what they bring of
// it; all else that the work brings when it is hired comes hired as well.
func TestQuotesLoseNoWorkOfOtherTrades(t *testing.T) {
	book := pricebook.Starter()
	deep := 0
	for _, name := range book.Items() {
		it := book.Item(name)
		if !slices.ContainsFunc(it.Brings, func(c pricebook.Companion) bool { return book.Item(c.Item).Trade == it.Trade }) {
			continue
		}
		read := func(how string) (done, held []string) {
			inside, outside, house := "work: {paint ceiling: own hands}", "", ""
			work := fmt.Sprintf("work: {%s: %s}", name, how)
			switch pricebook.MeasureNamed(it.Measure).Of {
			case "house":
				house = work
			case "outside":
				outside = work
			default:
				inside = work
			}
			d := readDeal(t, walked+fmt.Sprintf(allMeasures, inside, outside, house))
			for _, w := range d.Work {
				done, held = append(done, w.Item.Name), append(held, w.Includes...)
			}
			return sorted(done), sorted(held)
		}
		hired, none := read("hired")
		require.Empty(t, none, name)
		done, held := read("$1,000")
		require.Equal(t, hired, sorted(slices.Concat(done, held)), name)
		for _, x := range held {
			require.Equal(t, it.Trade, book.Item(x).Trade, "%s: %s", name, x)
			require.NotContains(t, done, x, name)
			for _, c := range book.Item(x).Brings {
				if book.Item(c.Item).Trade != it.Trade {
					deep++
				}
			}
		}
	}
	require.Greater(t, deep, 50) // what the book's held work brings of other trades
}

func sorted(names []string) []string {
	slices.Sort(names)
	return slices.Compact(names)
}

// Work of the quote's trade that comes only through the quoted work is the quote's, though
// work of another trade brings it: taking out the old toilet brings new shutoffs. What comes
// for other work too is not.
func TestWorkBroughtOnlyThroughAQuoteIsHeld(t *testing.T) {
	for work, charged := range map[string]bool{
		"toilet: $420": false, "vanity: $420": false, "toilet: hired": true, "toilet: $420, vanity: hired": true, "toilet: $420, take out toilet: own hands": true,
	} {
		d := readDeal(t, walked+"rooms: {bath: {size: 8' x 5', fixed: {toilet: 1, vanity: 3' x 2'}, work: {"+work+"}}}\n")
		var held, done []string
		for _, w := range d.Work {
			held, done = append(held, w.Includes...), append(done, w.Item.Name)
		}
		require.Equal(t, charged, slices.Contains(done, "shutoffs and supply lines"), work)
		require.Equal(t, !charged, slices.Contains(held, "shutoffs and supply lines"), work)
	}
}

// What a part is quoted for, the companions of what the quote holds are done to.
func TestHeldWorkPassesThePartOn(t *testing.T) {
	d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', work: {hang wall board: {quote: $900, part: 50%}}}}\n")
	for m, w := range d.Work {
		if w.Item.Name == "prime new wall board" {
			require.Equal(t, "0.5", m.Given.Of("part").Number.String())
			require.Equal(t, "hang wall board", w.By)
			return
		}
	}
	require.Fail(t, "nothing is primed")
}

// Held work that the file names as work of its own is that, and in no quote.
func TestNamedWorkIsNotHeld(t *testing.T) {
	d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', work: {hang wall board: {quote: $900}, finish wall board: own hands}}}\n")
	var who []string
	for m, w := range d.Work {
		require.Empty(t, w.Includes)
		if w.Item.Name == "prime new wall board" {
			who = append(who, m.Given.Of("who").Choice)
		}
	}
	require.Equal(t, []string{"own"}, who)
	_, found := deal.Read("house.yaml", []byte(walked+"rooms: {den: {size: 10' x 12', work: {hang wall board: {quote: $900}}, without: [finish wall board]}}\n"))
	require.NotEmpty(t, found)
}

// A membrane makes way for board once, though a quote holds some of the board: of 120 sq ft,
// a quote's tile takes 48 and one's own 72; the floor under all of it is screwed down, under
// board or membrane, and what the membrane leaves of one's own board is shown.
func TestAMembraneMakesWayOnceBesideAQuote(t *testing.T) {
	for part, board := range map[string]string{"60%": "", "45%": "0.15", "30%": "0.3"} {
		d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', work: {tile floor: {quote: $900, part: 40%}, large tile floor: {by: own hands, part: 60%}, uncoupling membrane under tile: {by: own hands, part: "+part+"}}}}\n")
		got := map[string]string{}
		for m, w := range d.Work {
			got[w.Item.Name] = "all"
			if share, said := m.Given.Look("part"); said {
				got[w.Item.Name] = share.Number.String()
			}
		}
		if board != "" { // else it is done to nothing
			require.Equal(t, board, got["floor backer board"], part)
		}
		require.Equal(t, "all", got["screw down subfloor"], part)
	}
}
