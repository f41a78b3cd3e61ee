package comps

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// row is the sale being read and the unit of the column in hand.
type row struct {
	Sold
	unit  string
	words map[string]string // words met so far, so that a long list holds each once
	doubt *cellDoubt        // about the cell read last, nil for none
	own   []string          // the names of what the caller prices beside the fields
	told  []string          // those of which a cell of any row said something

	onPlane, inDegrees Place // what is said so far of where it stands, in either way

	oddGarage bool // something is said of its garage that cannot be read

	halves bool // its number of baths tells of half ones too
	total  bool // its number of baths is a total, which may count half ones as one each
	metres bool // its distance is of few metres, unless another cell shows that they are miles
	miles  bool // a distance said that it is in miles

	eitherFirst bool // its day may have the month or the day first
	dayFirst    bool // a day can only be read with the day first
}

// word returns s in lower case, the same string for the same word.
func (r *row) word(s string) string {
	if w, ok := r.words[s]; ok {
		return w
	}
	w := strings.ToLower(strings.Join(strings.Fields(s), " "))
	r.words[strings.Clone(s)] = w
	return w
}

func (r *row) label(s string) error { r.Label = strings.Clone(s); return nil }

// part adds the unit of a house to its address, unless that tells it already.
func (r *row) part(s string) error {
	words, unit := strings.Fields(spelling(r.Label)), strings.Fields(spelling(s))
	if len(words) < 2 || len(unit) == 0 || s == "0" {
		return nil
	}
	last, before := words[len(words)-1], words[len(words)-2]
	if last == unit[len(unit)-1] && (slices.Contains(ofUnits, before) || strings.Contains(r.Label, "#")) {
		return nil
	}
	if !strings.HasPrefix(s, "#") && !slices.Contains(ofUnits, unit[0]) {
		s = "unit " + s
	}
	r.Label += " " + s
	return nil
}

func (r *row) source(s string) error { r.Source = r.word(s); return nil }
func (r *row) terms(s string) error  { r.alsoTerms(r.word(s)); return nil }
func (r *row) kind(s string) error   { r.Kind = r.word(s); return nil }
func (r *row) wall(s string) error   { r.Wall = r.word(s); return nil }

// alsoTerms adds to what is said of how it was sold: two columns may.
func (r *row) alsoTerms(w string) {
	if r.Terms != "" {
		w = r.word(r.Terms + "; " + w)
	}
	r.Terms = w
}

// armsLength reads a yes or no, as a flag or a letter, or else words.
func (r *row) armsLength(s string) error {
	switch w := r.word(s); w {
	case "y", "yes", "true", "t", "1", "q":
	case "n", "no", "false", "f", "0", "u":
		r.alsoTerms("not at arm's length")
	default:
		r.alsoTerms(w)
	}
	return nil
}

func (r *row) date(s string) (err error) {
	s = withoutTime(s)
	swapped, only := dayFirst(s)
	r.Date, err = day(s)
	r.eitherFirst = err == nil && !only && !swapped.IsZero() && swapped != r.Date
	r.dayFirst = r.dayFirst || only
	if err == nil {
		return nil
	}
	if long, ok := shortYear(s); ok {
		r.Date, err = day(long)
		r.doubt = &yearDoubt
	}
	return err
}

// dated finds what is hardly anything but a day, with its year in full.
var dated = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[-/]\d{1,2}[-/]\d{4})$`)
})

func (r *row) price(s string) (err error) {
	if r.Price, err = money(s); err == nil && r.Price.Round(0).Sign() <= 0 {
		return &cellError{fmt.Sprintf("a sale for %q is none", s), "the price paid, e.g. $185,000; leave out what was given or inherited"}
	}
	if err != nil && dated().MatchString(withoutTime(s)) {
		return &cellError{fmt.Sprintf("%q looks like a date; were day and price, or their columns, changed about?", s), "the price paid, e.g. $185,000, and the day where days stand"}
	}
	r.Price = r.Price.Round(0) // grids are in whole dollars
	return err
}

func (r *row) concessions(s string) error {
	if w := strings.ToLower(s); w == "none" || w == "no" {
		r.Concessions = decimal.Zero
		return nil
	}
	if strings.HasSuffix(s, "%") {
		return &cellError{fmt.Sprintf("%q is a share", s), "the dollars that the seller paid for the buyer, e.g. $6,000 for 3% of $200,000"}
	}
	x, err := money(s)
	if err == nil && x.IsNegative() {
		return &cellError{fmt.Sprintf("%q is below zero", s), "what the seller paid for the buyer, e.g. $3,000"}
	}
	r.Concessions = x.Round(0)
	return err
}

func (r *row) area(s string) error { return r.areaOf(&r.Area, s, boundArea.Least, boundArea.Most) }

// leastLot is under what no house stands on a lot of its own: the number of a lot on a plat is no
// area; mostLot is a lot in square feet beyond which a bare number is hardly in acres: 500 of them;
// mostBaths are how many baths no house has (common practice, no source).
const (
	leastLot  = 400
	mostLot   = 500 * 43560
	mostBaths = 12
	// mostHalves is how many half ones may stand behind a point.
	mostHalves = 4
)

// lot reads a lot; one that is no lot of a house if it is in the unit of its column counts as
// not known.
func (r *row) lot(s string) error {
	err := r.areaOf(&r.Lot, s, boundLot.Least, boundLot.Most)
	if unread(err) { // which wants an area of rooms
		why, _ := wanted(err)
		err = &cellError{why, lotDoubt.want}
	}
	if err != nil && r.unit == "sqft" {
		if n, bad := number(s, 0, leastLot, ""); bad == nil { // likely acres
			err = &cellError{fmt.Sprintf("%s sq ft are no lot of a house", plainNumber(n.Value)), "the lot with its unit, e.g. 7,405 sq ft or " + s + " acres"}
		}
	}
	if err == nil && r.unit == "acres" && r.Lot.Value > mostLot {
		r.Lot, r.doubt = Fact{}, &lotDoubt
	}
	return err
}

// garageArea reads how large a garage is.
// garageArea reads how large a garage is, or that there is none.
func (r *row) garageArea(s string) error {
	if g, clear := garageOf(r.word(s)); clear && g.kind == "none" {
		if r.Garage == "" {
			r.Garage = r.word(g.kind)
		}
		return nil
	}
	return r.areaOf(&r.GarageArea, s, 0, 100_000)
}

// land reads a lot where the cell says that it is an area: a bare number, or dollars, may
// be what the land is worth.
func (r *row) land(s string) error {
	if strings.Trim(s, "$0123456789,.kK ") == "" {
		r.doubt = &landDoubt
		return nil
	}
	return r.lot(s)
}

// areaOf reads an area; 0, which records hold for "not measured", is not known
// where an area cannot be that small.
func (r *row) areaOf(to *Fact, s string, low, high float64) (err error) {
	if s == "0" && low > 0 {
		return nil
	}
	*to, err = area(s, r.unit, low, high)
	return err
}

// count reads how many there are; 1e1 is a slip, since nobody writes so few in powers of ten.
func count(to *Fact, s string) (err error) {
	const want = "a number of up to 99, e.g. 3"
	if _, powers := scientific(s); powers {
		return &cellError{fmt.Sprintf("%q is no plain number", s), want}
	}
	*to, err = number(s, 0, 99, want)
	return err
}

// mostBedrooms is how many no house has more of (common practice, no source).
const mostBedrooms = 20

// bedroomWords finds 3 bd, 3 beds and 3BR.
var bedroomWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)^(\d{1,2}) *(?:bedrooms?|bdrms?|beds?|bds?|brs?)\.?$`)
})

// bedrooms reads a whole number, since 3/4 may be bedrooms and baths; 0, which records hold
// for "not counted", is not known.
func (r *row) bedrooms(s string) error {
	if strings.ContainsAny(s, "bB") {
		s = bedroomWords().ReplaceAllString(s, "$1")
	}
	err := count(&r.Bedrooms, s)
	if n := r.Bedrooms.Value; unread(err) || n != math.Trunc(n) {
		r.Bedrooms = Fact{}
		return &cellError{fmt.Sprintf("%q is no whole number of bedrooms", s), "how many there are, e.g. 3"}
	}
	if err == nil && (r.Bedrooms.Value == 0 || r.Bedrooms.Value > mostBedrooms) {
		r.Bedrooms, r.doubt = Fact{}, &bedroomDoubt
	}
	return err
}

// fullBaths reads how many full ones there are. Where a number of all of them that is read with it says
// otherwise, the rest may be half ones.
func (r *row) fullBaths(s string) error {
	all := r.FullBaths
	err := r.wholeBaths(&r.FullBaths, s, "full")
	if all.Known && r.FullBaths.Known && all != r.FullBaths {
		r.FullBaths, r.HalfBaths, r.doubt = Fact{}, Fact{}, &restDoubt
	}
	return err
}

// sortedBaths finds 2 baths, 2 full and 1 half bath.
var sortedBaths = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)^(\d{1,2}) *(?:(full|half)(?: (?:bathrooms?|baths?|ba))?|(?:bathrooms?|baths?|ba))\.?$`)
})

// wholeBaths reads how many full or half baths there are; a fraction would be baths of both sorts.
func (r *row) wholeBaths(to *Fact, s, sort string) error {
	if strings.ContainsAny(s, "bBfFhH") {
		if m := sortedBaths().FindStringSubmatch(s); m != nil && (m[2] == "" || strings.EqualFold(m[2], sort)) {
			s = m[1]
		}
	}
	err := count(to, s)
	switch n := to.Value; {
	case unread(err):
	case n != math.Trunc(n):
		*to = Fact{}
		return &cellError{fmt.Sprintf("%q is no whole number of %s baths", s, sort), "how many " + sort + " ones there are, e.g. 1; if it holds full and half ones, name the column   baths"}
	case n > mostBaths:
		*to, r.doubt = Fact{}, &bathDoubt
	}
	return err
}

// halfBaths reads how many half ones there are, unless the number of baths holds them.
func (r *row) halfBaths(s string) error {
	var n Fact
	err := r.wholeBaths(&n, s, "half")
	switch {
	case r.halves:
	case r.total && n.Value > 0:
		r.FullBaths, r.HalfBaths, r.doubt = Fact{}, Fact{}, &totalDoubt
	default:
		r.HalfBaths = n
	}
	return err
}

// fullAndHalf finds 2F 1H, 2F1H, 2 full and 2 full, 1 half.
var fullAndHalf = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(\d{1,2}) ?f(?:ull)?(?:[ ,/&+-]*(?:and )?(\d{1,2}) ?h(?:alf)?)?$`)
})

// bathWords finds what such a number is of.
var bathWords = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i) *(?:bathrooms?|baths?|ba)\b\.?`) })

// parted finds 2/1, 2-1 and 2+1.
var parted = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\d{1,2} ?[/+-] ?\d{1,2}$`) })

// baths reads 2.5 as two full baths and a half one, and quarters as they stand: .75 is by
// custom a bath with a shower and no tub (common practice, no source). Of 2.1 and 2.2 the
// tenths count half ones, as lists of agents write them (from memory), which is doubted; no
// bath at all is not known, as with bedrooms.
func (r *row) baths(s string) error {
	said := s
	if strings.ContainsAny(s, "bB") {
		said = strings.TrimSpace(bathWords().ReplaceAllString(s, ""))
	}
	if m := fullAndHalf().FindStringSubmatch(r.word(said)); m != nil {
		err := count(&r.FullBaths, m[1])
		r.HalfBaths = Fact{0, err == nil}
		if err == nil && m[2] != "" {
			r.halves = true
			err = count(&r.HalfBaths, m[2])
		}
		if r.noBath() {
			r.doubt = &noBathDoubt
		}
		return err
	}
	if parted().MatchString(said) {
		return &cellError{fmt.Sprintf("%q may be full and half baths, or a part of one", s), "which are which, e.g. 2 full 1 half, or 2.5"}
	}
	var n Fact
	if err := count(&n, said); err != nil {
		return err
	}
	full, part := math.Modf(n.Value)
	tenths := part * 10
	switch halves := math.Round(tenths); {
	case n.Value > mostBaths:
		r.doubt = &bathDoubt
		return nil
	case n.Value == 0:
		r.doubt = &noBathDoubt
		return nil
	case math.Mod(part, 0.25) == 0:
		r.halves, tenths = part > 0, 2*part
	case math.Abs(tenths-halves) < 1e-9 && halves <= mostHalves:
		r.doubt, r.halves, tenths = &bathPartDoubt, true, halves
	default:
		r.doubt = &bathDoubt
		return nil
	}
	if r.FullBaths = Known(full); r.halves || !r.HalfBaths.Known {
		r.HalfBaths = Known(tenths)
	}
	return nil
}

// totalBaths reads baths under a heading that calls them a total.
func (r *row) totalBaths(s string) error {
	err := r.baths(s)
	r.total = r.FullBaths.Known
	return err
}

// noBath reports whether a house is said to have none, and then they count as not known: full
// and half ones may stand in cells of their own, so that both are to be read first.
func (r *row) noBath() bool {
	none := r.FullBaths.Known && r.FullBaths.Value == 0 && r.HalfBaths.Value == 0
	if none {
		r.FullBaths, r.HalfBaths = Fact{}, Fact{}
	}
	return none
}

func (r *row) built(s string) (err error) {
	if s == "0" {
		return nil
	}
	const want = "the year it was built, e.g. 1957"
	if r.Built, err = number(s, boundBuilt.Least, boundBuilt.Most, want); unread(err) {
		return &cellError{fmt.Sprintf("%q is no year", s), want}
	}
	return err
}

func (r *row) condition(s string) (err error) {
	r.Condition, err = condition(s)
	return err
}

// Mile is a mile in metres: 5,280 feet of 0.3048 m.
const Mile = 1609.344

// metres are how long the units of a plane and of a distance are.
var metres = map[string]float64{"m": 1, "ft": 0.3048, "km": 1000, "mi": Mile, ofMiles: Mile}

// ofMiles is the unit of a column that says so itself: an m in it is none of metres.
const ofMiles = "miles"

func (r *row) coordinate(to *float64, s string, bound float64, want string) error {
	f, err := number(s, -bound, bound, want)
	*to = f.Value
	return err
}

func (r *row) x(s string) error {
	err := r.coordinate(&r.onPlane.X, s, 1e8, "metres east of an origin, e.g. 484668")
	r.onPlane.X *= metres[r.unit]
	return err
}

func (r *row) y(s string) error {
	err := r.coordinate(&r.onPlane.Y, s, 1e8, "metres north of an origin, e.g. 195270")
	r.onPlane.Y *= metres[r.unit]
	return err
}

func (r *row) longitude(s string) error {
	return r.coordinate(&r.inDegrees.X, s, 180, "degrees, west below zero, e.g. -83.5552")
}

func (r *row) latitude(s string) error {
	return r.coordinate(&r.inDegrees.Y, s, 90, "degrees, e.g. 41.6639")
}

// away finds 0.4 mi, .34 miles NW, 1/2 mile, 1¼ mi and 600 m.
var away = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^([\d.,]+|(?:\d+[ -])?\d+/\d+|\d* ?[¼½¾⅓⅔⅛⅜⅝⅞]) ?(m|ft|km|mi|miles?)?\.?(?: [nesw]{1,3})?$`)
})

// fewMetres are too few between two houses that are not side by side: among miles, so many
// "m" are miles, and then are those beside them, up to so many that no sale is looked for as
// far off in miles (common practice, no source).
const fewMetres, manyMiles = 10, 100

// distance reads 0.4, in the unit of its column, or a length with its unit.
func (r *row) distance(s string) error {
	const want = "how far it is from the subject, e.g. 0.4 or 0.4 mi"
	m := away().FindStringSubmatch(strings.ToLower(s))
	if m == nil {
		l, err := quantity.ParseLength(s)
		r.Stated = Fact{l.Metres().InexactFloat64(), err == nil}
		if err != nil && strings.Contains(strings.ToLower(s), "mi") {
			return &cellError{fmt.Sprintf("%q is no number of miles", s), "it as a number, e.g. 0.5 mi"}
		}
		if err != nil { // what package quantity wants is a length of feet and inches
			return &cellError{fmt.Sprintf("%q is no distance", s), "how many miles off it is, e.g. 0.4 miles"}
		}
		return nil
	}
	bare, unit := m[1], cmp.Or(strings.TrimSuffix(strings.TrimSuffix(m[2], "s"), "le"), r.unit)
	if strings.HasPrefix(bare, ".") {
		bare = "0" + bare
	}
	f, err := number(bare, 0, 1e6, want)
	if err != nil && strings.Contains(bare, "/") {
		err = &cellError{fmt.Sprintf("%q is no number", s), "it as a number, e.g. 0.5 mi"}
	}
	r.miles = r.miles || r.unit == ofMiles || unit == "mi" && m[2] != ""
	if unit == "m" && (r.unit == "mi" || r.unit == ofMiles) {
		switch {
		case f.Value < fewMetres:
			unit, r.doubt = "mi", &milesDoubt
		case f.Value < manyMiles:
			r.metres, r.doubt = true, &metresDoubt
		}
	}
	r.Stated = Fact{f.Value * metres[unit], err == nil}
	return err
}
