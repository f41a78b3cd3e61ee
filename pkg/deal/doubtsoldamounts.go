package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

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

// SayUntold is how to say what is worth what nothing tells: an amount for each line or, of a garage
// whose worth the sales tell by its kind, the kind.
func SayUntold(v *comps.Value) string {
	lines, kind := v.Untold, ""
	if len(v.GarageKinds) > 0 && slices.Contains(lines, comps.Garage) {
		lines = slices.DeleteFunc(slices.Clone(lines), func(l comps.Line) bool { return l == comps.Garage })
		kind = sayKind(v)
	}
	if len(lines) == 0 {
		return kind
	}
	amounts := "say what it is worth, e.g.   amounts: {" + AmountsFor(lines) + "}   under comps"
	if kind != "" {
		return kind + "   ; of " + comps.Names(lines) + " " + amounts
	}
	return amounts
}

// sayKind is how to say of what kind the garage of the house is.
func sayKind(v *comps.Value) string {
	return "say of what kind the garage of the house is, as the sales do (" + strings.Join(v.GarageKinds, ", ") + "), e.g.   garage: 2 car attached"
}

// doubtGarageKind warns of a garage of the house that counts as one of the usual kind, since the sales
// tell the worth of other kinds alone.
func (r *reader) doubtGarageKind(c *Comparables) {
	if as := c.Value.GarageAs; as != "" && len(c.Value.GarageKinds) > 0 {
		own := c.Subject.Garage
		if own == comps.SomeGarage {
			own = "of no said kind"
		}
		r.say("comps-not-told", r.where("house.garage", "house"), "the garage of the house is %s, of which no sale tells the worth, so it counts as %s", own, as)("%s", sayKind(c.Value))
	}
}

// wholeSqFt is from what part of the whole price per sq ft on an amount for one looks like that
// price: a square foot more shares the land, the kitchen and the bath that are there, so it is
// worth some third to half of it. mostForLand is the same of the price per sq ft of lot. leastStep is under what a step of condition looks like a share
// (common practice, no source).
const (
	wholeSqFt   = 0.9
	mostForLand = 0.5
	leastStep   = 100
)

// mostOfPrice are from what percentage of the middle price on an amount looks like one with a
// nought too many, and mostOwn the same of an own line (common practice, no source).
var mostOfPrice = map[comps.Line]int64{comps.Rooms: 20, comps.Baths: 20, comps.Age: 1, comps.Condition: 25, comps.Garage: 15}

const mostOwn = 33

// burdens are words of what usually takes from the worth of a house (common practice, no source).
var burdens = []string{"busy", "traffic", "highway", "freeway", "interstate", "railroad", "railway", "rail line", "train", "airport", "flight path", "power line", "flood", "noise", "noisy", "easement", "landfill", "commercial"}

// doubtGivenNoughts warns of amounts and own lines that are a large part of the middle price.
func (r *reader) doubtGivenNoughts(c *Comparables) {
	middle := decimal.NewFromFloat(c.middlePrice()).Round(0)
	says := func(most int64) string {
		return fmt.Sprintf("over %d%% of the middle price of the sales, %s", most, quantity.FormatDollars(middle))
	}
	for _, row := range adjusted {
		most, ok := mostOfPrice[row.line]
		if g := r.good("comps.amounts." + row.key); ok && g != nil && c.beyondAmount(row.rate, g.number) {
			r.say("comps-amount-unusual", g.at(), "a %s is worth %s, it says, %s", row.key, g.node.text, says(most))("check it for a nought too many; it is for one, e.g.   %s", fieldNamed("comps.amounts", row.key).example())
		}
	}
	for _, x := range r.extras {
		name := plainKey(x.Name)
		if x.Worth.IsPositive() && slices.ContainsFunc(burdens, func(w string) bool { return strings.Contains(name, w) }) && !strings.Contains(name, "no ") && !strings.Contains(name, "not ") {
			r.say("comps-amount-unusual", x.at, "the own line %s makes a house worth %s more, it says, and such a thing usually makes it worth less", diag.Quote(x.Name), x.text)("write   %s: -%s   if it takes that off", x.Name, strings.TrimPrefix(x.text, "+"))
		}
		if x.Worth.Abs().GreaterThan(c.partOfMiddle(mostOwn)) {
			r.say("comps-amount-unusual", x.at, "the own line %s is worth %s, it says, %s", diag.Quote(x.Name), x.text, says(mostOwn))("check it for a nought too many; every sale without it, or with it, is moved by as much")
		}
	}
}

// doubtGivenAmounts warns of amounts of the file that are hardly what a unit more is worth.
func (r *reader) doubtGivenAmounts(c *Comparables) {
	if g, whole := r.good("comps.amounts.square foot"), c.middlePerSqFt(livingAreaOf); g != nil && c.beyondAmount("size_rate", g.number) {
		r.say("comps-amount-unusual", g.at(), "a square foot more is worth %s, it says, and the sales went for %s a sq ft with land and all: that is near the whole price", g.node.text, quantity.FormatDollars(decimal.NewFromFloat(whole).Round(0)))("write what a sq ft more adds to a house, some third to half of its price per sq ft; or leave it out, and the sales tell it where they can")
	}
	if g, whole := r.good("comps.amounts.square foot of lot"), c.middlePerSqFt(lotOf); g != nil && c.beyondAmount("lot_rate", g.number) {
		hint := "write what a sq ft more of land adds, e.g.   " + fieldNamed("comps.amounts", g.field.Key()).example()
		if x := r.good("comps.amounts.square foot"); x != nil && x.number.LessThan(g.number) {
			hint = "look whether it was changed about with   square foot: " + x.node.text
		}
		r.say("comps-amount-unusual", g.at(), "a square foot more of lot is worth %s, it says, and the sales went for %s a sq ft of theirs, house and all: the land alone would be over half of the price", g.node.text, quantity.FormatMoney(decimal.NewFromFloat(whole)))("%s", hint)
	}
	if g := r.good("comps.amounts.step of condition"); g != nil && g.number.IsPositive() && g.number.LessThan(decimal.NewFromInt(leastStep)) {
		r.say("comps-amount-unusual", g.at(), "a step of condition is worth %s, it says, which is next to nothing: it is in dollars, and no share of the price", quantity.FormatDollars(g.number.Round(0)))("write the dollars, e.g.   %s", fieldNamed("comps.amounts", g.field.Key()).example())
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
