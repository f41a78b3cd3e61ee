package deal

import (
	"fmt"
	"regexp"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

const mostTables = 50

// tables reads a list of tables of rates and checks that they neither overlap nor
// leave a gap.
func (r *reader) tables(s scope, f *Field, g *reading) {
	if !r.wants(f, g, list) {
		return
	}
	switch n := len(g.node.items); {
	case n == 0:
		r.say("brackets-empty", g.key.at, "tables has no table in it")("write it like   %s", f.example())
		return
	case n > mostTables:
		r.say("too-many", g.key.at, "%d tables, more than the %d that are read", n, mostTables)("leave out those no longer in force")
		return
	}
	before := len(r.diags.Errors())
	var all []area
	for i, item := range g.node.items {
		if item.shape == refused {
			continue
		}
		if item.shape != mapping {
			r.say("want-group", item.at, "table %d is %s, not a group of keys", i+1, item.shape.words())("write it like   - {when: up to $350,000, amount: 0.5%%}")
			continue
		}
		inner := scope{path: fmt.Sprintf("%stables[%d].", s.path, i+1), group: f.Path + "[]", place: s.place, at: item.at}
		inner.member = s.member.Add("table", "", fmt.Sprintf("table %d", i+1))
		inner.member.Pos = item.at
		r.group(inner, item)
		all = append(all, r.area(inner))
	}
	if g.ok = len(r.diags.Errors()) == before; g.ok {
		r.cover(all)
		r.dated = append(r.dated, datedFee{s, all})
	}
}

// tableRate makes one rate for the whole base out of an amount.
func (r *reader) tableRate(s scope, g *reading, c charge) bool {
	if c.form == byTime {
		r.say("bracket-rate", c.at, "a table of rates cannot charge %s", diag.Quote(c.text))("write a percentage, dollars, or dollars per $500")
		return false
	}
	s.member.Give("slab", model.Value{Number: flag(true), Text: c.text, Pos: c.at})
	b := s.member.Add("bracket", "", c.text)
	b.Pos = g.key.at
	c.give(b)
	return true
}

// whenForm is a range of totals: above $100,000 up to $350,000, or one side of it.
var whenForm = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)^\s*(?:((?:above|over|from)\s+[^a-z]*[km]?))??\s*(?:,|\band\b)?\s*((?:up to and including|up to|below|under)\s+.*)?$`)
})

// totalRange reads the totals that a table is for.
func (r *reader) totalRange(s scope, f *Field, g *reading) {
	parts := whenForm().FindStringSubmatchIndex(g.node.text)
	if parts == nil || parts[2] < 0 && parts[4] < 0 {
		r.say("table-words", g.node.at, "%s is not a range of totals", diag.Quote(g.node.text))("write   up to $350,000   or   above $350,000   or   above $350,000 up to $1m")
		return
	}
	var first *edge
	for i, line := range []string{"base_over", "base_up_to"} {
		if parts[2+2*i] < 0 {
			continue
		}
		e, ok := r.readEdge(g.node.cut(parts[2+2*i], parts[3+2*i]))
		if !ok {
			return
		}
		if first != nil && first.in != e.in {
			r.say("mixed-edges", g.node.at, "%s and %s say differently where a total right at the edge belongs", diag.Quote(first.words.text), diag.Quote(e.words.text))("write   above … up to …   or   from … below …")
			return
		}
		if first != nil && !e.x.GreaterThan(first.x) {
			r.say("bracket-order", e.words.at, "%s does not come after %s", diag.Quote(e.words.text), diag.Quote(first.words.text))("write the lower total first")
			return
		}
		first = &e
		s.member.Give(line, model.Value{Number: e.x, Text: e.money.text, Pos: e.money.at})
		s.member.Give("base_edge_in", model.Value{Number: flag(e.in), Text: e.words.text, Pos: e.words.at})
	}
	g.ok = true
}

// area checks one table and says what it covers.
func (r *reader) area(s scope) area {
	var ways []string
	for _, key := range []string{"amount", "brackets", "slabs"} {
		if r.of(s, key) != nil {
			ways = append(ways, key)
		}
	}
	switch n := len(ways); {
	case n == 0 && r.odd[s.path]: // spoken of already
	case n == 0:
		r.say("table-empty", s.at, "the table has no rates")("add   amount: 1.1%%   or   brackets: {…}   or   slabs: {…}")
	case n > 1:
		r.say("rates-two-ways", s.at, "the table states its rates in several ways: %s", strings.Join(ways, ", "))("keep one of them")
	}
	a := area{at: s.at, days: wide(s.member, "from_day", "until_day"), totals: wide(s.member, "base_over", "base_up_to")}
	a.dated = r.good(s.path+"from") != nil || r.good(s.path+"until") != nil
	if v, ok := s.member.Given.Look("base_edge_in"); ok {
		a.edge = &v
	}
	if from, until := s.member.Given.Of("from_day"), s.member.Given.Of("until_day"); until.Text != "" && from.Text != "" && !until.Number.GreaterThan(from.Number) {
		r.say("table-dates", until.Pos, "until %s does not come after from %s", until.Text, from.Text)("until is the first day on which the rates are no longer in force")
	}
	return a
}

// beyond is past every day and total that is read.
var beyond = decimal.New(1, 13)

// wide is a range of the model's lines, with the model's own edges where not given.
func wide(m *model.Member, from, to string) [2]decimal.Decimal {
	out := [2]decimal.Decimal{beyond.Neg(), beyond}
	for i, line := range []string{from, to} {
		if v, ok := m.Given.Look(line); ok {
			out[i] = v.Number
		}
	}
	return out
}
