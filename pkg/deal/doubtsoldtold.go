package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

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
// the field of a list that holds it, which is the key of the house too, and whether it is known.
type fact struct {
	name, field string
	known       func(*comps.House) bool
}

// facts are those that houses are compared by, but for where they stand.
func facts() (out []fact) {
	for _, row := range adjusted {
		if row.figure != nil {
			out = append(out, fact{row.line.String(), fieldsOf[row.line], func(h *comps.House) bool { return row.figure(h).Known }})
		}
	}
	return append(out,
		fact{"type", "type", func(h *comps.House) bool { return h.Kind != "" }},
		fact{storeys, storeys, func(h *comps.House) bool { return h.Storeys != "" }})
}

// doubtNotCompared warns of what most sales say of themselves and the file not of the house. What
// it says and nobody understood is told where it stands.
func (r *reader) doubtNotCompared(c *Comparables) {
	var names, write []string
	for _, d := range facts() {
		if !d.known(&c.Subject.House) && r.got["house."+d.field] == nil && c.most(func(s *comps.Row) bool { return d.known(&s.House) }) {
			names, write = append(names, d.name), append(write, fieldNamed("house", d.field).example())
		}
	}
	styled := len(c.styles()) > 0 && slices.Contains(names, storeys)
	write = write[:min(len(write), 1)] // one shows how
	if styled {
		names[slices.Index(names, storeys)] = "storeys or style" + c.someStyles()
		if len(names) == 1 {
			write = nil
		}
		write = append(write, c.styleWritten())
	}
	by := ""
	if slices.Contains(names, comps.Condition.String()) {
		if by = r.deal.ConditionsFor(); by != "" {
			by = "   ; or under comps, what each option leaves it in,   " + by
		}
	}
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
		r.say("comps-not-compared", r.needed("house", "comps"), "the sales say %s, the house does not, so that is not compared", strings.Join(names, ", "))("add under house what it will be when the work is done, e.g.   %s%s", strings.Join(write, ", "), by)
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
		if n, _ := garagesByArea(c); n > 0 && d.field == fieldsOf[comps.Garage] {
			continue
		}
		if d.known(&c.Subject.House) && !slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return d.known(&s.House) }) {
			out = append(out, d)
		}
	}
	return out
}

// garagesByArea counts the sales that say of a garage how large it is and not for how many cars, which
// the house says: those that are not compared by it, and those that are by what a list tells of sizes.
func garagesByArea(c *Comparables) (not, bySize int) {
	for i := range c.Value.Rows {
		s := &c.Value.Rows[i]
		switch {
		case !c.Subject.Cars().Known || s.GarageArea.Value <= 0 || s.Cars().Known:
		case slices.Contains(s.Unsaid, comps.Garage):
			not++
		default:
			bySize++
		}
	}
	return not, bySize
}

// doubtGaragesByArea warns of garages that are not compared, or not by the amount of the file, since
// nobody says for how many cars they are.
func (r *reader) doubtGaragesByArea(c *Comparables) {
	not, bySize := garagesByArea(c)
	say := func(n int) string {
		return quantity.Counted(n, "sale") + map[bool]string{true: " says", false: " say"}[n == 1]
	}
	const write = "say of the sales for how many cars, where you know it, in a column   garage cars"
	if at := r.needed("house", "comps"); not > 0 && c.Subject.Garage == "none" {
		r.say("comps-not-told", at, "the house has no garage, and %s how large one is and not for how many cars, so it is not taken off", say(not))(write)
	} else if not > 0 {
		r.say("comps-not-told", at, "the house says for how many cars its garage is, and %s how large it is, so that is not compared", say(not))(write)
	}
	if g := r.good("comps.amounts.car of garage"); g != nil && bySize > 0 {
		r.say("comps-amount-unused", g.at(), "the amount for a car of garage is not used for sales that say how large a garage is and not for how many cars, %d of %d: what the list tells of 100 sq ft is", bySize, len(c.Value.Rows))("%s; or take the amount away", write)
	}
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
