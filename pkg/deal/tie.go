package deal

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/odds"
	"ledgerboard/pkg/quantity"
)

const mostTies = 100

// ties reads the groups of the list; what they name is read once all else is.
func (r *reader) ties(s scope, f *Field, g *reading) {
	if !r.wants(f, g, list) {
		return
	}
	if n := len(g.node.items); n > mostTies {
		r.say("too-many", g.key.at, "%d ties, more than the %d that are read", n, mostTies)("leave out the weak ones")
		return
	}
	g.ok = true
	for i, item := range g.node.items {
		inner := scope{path: fmt.Sprintf("ties[%d].", i+1), group: "ties[]", member: s.member, at: item.at}
		switch item.shape {
		case refused:
		case mapping:
			r.items["<tie>"] = append(r.items["<tie>"], inner)
			r.group(inner, item)
		default:
			r.say("want-group", item.at, "item %d of ties is %s, not a group of keys", i+1, item.shape.words())("write it like   - %s", strings.Trim(f.Example, "[]"))
		}
	}
}

// readTies finds what each tie names and refuses those that contradict each other.
func (r *reader) readTies() {
	for _, s := range r.items["<tie>"] {
		if t, ok := r.tie(s); ok {
			r.deal.Ties = append(r.deal.Ties, t)
		}
	}
	r.deal.TiesSaid = r.good("ties") != nil
	if r.diags.HasErrors() || len(r.deal.Ties) == 0 {
		return
	}
	var names []Input
	place := func(in Input) int {
		i := slices.IndexFunc(names, in.Is)
		if i < 0 {
			i, names = len(names), append(names, in)
		}
		return i
	}
	var ranks []odds.Rank
	for _, t := range r.deal.Ties {
		ranks = append(ranks, odds.Rank{A: place(t.A), B: place(t.B), Rho: t.Rho.InexactFloat64()})
	}
	_, err := odds.Tie(len(names), ranks)
	var against *odds.TieError
	if errors.As(err, &against) {
		r.say("ties-contradict", r.got["ties"].key.at, "the ties contradict each other: no figures have all of these correlations")("weaken them: at %s of each they hold together", quantity.FormatPercent(decimal.NewFromFloat(against.Most).Round(2), 0))
	}
}

// assumedRanges are the lines that vary without a range of the file, unless another line of
// the same cause has one.
var assumedRanges = []string{"after_repair_value", "overrun", "standstill", "marketing"}

// varies reports whether an input has a range in the file, or one that is assumed.
func (r *reader) varies(in Input) bool {
	if r.diags.HasErrors() {
		return true // it may be a range that could not be read, which is spoken of
	}
	cause := false
	for i := range r.deal.Ranges {
		x := r.deal.Ranges[i].Input
		if x.Is(in) {
			return true
		}
		cause = cause || r.deal.SameCause(x, in)
	}
	return !cause && in.Member == r.deal.Root && slices.Contains(assumedRanges, in.Line)
}

// tie reads one.
func (r *reader) tie(s scope) (t Tie, ok bool) {
	between, rho := r.of(s, "between"), r.of(s, "correlation")
	if between == nil || rho == nil {
		if !r.odd[s.path] {
			r.say("tie-incomplete", s.at, "a tie needs two inputs and their correlation")("write it like   {between: [overrun, standstill], correlation: 0.5}")
		}
		return t, false
	}
	t.Pos = between.key.at
	words := between.words()
	if !between.ok || !rho.ok {
		return t, false
	}
	if len(words) != 2 {
		r.say("tie-incomplete", between.key.at, "a tie is between two inputs, not %d", len(words))("write it like   between: [overrun, standstill]")
		return t, false
	}
	x, err := decimal.NewFromString(rho.node.text)
	if err != nil || x.Abs().GreaterThanOrEqual(one) || len(rho.node.text) > 10 {
		r.say("bad-correlation", rho.node.at, "the correlation is %s, not a number above -1 and below 1", diag.Quote(rho.node.text))("write one like 0.5 or 0.99, or -0.3 where one is high when the other is low")
		return t, false
	}
	t.Rho = x
	for i, to := range []*Input{&t.A, &t.B} {
		if *to, ok = r.input(words[i]); !ok {
			return t, false
		}
	}
	for i, in := range []Input{t.A, t.B} {
		if !r.varies(in) {
			r.say("tie-no-range", words[i].at, "%s has no range, so the tie does nothing", in.Path)("give it one, e.g.   ranges: {%s: {low: ..., high: ...}}   , or leave the tie out", in.Path)
			return t, false
		}
	}
	for i, in := range []Input{t.A, t.B} {
		same := func(x Input) bool { return r.deal.SameCause(in, x) }
		if slices.ContainsFunc(r.deal.Steady, same) && !slices.ContainsFunc(r.deal.Ranges, func(x Range) bool { return x.Is(in) }) {
			r.say("tie-idle", words[i].at, "%s comes out as planned (spread: none), so the tie does nothing", in.Path)("leave the tie out, or give %s a range with low and high", in.Path)
		}
	}
	if t.A.Is(t.B) {
		r.say("tie-twice", words[1].at, "%s is tied to itself", t.A.Path)("name two inputs")
		return t, false
	}
	for _, old := range r.deal.Ties {
		if old.A.Is(t.A) && old.B.Is(t.B) || old.A.Is(t.B) && old.B.Is(t.A) {
			r.say("tie-twice", between.key.at, "%s and %s are tied already, in line %d", t.A.Path, t.B.Path, old.Pos.Line)("keep one of them")
			return t, false
		}
	}
	return t, true
}
