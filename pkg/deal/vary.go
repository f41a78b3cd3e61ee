package deal

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/formula"
)

// mostVaried is how many values an axis of a grid may have.
const mostVaried = 400

// varying is what can be varied: what is hers to decide too.
var varying = use{code: "axis-not-here", cannot: "be varied", ours: true}

// Vary reads what is to vary and its values: a path as --set takes it or overrun, late
// sale or sale price, and a list or a span with so many steps. Example: overrun=0%..45%/9.
// Of is where the text stands, such as --across; mistakes have their place in it.
func (d *Deal) Vary(of, text string) (Input, []decimal.Decimal, diag.List) {
	r := *d.reader
	r.diags = nil
	key, list, ok := strings.Cut(text, "=")
	at := span{text: text, at: diag.Pos{File: of, Line: 1, Col: 1, Len: len([]rune(text))}, exact: true}
	if !ok || strings.TrimSpace(key) == "" || strings.TrimSpace(list) == "" {
		r.say("bad-axis", at.at, "%s %s does not say what varies and how far", of, diag.Quote(text))("for example: %s 'overrun=0%%..45%%/9' or %s 'loans.1.rate=10%%, 11%%, 12%%'", of, of)
		return Input{}, nil, r.diags
	}
	in, ok := r.inputFor(at.cut(0, len(key)), varying)
	if !ok {
		return Input{}, nil, r.diags
	}
	return in, r.values(in, of, at.cut(len(key)+1, len(text))), r.diags
}

// values are those of a list or a span.
func (r *reader) values(in Input, of string, text span) (out []decimal.Decimal) {
	one := func(s span) (x decimal.Decimal, ok bool) {
		f := Range{Input: in}
		ok = r.figure(&f, of, s, &x) && r.mayBe(in, x, s)
		return x, ok
	}
	if i := strings.Index(text.text, ".."); i >= 0 {
		to := text.cut(i+2, len(text.text))
		if strings.HasPrefix(to.text, ".") { // the third dot would make 45 of ...45 nought point 45
			r.say("bad-axis", text.at, "%s has three dots", diag.Quote(text.text))("write two, as in   0%%..45%%/9   , and .5 as 0.5")
			return nil
		}
		j := strings.LastIndexByte(to.text, '/')
		steps, err := strconv.Atoi(strings.TrimSpace(to.text[max(0, j+1):]))
		if j < 0 || err != nil || steps < 1 || steps >= mostVaried {
			r.say("bad-axis", text.at, "%s has no number of steps from 1 to %d", diag.Quote(text.text), mostVaried-1)("write it like   0%%..45%%/9   for 9 steps, which are 10 figures")
			return nil
		}
		a, ok := one(text.cut(0, i))
		b, fine := one(to.cut(0, j))
		if !ok || !fine {
			return nil
		}
		if a.Equal(b) {
			r.say("bad-axis", text.at, "%s begins and ends with the same figure", diag.Quote(text.text))("write two figures that differ")
			return nil
		}
		for k := range steps + 1 {
			x := a.Add(formula.Divide(b.Sub(a).Mul(decimal.NewFromInt(int64(k))), decimal.NewFromInt(int64(steps))))
			if in.Kind == Money {
				x = x.Round(2)
			}
			out = append(out, x.Round(6))
		}
		return out
	}
	if unclearCommas(text.text) {
		r.say("bad-axis", text.at, "%s has commas that may part thousands or figures", diag.Quote(text.text))("%s, e.g.   60, 80, 1200", spaceBehind)
		return nil
	}
	for rest := text; rest.text != ""; {
		i := nextFigure(rest.text)
		x, ok := one(rest.cut(0, i))
		if !ok {
			n := len(r.diags) - 1
			if in.Kind == Money && in.per == "" && strings.HasSuffix(strings.TrimSpace(rest.text[:i]), "%") {
				r.diags[n].Hint += "; a share of what is planned works in bad days only"
			}
			if strings.Contains(rest.text[:i], ",") {
				r.diags[n].Hint += "; " + spaceBehind
			}
			return nil
		}
		out, rest = append(out, x), rest.cut(min(i+1, len(rest.text)), len(rest.text))
	}
	if len(out) < 2 || len(out) > mostVaried {
		many, hint := fmt.Sprintf("%d figures", len(out)), ""
		if len(out) == 1 {
			many = "a single figure"
			if strings.Contains(text.text, ",") {
				hint = "; " + spaceBehind
			}
		}
		r.say("bad-axis", text.at, "%s is %s", diag.Quote(text.text), many)("write from 2 to %d of them: a list, or a span such as 0%%..45%%/9%s", mostVaried, hint)
		return nil
	}
	return out
}

const spaceBehind = "between two figures put a space behind the comma"

// unclearCommas reports whether of commas with digits on both sides some part thousands and
// some do not: 60,80,120 may be three figures or two.
func unclearCommas(list string) bool {
	within, between := false, false
	for start := 0; start < len(list); {
		next := start + nextFigure(list[start:])
		within = within || strings.Contains(list[start:next], ",")
		between = between || next > 0 && next+1 < len(list) && digitAt(list, next-1) && digitAt(list, next+1)
		start = next + 1
	}
	return within && between
}

func digitAt(s string, i int) bool { return i >= 0 && i < len(s) && s[i] >= '0' && s[i] <= '9' }

// nextFigure is where a list goes on to its next figure, or its end: at a comma that is not
// within a figure, as that of $212,500 is.
func nextFigure(list string) int {
	digit := func(i int) bool { return digitAt(list, i) }
	for i := range list {
		if list[i] == ',' && !(digit(i-1) && digit(i+1) && digit(i+2) && digit(i+3) && !digit(i+4)) {
			return i
		}
	}
	return len(list)
}

// Inputs are the figures that the file gives and that may come out otherwise, in its order,
// without those of rooms.
func (d *Deal) Inputs() []Input {
	r := *d.reader
	r.diags = nil // what cannot come out otherwise is no finding of the file
	var names []span
	for key, g := range r.got {
		switch {
		case g.node.shape != scalar, !slices.Contains(varied, g.field.Kind) && g.field.Kind != Charge:
		case slices.ContainsFunc(besideRooms, func(p string) bool { return strings.HasPrefix(key, p) }):
			names = append(names, span{text: strings.TrimSuffix(key, ".amount"), at: g.key.at})
		}
	}
	slices.SortFunc(names, func(a, b span) int {
		return cmp.Or(cmp.Compare(a.at.Line, b.at.Line), cmp.Compare(a.at.Col, b.at.Col), cmp.Compare(a.text, b.text))
	})
	var out []Input
	for _, n := range names {
		if in, ok := r.inputFor(n, inRanges); ok && !slices.ContainsFunc(out, in.Is) {
			out = append(out, in)
		}
	}
	return out
}

// besideRooms are the groups of what is not in rooms.
var besideRooms = []string{"purchase.", "value.", "time.", "loans[", "holding.", "selling.", "renovation.general"}
