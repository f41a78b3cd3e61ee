package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// houseCheck is the member of a part of the house that may hide a repair, with the
// allowances of the price book for a house of its age.
func (r *reader) houseCheck(e *entry) *model.Member {
	for _, c := range pricebook.Checks() {
		if plainKey(c.Name) == e.name {
			m := r.addCheck(c)
			m.Pos = e.key.at
			return m
		}
	}
	m := r.deal.Root.Add("check", "", e.key.text)
	m.Pos = e.key.at
	m.GiveNumber("if_bad", decimal.Decimal{})
	var names []string
	for _, c := range pricebook.Checks() {
		names = append(names, c.Name)
	}
	if e.value.shape == mapping { // with amounts of its own
		return m
	}
	tell := r.say("unknown-check", e.key.at, "there is no part of the house called %s to look at", diag.Quote(e.key.text))
	switch near := partsMeant(e.name); {
	case len(near) == 1:
		tell("did you mean %q?", near[0])
	case len(near) > 1:
		tell("did you mean %s? each is looked at by itself", quotedOr(near))
	case plainKey(e.value.text) == "good":
		tell("if it is one of these, write that name, else leave it out, as nothing is set aside for it: %s", strings.Join(names, ", "))
	default:
		tell("give it amounts of its own: {likely: $900, least: $0, most: $4k}; known are %s", strings.Join(names, ", "))
	}
	return m
}

// quotedOr are words in quotes, of which one is to be chosen.
func quotedOr(words []string) string {
	quoted := make([]string, 0, len(words))
	for _, w := range words {
		quoted = append(quoted, diag.Quote(w))
	}
	return strings.Join(quoted, " or ")
}

// partsMeant are the parts of the house in the price book's list that another name stands for: by
// another name of it, by the work that mends it, by words near it, or by a slip that leaves the first
// letter or a whole word.
func partsMeant(name string) (meant []string) {
	var names []string
	for _, c := range pricebook.Checks() {
		if slices.Contains(slices.Concat(c.Mends(), c.Called, c.Said, c.Near), name) {
			meant = append(meant, c.Name)
		}
		names = append(names, c.Name)
	}
	near, ok := diag.Nearest(name, names)
	switch {
	case len(meant) > 0 || !ok || name == "" || strings.HasPrefix(name, near+" "): // as a foundation drain, which is none
		return meant
	case near[0] != name[0] && !slices.Contains(strings.Fields(near), name):
		return nil
	}
	return []string{near}
}

// yearBuilt is the year that the file gives, or 0: it is asked before all is read.
func (r *reader) yearBuilt() int {
	if g := r.good("house.year built"); g != nil {
		return int(g.number.IntPart())
	}
	return 0
}

func (r *reader) addCheck(c *pricebook.Check) *model.Member {
	m := r.deal.Root.Add("check", "", c.Name)
	row := c.For(r.yearBuilt())
	for line, x := range map[string]decimal.Decimal{"if_bad": row.Likely, "if_bad_least": row.Least, "if_bad_most": row.Most} {
		m.Give(line, model.Value{Number: x, Text: c.Source + ", " + row.Years, Pos: c.Pos})
	}
	return m
}

// seenOrder lets the least and the most that the file does not say follow what is likely,
// and refuses amounts of the file that do not rise.
func (r *reader) seenOrder() {
	for _, m := range r.deal.Root.In("check") {
		likely := m.Given.Of("if_bad")
		for _, x := range []struct {
			line, key, than string
			wrong           func(x, likely decimal.Decimal) bool
		}{
			{"if_bad_least", "least", "more", decimal.Decimal.GreaterThan},
			{"if_bad_most", "most", "less", decimal.Decimal.LessThan},
		} {
			v, given := m.Given.Look(x.line)
			switch {
			case !given || !x.wrong(v.Number, likely.Number):
			case v.Key == "":
				m.Withdraw(x.line) // and so what is likely stands
			default:
				r.say("seen-order", v.Pos, "%s: %s is %s, %s than is likely (%s)", m.Label, x.key, diag.Quote(v.Text), x.than, quantity.FormatDollars(likely.Number))("write amounts that rise, e.g.   {least: $0, likely: $900, most: $4k}")
			}
		}
	}
}

// notSeen sets something aside for every part of the house that the file does not
// speak of; a deal without rooms and without the key seen says all in its own lines.
func (r *reader) notSeen() {
	r.seenOrder()
	if r.got["rooms"] == nil && r.got["seen"] == nil {
		return
	}
	seen := map[string]bool{}
	for _, m := range r.deal.Root.In("check") {
		seen[plainKey(m.Label)] = true
	}
	for _, c := range pricebook.Checks() {
		if !seen[plainKey(c.Name)] {
			r.addCheck(c)
		}
	}
}
