package deal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// usualSales is how many closed sales a value usually takes (Fannie Mae Selling Guide,
// comparable selection).
const usualSales = 3

// nearlyAlone is the weight from which the other sales tell next to nothing.
const nearlyAlone = 0.95

// counts is the weight from which a sale far off is worth a word; one far apart from all
// others is so with any, since it weighs little for that very reason.
const counts = 0.05

// doubtComps warns of comparables that say little, and of a plan that goes beyond them.
func (r *reader) doubtComps() {
	c := r.deal.Comps
	if c == nil || c.Value == nil {
		return
	}
	at := r.needed("comps")
	v := c.Value
	if n := len(v.Rows); n < usualSales {
		r.say("comps-few", at, "the value is drawn from only %d of the usual three sales, so its range is wide", n)("add houses that sold nearby in the last 12 months")
	}
	if top := slices.MaxFunc(v.Rows, func(x, y comps.Row) int { return cmp.Compare(x.Weight, y.Weight) }); len(v.Rows) >= usualSales && top.Weight > nearlyAlone {
		r.say("comps-few", c.Place(&top.Sold), "%s weighs over %.0f%%, so the value is drawn from it nearly alone", top.Name(), 100*nearlyAlone)("look what makes the other sales so unlike the house: a column of theirs may be read as what it is not")
	}
	if len(v.Untold) > 0 {
		why := ""
		if i := slices.IndexFunc(v.Disbelieved, func(d comps.Disbelief) bool { return slices.Contains(v.Untold, d.Line) }); i >= 0 {
			why = " (of " + v.Disbelieved[i].Line.String() + " " + v.Disbelieved[i].Why + ")"
		}
		r.say("comps-not-adjusted", at, "sales differ from the house in %s, which is not adjusted: no amount is given and the sales tell none that can be so%s", comps.Names(v.Untold), why)("say what it is worth, e.g.   amounts: {%s}   under comps", AmountsFor(v.Untold))
	}
	r.doubtNotCompared(c)
	if names := r.notTold(c); names != "" {
		tell := r.say("comps-not-told", r.needed("house", "comps"), "the house says %s, and none of the sales does, so that is not compared", names)
		if header, field := r.unreadFor(c); len(c.Unread) > 0 && field == "" {
			tell("add it to the sales, where you know it, or see whether a column that is not read holds it: %s", strings.Join(c.Unread[:min(len(c.Unread), mostSaid)], ", "))
		} else if field != "" {
			tell("look whether one of the columns that are not read holds it, and say which, e.g.   columns: {%s: %s}", field, diag.Quote(header))
		} else {
			tell("add it to the sales, where you know it")
		}
	}
	if n := garagesByArea(c); n > 0 {
		r.say("comps-not-told", r.needed("house", "comps"), "the house says for how many cars its garage is, and %s how large it is, so that is not compared", quantity.Counted(n, "sale")+map[bool]string{true: " says", false: " say"}[n == 1])("say of the sales for how many cars, where you know it, in a column   garage cars")
	}
	if c.Conditions && r.statesValue() {
		moves := "moves its low value at most"
		if r.got["value.low"] != nil {
			moves = "changes nothing"
		}
		r.say("comps-condition-unused", r.where("comps.condition by option"), "the deal states what the house will be worth, so the condition that an option leaves it in %s", moves)("take the stated value away for a value by the comparables; or take condition by option away")
	} else if _, told := v.Linear[comps.Condition]; c.Conditions && !told && !slices.ContainsFunc(v.Rates, func(x comps.Rate) bool { return x.Line == comps.Condition }) {
		r.say("comps-condition-alike", r.where("comps.condition by option"), "nothing tells what condition is worth, so all options are valued alike")("add   amounts: {step of condition: $14,000}   , from what houses of either finish sold for")
	}
	r.doubtTrend(c)
	r.doubtPairs(c)
	r.doubtPriceless(c)
	r.doubtIdleAmounts(c)
	r.doubtAreas(c)
	r.doubtOddRooms(c)
	r.doubtLots(c)
	r.doubtTypes(c)
	r.doubtDistances(c)
	r.doubtBuilt(c)
	r.doubtGarages(c)
	r.doubtOldSales(c)
	r.doubtOwnSale(c)
	r.doubtSoldTwice(c)
	r.doubtCountedTwice(c)
	r.doubtTwoApart(c)
	amounts := ""
	if r.got["comps.amounts"] != nil {
		amounts = ", and at the amounts, each of which is for one unit"
	}
	for _, row := range v.Rows {
		if row.Apart || row.Weight >= counts && (row.FarOff || row.Flags.Has(comps.Outlier)) {
			r.say("sale-far-off", c.Place(&row.Sold), "%s, adjusted to %s: %s %s", row.Name(), quantity.FormatDollars(row.Adjusted), row.OthersSay(), farBy(row.Off))("look at it again%s; strike it under comps if it was no open sale of such a house", amounts)
		}
	}
	for _, p := range c.Choice.Passed {
		r.say("sale-far-off", c.Place(&p.Sold), "%s is passed over: %s", p.Name(), p.Why)("name it under   add   in comps if it should count")
	}
	r.doubtBeyond()
	r.doubtConcessions(c)
}

// twiceAsMuch is from how many times the other on, once adjusted, one of two sales looks
// mistyped: which of them, nobody knows (common practice, no source).
var twiceAsMuch = decimal.NewFromInt(2)

// doubtTwoApart warns of two sales that lie so far apart that one of them is likely wrong.
func (r *reader) doubtTwoApart(c *Comparables) {
	if len(c.Value.Rows) != 2 {
		return
	}
	low, high := &c.Value.Rows[0], &c.Value.Rows[1]
	if low.Adjusted.GreaterThan(high.Adjusted) {
		low, high = high, low
	}
	if high.Adjusted.GreaterThan(low.Adjusted.Mul(twiceAsMuch)) {
		r.say("sale-far-off", c.Place(&high.Sold), "%s is adjusted to %s, and the only other sale, %s, to %s: one of them is likely wrong", high.Name(), quantity.FormatDollars(high.Adjusted), low.Name(), quantity.FormatDollars(low.Adjusted))("look at the prices of both for a digit too many or too few, and strike the one that is wrong")
	}
}

// DoubtApart says of the sale that most of the value comes of, of those so far from the others
// that they are likely mistyped, how much that is; nothing where it is next to nothing.
func (c *Comparables) DoubtApart() string {
	var most *comps.Row
	for i := range c.Value.Rows {
		if row := &c.Value.Rows[i]; row.Apart && !c.Value.Faint(row) && (most == nil || c.Value.Part(row) > c.Value.Part(most)) {
			most = row
		}
	}
	if most == nil {
		return ""
	}
	return fmt.Sprintf("%s of it comes of %s, sold for %s, over twice or under half of the middle one once adjusted. Look at its price (%s) for a digit too many or too few, and correct or strike it", c.part(most), most.Name(), quantity.FormatDollars(most.Price), c.Place(&most.Sold))
}

// part is how much of the value comes of a sale, in words.
func (c *Comparables) part(row *comps.Row) string {
	part := decimal.NewFromFloat(c.Value.Part(row)).Round(2)
	if part.IsZero() {
		return "under 1%"
	}
	return quantity.FormatPercent(part, 0)
}

// dearer says which sales were sold for more than the dearest one, and why they do not count
// as it.
func dearer(c *Comparables, best decimal.Decimal) string {
	var out []string
	for i := range c.Value.Rows {
		if row := &c.Value.Rows[i]; row.NotBest != "" && row.Price.GreaterThan(best) {
			says := row.Name() + " not counted as that, " + row.NotBest
			if row.Apart {
				says += fmt.Sprintf("; %s of the value comes of it all the same", c.part(row))
			}
			out = append(out, says)
		}
	}
	if len(out) == 0 {
		return ""
	}
	return " (" + strings.Join(out, "; ") + ")"
}

// timesTheHouse is from how many times the living area of the house on, or how small a
// part of it, that of a sale looks misread (common practice, no source).
const timesTheHouse = 4

// leastHouse is the living area in sq ft under which hardly any house is (common practice, no source).
const leastHouse = 250

// unlikeMost reports whether something holds of three in four sales, of two at least: then
// it is likely the house that was mistyped, and not they.
func unlikeMost(c *Comparables, so func(*comps.Row) bool) bool {
	n := 0
	for i := range c.Value.Rows {
		if so(&c.Value.Rows[i]) {
			n++
		}
	}
	return n >= 2 && 4*n >= 3*len(c.Value.Rows)
}

// doubtAreas warns of living areas that are hardly those of houses like this one.
func (r *reader) doubtAreas(c *Comparables) {
	ours, whose := c.Subject.Area, "the house has"
	size := func(row *comps.Row) float64 { return row.Area.Value / ours.Value }
	if ours.Known && (unlikeMost(c, func(row *comps.Row) bool { return row.Area.Known && size(row) >= timesTheHouse }) ||
		unlikeMost(c, func(row *comps.Row) bool { return row.Area.Known && size(row) <= 1.0/timesTheHouse })) {
		half := middleArea(c.Value.Rows)
		likely, hint := "the house was mistyped", "look whether its living area has a digit too many or too few; the whole value hangs on it"
		switch x := ours.Value / half.Value; {
		case half.Value < leastHouse:
			likely, hint = "they are in square metres, or something else than living areas", "say so in the heading, e.g. living area m2; the whole value hangs on it"
		case x > 8 && x < 14: // 10.76 sq ft are one square metre
			hint = "look whether its living area has a digit too many, or theirs are in square metres: then say so in the heading, e.g. living area m2; the whole value hangs on it"
		}
		r.say(MistypedHouse, r.needed("house.living area", "house"), "the house has %s sq ft of living area, and the sales about %s: likely %s", quantity.FormatCount(decimalOf(ours), 0), quantity.FormatCount(decimalOf(half), 0), likely)("%s", hint)
		return
	}
	if !ours.Known {
		ours, whose = middleArea(c.Value.Rows), "half of the sales have at most"
	}
	for _, row := range c.Value.Rows {
		if x := row.Area; x.Known && ours.Known && (x.Value >= timesTheHouse*ours.Value || x.Value <= ours.Value/timesTheHouse) {
			r.say("sale-odd-size", c.Place(&row.Sold), "%s has %s sq ft, and %s %s", row.Name(), quantity.FormatCount(decimalOf(x), 0), whose, quantity.FormatCount(decimalOf(ours), 0))("look whether the living area was read right, and strike a sale of quite another house")
		}
	}
}

// doubtOddRooms warns of many times as many bedrooms as the house has.
func (r *reader) doubtOddRooms(c *Comparables) {
	ours := c.Subject.Bedrooms
	for _, row := range c.Value.Rows {
		if x := row.Bedrooms; x.Known && ours.Known && ours.Value > 0 && x.Value >= timesTheHouse*ours.Value {
			r.say("sale-odd-size", c.Place(&row.Sold), "%s has %s bedrooms, and the house %s", row.Name(), quantity.FormatCount(decimalOf(x), 0), quantity.FormatCount(decimalOf(ours), 0))("look whether they were read right, and strike a sale of quite another house")
		}
	}
}

// timesTheLot is the same of lots, which differ more (common practice, no source).
const timesTheLot = 20

// doubtLots warns of lots that are hardly those of houses like this one.
func (r *reader) doubtLots(c *Comparables) {
	ours := c.Subject.Lot
	for _, row := range c.Value.Rows {
		if x := row.Lot; x.Known && ours.Known && (x.Value >= timesTheLot*ours.Value || x.Value <= ours.Value/timesTheLot) {
			r.say("sale-odd-size", c.Place(&row.Sold), "%s has a lot of %s sq ft, and the house one of %s", row.Name(), quantity.FormatCount(decimalOf(x), 0), quantity.FormatCount(decimalOf(ours), 0))("look whether both lots were read right, in acres or sq ft, and strike a sale of quite another house")
		}
	}
}

// doubtTypes warns of sales of another type than the house, where nothing tells what that is
// worth.
func (r *reader) doubtTypes(c *Comparables) {
	var kinds []string
	n := 0
	for _, row := range c.Value.Rows {
		if row.OtherType {
			n, kinds = n+1, append(kinds, row.Kind)
		}
	}
	if n == 0 {
		return
	}
	slices.Sort(kinds)
	kinds = slices.Compact(kinds)
	r.say("comps-other-type", r.where("house.type", "house"), "%d of %s %s %s, the house is %s: type is not adjusted", n, quantity.Counted(len(c.Value.Rows), "sale"), map[bool]string{true: "is", false: "are"}[n == 1], strings.Join(kinds, " or "), c.Subject.Kind)("look for sales of its type instead; where both words say the same, write that of the sales under house, e.g.   type: %s", kinds[0])
}

// A sale looks misplaced from so far off, metres (50 miles), or from so many times the
// middle distance of the sales on that is over a mile (common practice, no source).
const (
	farAway      = 50 * comps.Mile
	timesTheRest = 10
)

// doubtDistances warns of sales that hardly stand in the same market.
func (r *reader) doubtDistances(c *Comparables) {
	var all []float64
	for _, row := range c.Value.Rows {
		if row.Distance.Known {
			all = append(all, row.Distance.Value)
		}
	}
	slices.Sort(all)
	if c.Subject.Place.Known && unlikeMost(c, func(row *comps.Row) bool { return row.Distance.Known && row.Distance.Value > farAway }) {
		r.say(MistypedHouse, r.needed("house.x", "house.y", "house.longitude", "house.latitude", "house"), "the house stands about %s miles from nearly all sales: likely its place was mistyped", milesOf(all[len(all)/2]))("look whether its place has a digit too many or too few, and counts from where the places of the sales do")
		return
	}
	for _, row := range c.Value.Rows {
		d, mid := row.Distance.Value, 0.0
		if row.Distance.Known {
			mid = all[(len(all)-1)/2]
		}
		if d > farAway || d > comps.Mile && d > timesTheRest*mid {
			r.say("sale-far-away", c.Place(&row.Sold), "%s stands %s miles off, and half of the sales at most %s", row.Name(), milesOf(d), milesOf(mid))("look whether its distance or place was read right, and strike a sale of another market")
		}
	}
}

func milesOf(metres float64) string {
	return quantity.FormatCount(decimal.NewFromFloat(metres/comps.Mile), 1)
}

// doubtBuilt warns of sold houses that were not built yet; a new one may be sold in the
// year before.
func (r *reader) doubtBuilt(c *Comparables) {
	for _, row := range c.Value.Rows {
		if x := row.Built; x.Known && int(x.Value) > row.Date.Year+1 {
			r.say("sale-built-later", c.Place(&row.Sold), "%s was built in %.0f, it says, and sold on %s", row.Name(), x.Value, row.Date)("look whether the year was read right; it is compared by it as it stands")
		}
	}
}

// doubtGarages names garages of a known kind that count as one for a car against others,
// since nothing says for how many they are.
func (r *reader) doubtGarages(c *Comparables) {
	if rate, ok := c.Value.Linear[comps.Garage]; !ok || rate.Worth == 0 {
		return
	}
	const write = "write for how many, e.g.   garage: 2 car %s"
	told := func(h *comps.House) bool { return h.Cars().Known && !h.CarsGuessed() }
	if s := &c.Subject.House; s.CarsGuessed() {
		if slices.ContainsFunc(c.Value.Rows, func(row comps.Row) bool { return told(&row.House) }) {
			r.say("garage-counts-as-one", r.where("house.garage", "house"), "the house has a garage, %s, and does not say for how many cars, so it counts as one for one car", s.Garage)(write, s.Garage)
		}
		return
	}
	var first *comps.Row
	n := 0
	for i := range c.Value.Rows {
		if c.Value.Rows[i].CarsGuessed() && told(&c.Subject.House) {
			if n++; first == nil {
				first = &c.Value.Rows[i]
			}
		}
	}
	more := ""
	if n > 1 {
		more = fmt.Sprintf("; and %d more like it", n-1)
	}
	if n > 0 {
		r.say("garage-counts-as-one", c.Place(&first.Sold), "%s has a garage, %s, and does not say for how many cars, so it counts as one for one car%s", first.Name(), first.Garage, more)(write, first.Garage)
	}
}

// middleArea is the median of the living areas that are known.
func middleArea(rows []comps.Row) comps.Fact {
	var all []float64
	for _, row := range rows {
		if row.Area.Known {
			all = append(all, row.Area.Value)
		}
	}
	if len(all) == 0 {
		return comps.Fact{}
	}
	return comps.Known(middleOf(all))
}

func farBy(x float64) string {
	words := "more"
	if x < 0 {
		x, words = -x, "less"
	}
	return quantity.FormatPercent(decimal.NewFromFloat(x).Round(2), 0) + " " + words
}

// AmountsFor are the keys that give what some lines are worth, with their examples.
func AmountsFor(lines []comps.Line) string {
	var out []string
	for _, row := range adjusted {
		if slices.Contains(lines, row.line) {
			out = append(out, fieldNamed("comps.amounts", row.key).example())
		}
	}
	return strings.Join(out, ", ")
}

// placeKeys are the two ways to say where a house stands, each in two halves.
var placeKeys = [][2]string{{"x", "y"}, {"longitude", "latitude"}}

// doubtHalfPlace warns of half a place of the house, which tells nothing.
func (r *reader) doubtHalfPlace() {
	so := ""
	if !r.entry("house.").Sold().Place.Known {
		so = ", so the house does not say where it stands"
	}
	for _, kind := range placeKeys {
		for i, key := range kind {
			if g, other := r.good("house."+key), "house."+kind[1-i]; g != nil && r.got[other] == nil {
				r.say("doubtful-cell", g.at(), "%s is not used without %s%s", key, kind[1-i], so)("add   %s: %s   under house", kind[1-i], fieldNamed("house", kind[1-i]).Example)
			}
		}
	}
}

// A fact is what a house and a sale may say of themselves: what it is called in a message,
// the field of a list that holds it, the key of the house, and whether it is known.
type fact struct {
	name, field, key string
	known            func(*comps.House) bool
}

// facts are those that houses are compared by, but for where they stand.
func facts() (out []fact) {
	for _, row := range adjusted {
		if row.figure != nil {
			out = append(out, fact{row.line.String(), fieldsOf[row.line], fieldsOf[row.line], func(h *comps.House) bool { return row.figure(h).Known }})
		}
	}
	return append(out,
		fact{"type", "type", "type", func(h *comps.House) bool { return h.Kind != "" }},
		fact{"storeys", "storeys", "levels", func(h *comps.House) bool { return h.Storeys != "" }})
}

// doubtNotCompared warns of what most sales say of themselves and the file not of the house.
func (r *reader) doubtNotCompared(c *Comparables) {
	var names, write []string
	for _, d := range facts() {
		if !d.known(&c.Subject.House) && c.most(func(s *comps.Row) bool { return d.known(&s.House) }) {
			names, write = append(names, d.name), append(write, fieldNamed("house", d.key).example())
		}
	}
	write = write[:min(len(write), 1)] // one shows how
	stands := func(s *comps.Row) bool { return s.Place.Known && !s.Stated.Known }
	if !r.saysPlace() && c.most(stands) {
		keys := placeKeys[0]
		if c.most(func(s *comps.Row) bool { return stands(s) && s.Place.Degrees }) {
			keys = placeKeys[1]
		}
		names = append(names, "where they stand")
		write = append(write, fieldNamed("house", keys[0]).example(), fieldNamed("house", keys[1]).example())
	}
	if len(names) > 0 {
		r.say("comps-not-compared", r.needed("house", "comps"), "the sales say %s, the house does not, so that is not compared", strings.Join(names, ", "))("add under house what it will be when the work is done, e.g.   %s", strings.Join(write, ", "))
	}
}

// doubtIdleAmounts warns of amounts and own lines that touch no sale. What one side alone says is
// told as such, and an amount of nothing is meant to do nothing.
func (r *reader) doubtIdleAmounts(c *Comparables) {
	var unused []*reading
	write := ""
	for _, row := range adjusted {
		g := r.good("comps.amounts." + row.key)
		if g == nil || row.figure == nil || g.number.IsZero() || row.figure(&c.Subject.House).Known || c.most(func(s *comps.Row) bool { return row.figure(&s.House).Known }) {
			continue
		}
		if unused = append(unused, g); write == "" {
			write = fieldNamed("house", fieldsOf[row.line]).example()
		}
	}
	if len(unused) > 0 {
		var names []string
		for _, g := range unused {
			names = append(names, g.field.Key())
		}
		is := map[bool]string{true: "amount for a %s is", false: "amounts for a %s are"}[len(names) == 1]
		r.say("comps-amount-unused", unused[0].at(), "the "+is+" used by no sale: neither the house nor most sales say what to compare", strings.Join(names, ", a "))("say it of the house and of the sales, e.g.   %s   or take the amount away", write)
	}
	for _, x := range r.extras {
		if !slices.Contains(c.Subject.Has, x.Name) && !slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return slices.Contains(s.Has, x.Name) }) {
			r.say("comps-amount-unused", x.at, "the own line %s is used by no sale: neither the house nor any sale has it", diag.Quote(x.Name))("name it where it is, e.g.   has: [%s]   under house or a sale, or take the line away", x.Name)
		}
	}
}

// most reports whether something holds of more than half of the sales.
func (c *Comparables) most(so func(*comps.Row) bool) bool {
	n := 0
	for i := range c.Value.Rows {
		if so(&c.Value.Rows[i]) {
			n++
		}
	}
	return 2*n > len(c.Value.Rows)
}

// saysPlace reports whether the file says anything of where the house stands, be it half.
func (r *reader) saysPlace() bool {
	return slices.ContainsFunc(placeKeys, func(kind [2]string) bool {
		return r.got["house."+kind[0]] != nil || r.got["house."+kind[1]] != nil
	})
}

// factsNotTold are what the file says of the house and no sale of itself.
func (r *reader) factsNotTold(c *Comparables) (out []fact) {
	for _, d := range facts() {
		if d.field == fieldsOf[comps.Garage] && garagesByArea(c) > 0 {
			continue
		}
		if d.known(&c.Subject.House) && !slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return d.known(&s.House) }) {
			out = append(out, d)
		}
	}
	return out
}

// garagesByArea counts the sales that say of a garage how large it is and no more, while the house
// says for how many cars.
func garagesByArea(c *Comparables) (n int) {
	for i := range c.Value.Rows {
		if s := &c.Value.Rows[i]; c.Subject.GarageCars.Known && s.GarageArea.Value > 0 && !s.GarageCars.Known {
			n++
		}
	}
	return n
}

// notTold names those, and the place of the house where no sale has one.
func (r *reader) notTold(c *Comparables) string {
	var out []string
	for _, d := range r.factsNotTold(c) {
		out = append(out, d.name)
	}
	if at := c.Subject.Place; at.Known && !slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return s.Distance.Known }) {
		how := "where it stands"
		if slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return s.Place.Known }) { // in the other way
			how += map[bool]string{true: " in degrees", false: " on a plane"}[at.Degrees]
		}
		out = append(out, how)
	}
	return strings.Join(out, ", ")
}

// fieldsOf are the fields of a list that hold the figures of the grid.
var fieldsOf = map[comps.Line]string{
	comps.Size: "living area", comps.Lot: "lot", comps.Rooms: "bedrooms", comps.Baths: "baths", comps.Age: "year built", comps.Condition: "condition", comps.Garage: "garage",
}

// unreadFor is a column that is not read and what it may hold, by its name, of what no
// sale says; "" if none is called like it.
func (r *reader) unreadFor(c *Comparables) (header, field string) {
	var missing []string
	for _, d := range r.factsNotTold(c) {
		missing = append(missing, d.field)
	}
	for _, h := range c.Unread {
		if like := comps.FieldLike(h, ""); slices.Contains(missing, like) {
			return h, like
		}
	}
	return "", ""
}

// doubtBeyond warns of values outside what the comparables bear out, and of a plan that
// spends more than the best of them sold for.
func (r *reader) doubtBeyond() {
	of := func(line string) decimal.Decimal {
		x, _ := r.worked(r.deal.Root, line)
		return x
	}
	value, low, high, best := of("after_repair_value"), of("comps_low"), of("comps_high"), of("best_comp_price")
	but := dearer(r.deal.Comps, best)
	stated, from := r.good("value.after-repair value"), ""
	if before := r.good("value.before work"); stated == nil && before != nil {
		stated, from = before, ", from the value before work and what the options add,"
	}
	at := r.needed("comps")
	if stated != nil {
		at = stated.at()
	}
	if stated != nil && (value.LessThan(low) || value.GreaterThan(high)) {
		text := stated.dollars()
		if from != "" {
			text = quantity.FormatDollars(value)
		}
		r.say("value-outside-comps", at, "the after-repair value (%s)%s is outside what the comparables say, %s to %s", text, from, quantity.FormatDollars(low), quantity.FormatDollars(high))("one such house in ten sells below that, one above; ledgerboard comps   shows the sales; change the value, or say better what they are")
	}
	if value.GreaterThan(best) {
		r.say("above-best-sale", at, "the after-repair value (%s) is above %s, the most that any comparable sold for%s", quantity.FormatDollars(value), quantity.FormatDollars(best), but)("a house rarely sells above the best of its neighbourhood, whatever is put into it; look for one that did")
	}
	if cost := of("house_and_work"); cost.GreaterThan(best) {
		r.say("cost-above-best-sale", r.needed("renovation", "rooms", "comps"), "price and work come to %s, above %s, the most that any comparable sold for%s", quantity.FormatDollars(cost), quantity.FormatDollars(best), but)("the neighbourhood may not pay for this much work; plan less, or look for sales that bear it out")
	}
}

// doubtConcessions warns where concessions count twice: taken off the comparables and
// paid at the sale.
func (r *reader) doubtConcessions(c *Comparables) {
	paid := slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return s.Concessions.IsPositive() })
	for _, m := range r.deal.Root.In("selling_fee") {
		if paid && holdsAny(strings.ToLower(m.Label), "concession") {
			r.say("concessions-twice", m.Pos, "%s is a selling cost, and the comparables are adjusted for concessions already", m.Label)("leave one of them out: either the line, or the concessions of the sales")
		}
	}
}
