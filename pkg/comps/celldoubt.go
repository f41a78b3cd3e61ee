package comps

import (
	"fmt"
	"regexp"
	"slices"
	"sync"

	"ledgerboard/pkg/diag"
)

// A cellDoubt is what is doubtful about a cell that is read all the same.
type cellDoubt struct {
	says func(text string) string // how it is taken
	want string
}

var (
	yearDoubt = cellDoubt{func(text string) string {
		long, _ := shortYear(withoutTime(text))
		d, _ := day(long) // it was read before
		return fmt.Sprintf("%s has a year of two digits; it is taken for %s, the month first", diag.Quote(text), d.Long())
	}, "the year in full, e.g. 9/14/2025 or 2025-09-14"}
	monthDoubt = cellDoubt{func(text string) string {
		d, _ := day(withoutTime(text)) // it was read before
		return fmt.Sprintf("%s is taken for %s, the month first, but another day of the list can only have the day first", diag.Quote(text), d.Long())
	}, "the month in letters or the year first, e.g. Apr 3, 2025 or 2025-04-03"}
	landDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " may be the size of the lot or what the land is worth, so it counts as not known"
	}, "the size with its unit, e.g. 7,200 sq ft; or, if all are sizes in sq ft,   columns: {lot: Land}"}
	garageDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " does not tell for how many cars the garage is, so it counts as not known"
	}, "the number of cars, e.g. 2 car attached, or none"}
	parkingDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " may be of cars in the drive, so it tells nothing of the garage"
	}, "what the garage is, e.g. 2 car garage, or none; or, if all are of garages,   columns: {garage: Parking}"}
	carsDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " is not for how many cars the column of the garage says it is; what that says counts"
	}, "the same in both, or in one column only"}
	garagesDoubt = cellDoubt{func(text string) string {
		return "the columns of the garage say " + diag.Quote(text) + " and otherwise, one that there is none, so it counts as not known"
	}, "the number of cars, or none, in one column, and nothing where that is not known"}
	milesDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " is taken for miles: so few metres lie between no two houses"
	}, "the unit in full, e.g. 0.9 mi or 600 metres"}
	metresDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " is taken for metres"
	}, "the unit in full, e.g. 12 mi or 12 metres"}
	asMilesDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " is taken for miles, as other distances are"
	}, metresDoubt.want}
	lotDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " acres are hardly the lot of a house, so it counts as not known"
	}, "the lot with its unit, e.g. 7,405 sq ft or 0.17 acres"}
	bathDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " is hardly how many baths a house has, so it counts as not known"
	}, "full and half ones, e.g. 2.5, or 2 full 1 half"}
	noBathDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " baths count as not known, as records hold it for those that nobody counted"
	}, bathDoubt.want}
	bathPartDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " is taken for full baths and, behind the point, half ones"
	}, bathDoubt.want}
	totalDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " may be counted in the total of baths already, as one each, so baths count as not known"
	}, "the full ones in a column of their own; or, if the total is of full ones, name its column, e.g.   columns: {full baths: Total Baths}"}
	restDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " full baths are not as many as the column of all baths says, and the rest may be half ones, so baths count as not known"
	}, "the half ones in a column of their own, or all in one figure, e.g. 2.5"}
	bedroomDoubt = cellDoubt{func(text string) string {
		return diag.Quote(text) + " is hardly how many bedrooms a house has, so it counts as not known"
	}, "how many there are, or nothing where that is not known"}
)

var shortDate = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(\d{1,2}/\d{1,2}/)(\d\d)$`) })

// pivot is the first year of two digits that is of the last century: 69 is 1969 and 68 is
// 2068, as the C library has it (POSIX strptime, %y).
const pivot = "69"

// shortYear is 9/14/25, the month first, with its year in full.
func shortYear(s string) (string, bool) {
	m := shortDate().FindStringSubmatch(s)
	if m == nil {
		return "", false
	}
	century := "20"
	if m[2] >= pivot {
		century = "19"
	}
	return m[1] + century + m[2], true
}

// Doubt says what is doubtful about what was set last, and what would do; nothing where it
// is plain.
func (e *Entry) Doubt(text string) (says, want string) {
	if e.row.doubt == nil {
		return "", ""
	}
	return e.row.doubt.says(text), e.row.doubt.want
}

// A doubted is a doubt that cells of a table share, told at the first of them.
type doubted struct {
	cellDoubt
	at         diag.Pos
	name, text string // of the sale and of the cell
	more       int    // cells like it below
}

// A rowDoubt is one about a cell of the row in hand, which may yet be left out.
type rowDoubt struct {
	column
	text string
	*cellDoubt
}

// keepDoubts keeps the doubts about the cells of a row that counts.
func (r *reader) keepDoubts() {
	for _, x := range r.ofRow {
		if i := slices.IndexFunc(r.doubts, func(d doubted) bool { return d.want == x.want }); i >= 0 {
			r.doubts[i].more++
			continue
		}
		r.doubts = append(r.doubts, doubted{*x.cellDoubt, r.pos(x.at), r.name() + ": " + x.header, x.text, 0})
	}
}

// allMiles takes every "m" of a column for miles where one of them can be no metres, or
// another says that it is in miles.
func (r *reader) allMiles() {
	if !r.row.miles && !slices.ContainsFunc(r.doubts, func(d doubted) bool { return d.want == milesDoubt.want }) {
		return
	}
	for _, i := range r.metres {
		r.list.sales[i].Stated.Value *= Mile
	}
	for i := range r.doubts {
		if r.doubts[i].want == metresDoubt.want {
			r.doubts[i].cellDoubt = asMilesDoubt
		}
	}
}

// tellDoubts tells each kind of doubt once, for all cells that share it.
func (r *reader) tellDoubts() {
	for _, d := range r.doubts {
		if d.want == monthDoubt.want && !r.row.dayFirst {
			continue // all are written with the month first
		}
		says := d.name + ": " + d.says(d.text)
		if d.more > 0 {
			says += fmt.Sprintf("; and %d more like it", d.more)
		}
		r.say(d.at, true, "doubtful-cell", says, "write "+d.want)
	}
}
