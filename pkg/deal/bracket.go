package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

const mostBrackets = 100

// An edge is where a bracket or a table ends or begins.
type edge struct {
	words span
	last  bool // above everything before
	upper bool // an upper edge; else a lower one
	in    bool // a base right at the edge belongs below it
	money span
	x     decimal.Decimal // only with a money
}

// An edgeWord begins an edge.
type edgeWord struct {
	word  string
	upper bool
	in    bool
}

// edgeWords are tried in order, so the longer come first. Never written to.
var edgeWords = []edgeWord{
	{"up to and including", true, true}, {"up to", true, true}, {"below", true, false}, {"under", true, false},
	{"above", false, true}, {"over", false, true}, {"from", false, false},
}

const wantEdges = "up to $250,000 (the edge belongs to the bracket) or below $250,000 (it does not), and above for the last"

// readEdge reads up to $250,000, below $250,000, above, rest.
func (r *reader) readEdge(s span) (edge, bool) {
	e := edge{words: s}
	low := strings.ToLower(s.text)
	if low == "above" || low == "over" || low == "rest" || low == "the rest" {
		e.last = true
		return e, true
	}
	for _, w := range edgeWords {
		if !strings.HasPrefix(low, w.word+" ") {
			continue
		}
		e.upper, e.in, e.last = w.upper, w.in, !w.upper
		e.money = s.cut(len(w.word), len(s.text))
		var err error
		if e.x, err = quantity.ParseMoney(e.money.text); err != nil {
			r.unread("the edge", e.money, "bracket-words", err, "up to $250,000")
			return e, false
		}
		return e, r.within(Money, "the edge", "more than $0, at most $1,000 million", "up to $250,000", e.money, e.x)
	}
	r.say("bracket-words", s.at, "%s is not an edge of a bracket", diag.Quote(s.text))("write %s", wantEdges)
	return e, false
}

// bracketField reads brackets or slabs into a table of rates.
func (r *reader) bracketField(s scope, f *Field, g *reading) {
	if !r.wants(f, g, mapping) {
		return
	}
	if len(g.node.entries) == 0 {
		r.say("brackets-empty", g.key.at, "%s has no rates in it", f.Key())("write it like   %s", f.example())
		return
	}
	if n := len(g.node.entries); n > mostBrackets {
		r.say("too-many", g.key.at, "%d brackets, more than the %d that are read", n, mostBrackets)("check that it is the right table")
		return
	}
	t := s.member
	if t.Set != "table" {
		t = s.member.Add("table", "", f.Key())
		t.Pos = g.key.at
	}
	slab := f.Kind == Slabs
	t.Give("slab", model.Value{Number: flag(slab), Text: f.Key(), Pos: g.key.at})
	b := brackets{reader: r, table: t, slab: slab}
	g.ok = true
	for i := range g.node.entries {
		g.ok = b.add(&g.node.entries[i]) && g.ok
	}
	if g.ok && !b.done {
		b.open(g.node.entries[len(g.node.entries)-1].key.at)
	}
}

// open doubts a table that ends below some of the totals it is for.
func (b *brackets) open(at diag.Pos) {
	if most, ok := b.table.Given.Look("base_up_to"); ok && most.Number.LessThanOrEqual(b.lower.Number) {
		return
	}
	code, says := "brackets-open", "what lies over %s is charged nothing"
	if b.slab {
		code, says = "slabs-open", "a total over %s is charged nothing"
	}
	b.say(code, at, says, b.lower.Text)("add a last line   above: 1%%   unless that is meant")
}

// brackets is a table being filled, from the lowest bracket on.
type brackets struct {
	*reader
	table *model.Member
	slab  bool
	lower model.Value // where the next one begins
	edged *edge       // the first edge with a word that says where a base at it belongs
	done  bool        // the last one is there
}

func (b *brackets) add(e *entry) bool {
	if e.value.shape == refused {
		return false
	}
	if e.value.shape != scalar {
		b.say("want-value", e.key.at, "the rate of %s is %s", diag.Quote(e.key.text), e.value.shape.words())("write a rate, e.g. %s: 0.5%%", e.key.text)
		return false
	}
	to, ok := b.readEdge(e.key)
	rate, good := b.charge(e.key.text, e.value.span, wantRate)
	if !ok || !good || !b.fits(to) || !b.chargeable(rate) {
		return false
	}
	m := b.table.Add("bracket", "", e.key.text)
	m.Pos = e.key.at
	if b.lower.Text != "" {
		m.Give("lower", b.lower)
	}
	if to.last {
		b.done = true
	} else {
		b.lower = model.Value{Number: to.x, Text: to.money.text, Pos: to.money.at}
		m.Give("upper", b.lower)
	}
	rate.give(m)
	return true
}

// fits checks that a bracket goes on where the one before ended.
func (b *brackets) fits(to edge) bool {
	switch {
	case b.done:
		b.say("bracket-after-last", to.words.at, "%s comes after the bracket that has no end", diag.Quote(to.words.text))("only the last bracket has no end; put it there, and write   up to $500,000   for those before, lowest first")
		return false
	case to.last && to.money.text != "" && !to.x.Equal(b.lower.Number):
		b.say("bracket-gap", to.words.at, "%s does not begin where the bracket before ends (%s)", diag.Quote(to.words.text), b.lowerWords())("write   above   alone for the last bracket")
		return false
	case to.upper && !to.x.GreaterThan(b.lower.Number):
		b.say("bracket-order", to.words.at, "%s does not come after %s", diag.Quote(to.words.text), b.lowerWords())("put the brackets in order, lowest edge first, each edge once")
		return false
	}
	return b.sameWords(to)
}

// sameWords refuses a table in which a base at an edge belongs now here, now there.
func (b *brackets) sameWords(to edge) bool {
	if to.money.text == "" {
		return true
	}
	if b.edged == nil {
		b.edged = &to
		b.table.Give("edge_in", model.Value{Number: flag(to.in), Text: to.words.text, Pos: to.words.at})
		return true
	}
	if to.in != b.edged.in {
		b.say("mixed-edges", to.words.at, "%s and %s say differently where a total right at the edge belongs", diag.Quote(b.edged.words.text), diag.Quote(to.words.text))("use   up to   for all (the edge belongs to the bracket), or   below   for all")
		return false
	}
	return true
}

func (b *brackets) lowerWords() string {
	if b.lower.Text == "" {
		return "$0"
	}
	return b.lower.Text
}

// chargeable refuses rates that a bracket cannot have.
func (b *brackets) chargeable(c charge) bool {
	switch {
	case c.form == byTime:
		b.say("bracket-rate", c.at, "a bracket cannot charge %s", diag.Quote(c.text))("write a percentage or dollars per $500")
	case c.form == fixed && !b.slab && !c.x.IsZero():
		b.say("bracket-fixed", c.at, "a fixed %s is not a rate on a part of the total", c.text)("use   slabs   where the whole total falls in one bracket, or write a percentage")
	default:
		return true
	}
	return false
}
