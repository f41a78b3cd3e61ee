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

const mostFees = 200

// fees reads charges by name, each a member of the model.
func (r *reader) fees(s scope, f *Field, g *reading) {
	if !r.wants(f, g, mapping) {
		return
	}
	if n := len(g.node.entries); n > mostFees {
		r.say("too-many", g.key.at, "%d charges, more than the %d that are read", n, mostFees)("join the small ones")
		return
	}
	g.ok = true
	for i := range g.node.entries {
		e := &g.node.entries[i]
		if r.nameless(f, e) {
			continue
		}
		m := s.member.Add("fee", f.Line, e.key.text)
		m.Pos = e.key.at
		r.fee(scope{path: s.path + e.name + ".", group: "<fee>", member: m, place: placeOf(f.Line), at: e.key.at}, e)
	}
}

func (r *reader) fee(s scope, e *entry) {
	switch e.value.shape {
	case refused:
		return
	case nothing:
		if r.stray(e) {
			return
		}
		r.say("missing-value", e.key.at, "%s has no amount", diag.Quote(e.key.text))("write %s, or leave it out", wantCharge)
		return
	case list:
		r.say("want-value", e.key.at, "%s is a list, not an amount", diag.Quote(e.key.text))("write %s, or a group with an amount", wantCharge)
		return
	case scalar:
		r.field(s, fieldNamed("<fee>", "amount"), &entry{"amount", e.key, e.value})
	case mapping:
		r.group(s, e.value)
	}
	before := len(r.diags.Errors())
	r.feeRates(s, e)
	if len(r.diags.Errors()) == before {
		r.feeBase(s, e)
		r.feeTime(s, e)
		r.feeEnds(s)
	}
}

// chargeField reads an amount with what may stand behind it: of a base, during a phase.
func (r *reader) chargeField(s scope, f *Field, g *reading) {
	text := g.node.span
	if s.member.Set == "table" {
		c, ok := r.charge(g.key.text, text, wantRate)
		g.ok = ok && r.tableRate(s, g, c)
		return
	}
	if i := lastWord(text.text, " during "); i >= 0 {
		phase := text.cut(i+len(" during "), len(text.text))
		r.field(s, fieldNamed("<fee>", "during"), &entry{"during", g.key, &node{shape: scalar, span: phase}})
		text = text.cut(0, i)
	}
	if i := lastWord(text.text, " of "); i >= 0 {
		of := text.cut(i+len(" of "), len(text.text))
		if !slices.Contains([]string{"it", "one", "that"}, of.text) {
			r.field(s, fieldNamed("<fee>", "of"), &entry{"of", g.key, &node{shape: scalar, span: of}})
			if text = text.cut(0, i); lastWord(text.text, " of ") >= 0 { // the amount is part of what was refused
				return
			}
		}
	}
	c, ok := r.charge(g.key.text, text, wantCharge)
	if g.ok = ok; !ok {
		return
	}
	c.give(s.member)
}

func lastWord(text, word string) int { return strings.LastIndex(strings.ToLower(text), word) }

// endsIn is where a text ends in a word, whatever its case, or -1.
func endsIn(text, word string) int {
	if i := lastWord(text, word); i >= 0 && i+len(word) == len(text) {
		return i
	}
	return -1
}

// give feeds the lines of a charge or of a bracket.
func (c charge) give(m *model.Member) {
	v := model.Value{Number: c.x, Text: c.text, Pos: c.at}
	m.Give(c.line(m.Set), v)
	if c.form == byStep {
		v.Number = c.unit
		m.Give("unit_size", v)
	}
}

// line is the line of a charge or of a bracket that takes the number.
func (c charge) line(set string) string {
	switch c.form {
	case share:
		return map[string]string{"fee": "share", "bracket": "rate"}[set]
	case byStep:
		return "unit_price"
	case byTime:
		return map[quantity.Period]string{quantity.Month: "a_month", quantity.Quarter: "a_quarter", quantity.Year: "a_year"}[c.per]
	}
	return "fixed"
}

// baseField reads the line that a share is of.
func (r *reader) baseField(s scope, f *Field, g *reading) {
	if old, twice := s.member.Given.Look("base"); twice {
		r.say("base-twice", g.node.at, "what it is a share of is given twice: %s and %s", diag.Quote(old.Text), diag.Quote(g.node.text))("keep one of them")
		return
	}
	b := baseNamed(g.node.text)
	names := s.place.baseNames()
	switch {
	case b == nil:
		hint := "a share can be of: " + strings.Join(names, ", ")
		if near, ok := diag.Nearest(g.node.text, names); ok {
			hint = "did you mean \"" + near + "\"? " + hint
		}
		r.say("unknown-base", g.node.at, "nothing here is called %s", diag.Quote(g.node.text))("%s", hint)
		return
	case !s.place.takes(b) && b.group == "loan":
		r.say("base-not-here", g.node.at, "%s cannot be a share of the %s", s.place.words, b.name)("put it under the loan's fees (loans: - fees:), where the %s is known", b.name)
		return
	case !s.place.takes(b):
		r.say("base-not-here", g.node.at, "%s cannot be a share of the %s", s.place.words, b.name)("it can be of: %s", strings.Join(names, ", "))
		return
	}
	g.ok = true
	s.member.Give("base", model.Value{Refers: b.line, Text: g.node.text, Pos: g.node.at})
}

// feeRates checks that the charge is stated in one way.
func (r *reader) feeRates(s scope, e *entry) {
	var ways []string
	for _, key := range []string{"amount", "brackets", "slabs", "tables"} {
		if r.got[s.path+key] != nil {
			ways = append(ways, key)
		}
	}
	switch n := len(ways); {
	case n == 0 && r.odd[s.path]: // spoken of already
	case n == 0:
		r.say("fee-empty", e.key.at, "%s has no amount", diag.Quote(e.key.text))("add   amount: $1,850   or brackets, slabs or tables")
	case n > 1:
		r.say("rates-two-ways", e.key.at, "%s is stated in several ways: %s", diag.Quote(e.key.text), strings.Join(ways, ", "))("keep one of them; a fixed amount beside a rate is a charge of its own")
	}
}

// feeBase gives the base that the place has, where the charge says none.
func (r *reader) feeBase(s scope, e *entry) {
	given := s.member.Given
	_, isShare := given.Look("share")
	_, isStep := given.Look("unit_size")
	of, said := given.Look("base")
	table := r.got[s.path+"brackets"] != nil || r.got[s.path+"slabs"] != nil || r.got[s.path+"tables"] != nil
	needs := isShare || isStep || table
	switch {
	case said && !needs:
		r.say("base-unused", of.Pos, "%s is no share, so it is of nothing", diag.Quote(e.key.text))("leave out %s, or write a percentage", diag.Quote("of "+of.Text))
	case needs && !said:
		b := baseNamed(s.place.base)
		if s.place.kind == "general_fee" && pricebook.IsPermit(plainKey(e.key.text)) {
			b = baseNamed("works at trade price") // permits are on the full value of the work, own labour included
		}
		s.member.Give("base", model.Value{Refers: b.line, Text: b.name, Pos: r.amountAt(s, e), Unsaid: true})
	}
	if s.place.atSale {
		s.member.Give("at_sale", model.Value{Number: decimal.NewFromInt(1), Text: "yes", Pos: e.key.at})
	}
}

func (r *reader) amountAt(s scope, e *entry) diag.Pos {
	if g := r.got[s.path+"amount"]; g != nil {
		return g.at()
	}
	return e.key.at
}
