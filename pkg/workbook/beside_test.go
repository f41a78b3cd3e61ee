package workbook

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A deal of rooms whose inputs are doubted beside others. By its hours the work takes under a month.
const besideDeal = `
house: {year built: 1961}
purchase: {price: $152k, closing: {title: $1,450, county tax: 0.11%}}
value: {after-repair value: $236k}
time: {marketing: 6 weeks, escrow: 1 month}
renovation: {contingency: 20%, lines: [{trade: masonry, work: stoop, materials: $120, labour: $200}]}
seen: {hazards: not seen, wiring: good}
rooms:
  den: {size: 12' x 14', ceiling: 8', doors: 2' 8" x 6' 8", windows: 3' x 4', fixed: {wall cabinets: 10' x 1'}, work: {paint walls: hired, tile floor: {quote: $2,860}}}
loans: [{name: bank, fixed amount: $90k, rate: 9%, interest on: balance, term: 12 months, exit fee: 0.2%}]
holding: {property tax: $2,910/year, vacant insurance: $1,420/year, power: $190/month}
selling: {listing agent: 2.5%, settlement: $1,300}
targets: {profit: $5k}
cash: {available: $170k}
`

// A bath as large as a living room is to be looked at again by both of its sides.
func TestABathAsLargeAsALivingRoomIsDoubted(t *testing.T) {
	text := strings.Replace(besideDeal, "rooms:\n", "rooms:\n  main bath: {size: 9' x 5' 4\", ceiling: 8', work: {paint bath walls: hired}}\n", 1)
	var over typedOver
	for _, x := range []struct {
		long, wide float64
		want       string
	}{{29.5, 17.7, itoa(int(unusual))}, {14, 12, "0"}} {
		b, err := made(answered(t, text), Options{Uncached: true})
		require.NoError(t, err)
		over.add(t, "bath"+x.want, b, typed{"", "section.length", x.long, x.want}, typed{"", "section.width", x.wide, x.want})
	}
	over.recomputed(t)
}

// What no longer fits into a room that is made smaller cannot be; a room of metres, and a closet that is
// longer than its room is across, are to be looked at again.
func TestWhatIsInARoomFitsIntoIt(t *testing.T) {
	look, cannot := itoa(int(unusual)), itoa(int(beyondRate)+plainly)
	const (
		bath    = `hall bath: {size: 8' x 5', ceiling: 8', doors: 2' 4" x 6' 8", windows: 3' x 3', fixed: {tub: 5' x 2' 6"}, work: {paint bath walls: hired}}`
		bedroom = `bedroom: {size: 12' x 11', closets: 6' x 2', doors: 2' 8" x 6' 8", work: {paint walls: hired}}`
		door    = `door 2' 4" x 6' 8"`
	)
	var over typedOver
	for name, x := range map[string]struct {
		room   string
		inputs []typed
	}{
		"bath-beyond":    {bath, []typed{{"", "section.length", 4.0, "0"}, {"", "section.width", 4.5, "0"}, {"", "room.room_ceiling", 6.6, "0"}, {"tub", "fitting_length", 5.0, cannot}, {door, "opening_height", 6.6667, cannot}, {door, "opening_width", 4.7, cannot}}},
		"bath-within":    {bath, []typed{{"", "section.length", 7.0, "0"}, {"", "section.width", 5.0, "0"}, {"", "room.room_ceiling", 7.5, "0"}, {"tub", "fitting_length", 5.0, "0"}, {door, "opening_height", 6.6667, "0"}, {door, "opening_width", 3.0, "0"}}},
		"bedroom-beyond": {bedroom, []typed{{"", "section.length", 3.66, look}, {"", "section.width", 3.35, look}, {"closet", "length", 6.0, look}, {"", "usual_ceiling", 18.0, look}, {"", "sale_price", 480e3, look}, {"", "waiting_days", 180.0, look}}},
		"bedroom-within": {bedroom, []typed{{"", "section.length", 10.0, "0"}, {"", "section.width", 9.0, "0"}, {"closet", "length", 7.0, "0"}, {"", "usual_ceiling", 9.0, "0"}, {"", "sale_price", 330e3, "0"}, {"", "waiting_days", 40.0, "0"}}},
	} {
		b, err := made(answered(t, strings.Replace(besideDeal, "rooms:\n", "rooms:\n  "+x.room+"\n", 1)), Options{Uncached: true})
		require.NoError(t, err)
		over.add(t, name, b, x.inputs...)
	}
	over.recomputed(t)
}

// What is typed by a slip, and is right by itself, is to be looked at again beside other inputs, the
// price book or what the file says; what is as far as it may well be is not.
func TestInputsAreDoubtedBesideOthers(t *testing.T) {
	look, cannot := itoa(int(unusual)), itoa(int(beyondRate)+plainly)
	var all [][]typed
	beyond := []typed{
		{"hazards", "seen", "bad", look}, {"wiring", "seen", "bad", look},
		{"tile floor", "quote", 286.0, look}, {"property tax", "a_year", 291.0, look}, {"vacant insurance", "a_year", 142.0, look}, {"power", "a_month", 2280.0, look},
		{"county tax", "share", 0.011, look}, {"listing agent", "share", 0.0025, look}, {"bank", "exit_share", 0.2, look},
		{"", "renovation", 6.0, look}, {"", "seller_credit", 9500.0, look},
		{"title", "fixed", 14500.0, look}, {"settlement", "fixed", 6300.0, look}, {"", "fitting.fitting_length", 120.0, look},
	}
	all = append(all, []typed{
		{"hazards", "seen", "good", "0"}, {"tile floor", "quote", 2600.0, "0"}, {"property tax", "a_year", 3900.0, "0"}, {"power", "a_month", 1100.0, "0"},
		{"county tax", "share", 0.006, "0"}, {"listing agent", "share", 0.03, "0"}, {"", "renovation", 1.1, "0"}, {"", "seller_credit", 9000.0, "0"},
		{"bank", "exit_share", 0.01, "0"}, {"bank", "fixed_amount", 100000.0, "0"}, {"title", "fixed", 1800.0, "0"}, {"masonry: stoop", "materials", 160.0, "0"}, {"", "fitting.fitting_length", 12.0, "0"}, {"", "opening.opening_width", 3.0, "0"},
	}, beyond, []typed{{"tile floor", "quote", 28600.0, look}, {"", "price", 3e6, look}, {"property tax", "a_year", 2910.0, look}, {"", "opening.opening_width", 32.0, cannot}, {"", "opening.opening_height", 80.0, cannot}, {"masonry: stoop", "materials", 1200.0, look}})
	all = append(all, beyond[:1])
	var over typedOver
	for i, inputs := range all {
		over.add(t, itoa(i), besideBook(t), inputs...)
	}
	for path, f := range over.recomputed(t) {
		page := printed(t, f, "The deal")
		require.Equal(t, path == over.paths[0], strings.Contains(page, flawless), path)
		require.Contains(t, page, noneBack)
		if path == over.paths[3] {
			require.Contains(t, page, "hazards, seen, which counts for nothing once it is bad (its work goes into the deal file), is not usual, look again")
			require.Contains(t, page, "At a price of $152,000 every target holds."+lookAgain)
		}
	}
}

// Charges of a loan, taxes of districts, insurance by the month and lengths of time are to be looked at again as
// in the file.
func TestBillsAndTimesAreDoubtedBesideOthers(t *testing.T) {
	look := itoa(int(unusual))
	text := strings.NewReplacer("tax: $2,910", "tax: $1,800", "exit fee: 0.2%", "exit fee: 0.2%, fees: {origination: $1,800}", "vacant insurance: $1,420/year", "fire tax: $40/year, vacant insurance: $118/month").Replace(besideDeal)
	var over typedOver
	for i, inputs := range [][]typed{
		{{"origination", "fixed", 9500.0, look}, {"property tax", "a_year", 310.0, look}, {"vacant insurance", "a_month", 640.0, look}, {"", "escrow", 7.0, look}},
		{{"origination", "fixed", 2500.0, "0"}, {"property tax", "a_year", 310.0, "0"}, {"fire tax", "a_year", 100.0, "0"}, {"vacant insurance", "a_month", 350.0, "0"}, {"", "escrow", 4.0, "0"}},
	} {
		b, err := made(answered(t, text), Options{Uncached: true})
		require.NoError(t, err)
		over.add(t, itoa(i), b, inputs...)
	}
	over.recomputed(t)
}

// A quote is to be looked at again wherever check doubts one: it is below the labour alone, about labour
// and materials where it is for the labour, or holds other work; and where it is far from the file's.
func TestQuotesAreDoubtedAsByCheck(t *testing.T) {
	look := itoa(int(unusual))
	const (
		rest    = "stone counter: hired, tile backsplash: hired, resilient plank floor: hired, paint walls: hired"
		kitchen = "{size: 14' x 13', fixed: {base cabinets: 22' x 2', wall cabinets: 16' x 1', sink: 1}, work: {kitchen cabinets: "
	)
	var over typedOver
	for i, x := range []struct {
		quote string
		typed float64
		says  string
	}{
		{"$7,900", 2000, look}, {"$7,900", 6500, "0"}, {"$7,900", 14900, look}, {"{quote: $7,900, holds more: yes}", 24000, "0"},
		{"{quote: $7,900, covers: all}", 2000, "0"}, {"{quote: $7,900, covers: all}", 1310, look}, {"{quote: $2,100, covers: labour}", 6300, look},
	} {
		text := strings.Replace(besideDeal, "rooms:\n", "rooms:\n  kitchen: "+kitchen+x.quote+", "+rest+"}}\n", 1)
		b, err := made(answered(t, text), Options{Uncached: true})
		require.NoError(t, err)
		over.add(t, itoa(i), b, typed{"kitchen cabinets", "quote", x.typed, x.says})
	}
	over.recomputed(t)
}

func besideBook(t *testing.T) *book {
	b, err := made(answered(t, besideDeal), Options{Uncached: true})
	require.NoError(t, err)
	return b
}

// A fixed loan that is more than what is paid at the purchase is cut, and both readers are told how
// much, in the words of the answer.
func TestALoanThatIsCutIsTold(t *testing.T) {
	large := strings.Replace(besideDeal, "$90k", "$200k", 1)
	says, paths := map[string]string{}, []string{}
	for _, x := range []struct {
		name, text string
		whom       Reader
		amount     float64
		says       string
	}{
		{"written", large, Owner, 0, "bank: $46,382.80 is taken off, since no loan gives cash back at the purchase. Lower the loan, or ask the lender."}, // 200,000 - 152,000 - 1,450 - 0.11% of 152,000
		{"lender", large, Lender, 0, "bank: $46,382.80 is taken off, since no loan gives cash back at the purchase. Lower the loan, or ask the lender."},
		{"typed", besideDeal, Owner, 300_000, "bank: $146,382.80 is taken off, since no loan gives cash back at the purchase. Lower the loan, or ask the lender."},
		{"lower", large, Owner, 120_000, noneBack},
	} {
		b, err := made(answered(t, x.text), Options{Uncached: true, For: x.whom})
		require.NoError(t, err)
		if x.amount > 0 {
			b.typeOf(t, "bank", "fixed_amount", x.amount)
		} else {
			require.Contains(t, texts(sheetOf(b, "The deal")), x.says)
		}
		path := filepath.Join(t.TempDir(), x.name+".xlsx")
		saved(t, path, b)
		paths, says[path] = append(paths, path), x.says
	}
	for path, f := range recomputed(t, paths...) {
		require.Contains(t, strings.Split(printed(t, f, "The deal"), "\n"), says[path], path)
	}
}
