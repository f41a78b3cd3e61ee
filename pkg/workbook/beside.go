package workbook

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// A besideRule is a condition that an input at an address keeps beside others.
type besideRule struct {
	flaw   flaw
	holds  func(at string) string
	others []*model.Cell
}

// besideOf are the conditions that an input is neither doubted beside others nor above what it may not be
// above, as far as they hold now. A figure that is not in this workbook tells nothing in it.
func (b *book) besideOf(c *model.Cell) []besideRule {
	out := append(b.ordered(c), b.ways(c, unusual, b.answer.Deal.Beside(c))...)
	if len(out) > 0 {
		b.besides[c.Index] = out
	}
	return out
}

// ways are the conditions that an input has a flaw in none of some ways beside others.
func (b *book) ways(c *model.Cell, f flaw, all []deal.Beside) (out []besideRule) {
	value := func(c *model.Cell) (decimal.Decimal, bool) { return b.answer.Values.Of(c), true }
	missing := func(c *model.Cell) bool { return c == nil || b.secret(c) }
	for _, x := range all {
		if slices.ContainsFunc(x, func(s deal.Sum) bool {
			return slices.ContainsFunc(s.Parts, func(p deal.Part) bool { return missing(p.Cell) || slices.ContainsFunc(p.Or, missing) })
		}) || !x.Holds(value) {
			continue
		}
		var within, beside []string
		var others []*model.Cell
		for i, s := range x {
			text := ""
			for _, p := range s.Parts {
				if i == 0 && p.Cell != c { // what follows says when it matters
					others = append(append(others, p.Cell), p.Or...)
				}
			}
			for _, p := range b.together(s.Parts, c) {
				text += signed(p.times) + "*" + p.at
				beside = append(beside, p.reads...)
			}
			if !s.And.IsZero() {
				text += signed(s.And)
			}
			within = append(within, "ROUND("+text+",9)<=0")
		}
		slices.Sort(beside)
		beside = slices.Compact(beside)
		formula := "IF(COUNT(" + strings.Join(beside, ",") + ")=" + itoa(len(beside)) + ",OR(" + strings.Join(within, ",") + "),TRUE)"
		out = append(out, besideRule{f, func(at string) string { return strings.ReplaceAll(formula, whereAt, at) }, others})
	}
	return out
}

// notAbove are lines that may not be above another of the same member.
var notAbove = map[string]string{"least": "most", "cash_reserve": "cash_available", "concessions": "sold_price", "low_height": "height"}

// ordered are the conditions that an input is not above what it may not be above.
func (b *book) ordered(c *model.Cell) []besideRule {
	line, is := notAbove[c.Line.Name]
	if !is || c.Given == nil {
		return nil
	}
	most := b.model.Find(c.Member, line)
	if most == nil || most.Given == nil || b.places[most.Index].grid == nil {
		return nil
	}
	return []besideRule{{overOther, func(at string) string { return "ROUND(" + b.cellRef(most) + "-" + at + ",9)>=0" }, []*model.Cell{most}}}
}

// besideWords name what an input is looked at beside, once its rules are made, with the cells of what can be
// typed over; "" where it is nothing.
func (b *book) besideWords(c *model.Cell) string {
	const few = 3 // of many none tells which
	var all []string
	for _, x := range b.besides[c.Index] {
		for _, o := range x.others {
			said := words(o.Line)
			if o.Member == c.Member && c.Line.Set != model.Deal && !b.typed(o) { // which follows it
				continue
			}
			if at := b.places[o.Index]; at.grid != nil && b.typed(o) {
				said += " in " + sheetPrefix(at.grid, b.places[c.Index].grid) + address(at.row, at.col, false, false)
			}
			if !slices.Contains(all, said) {
				all = append(all, said)
			}
		}
	}
	if len(all) == 0 || len(all) > few {
		return ""
	}
	return " (beside " + answer.Listed(all) + ")"
}

// besideAnother are the inputs that no figure follows and that others are looked at beside: they are open, to be
// made to fit.
func (b *book) besideAnother() map[int]bool {
	out := map[int]bool{}
	for i, all := range b.besides {
		for _, x := range all {
			out[i] = true
			for _, o := range x.others {
				out[o.Index] = true
			}
		}
	}
	return out
}

// A term is so many times what stands at an address, and the cells that it reads.
type term struct {
	times decimal.Decimal
	at    string
	reads []string
}

// fewAlike is how many figures at most a formula adds up by itself; it may be long, and several do.
const fewAlike = 8

// together are the terms of parts of a sum, with whereAt for the input itself. What many figures come to
// that count alike is worked out once for all that ask for it.
func (b *book) together(parts []deal.Part, input *model.Cell) (out []term) {
	single := func(p deal.Part) bool { return p.Cell != input && len(p.Or) == 0 }
	alike := map[string][]deal.Part{}
	for _, p := range parts {
		if times := p.Times.String(); single(p) {
			alike[times] = append(alike[times], p)
		}
	}
	for _, p := range parts {
		times := p.Times.String()
		switch all := alike[times]; {
		case p.Cell == input:
			out = append(out, term{times: p.Times, at: whereAt})
		case !single(p):
			some := []string{b.cellRef(p.Cell)}
			for _, x := range p.Or {
				some = append(some, b.cellRef(x))
			}
			out = append(out, term{p.Times, "MAX(" + strings.Join(some, ",") + ")", some})
		case len(all) == 0: // among those added up already
		case len(all) > fewAlike:
			at := b.comesTo(all)
			out = append(out, term{p.Times, at, []string{at}})
			delete(alike, times)
		default:
			at := b.cellRef(p.Cell)
			out = append(out, term{p.Times, at, []string{at}})
		}
	}
	return out
}

// comesTo is where the sum of some figures stands; as long as one of them is none, a text does.
func (b *book) comesTo(parts []deal.Part) string {
	var refs []string
	value := decimal.Zero
	for _, p := range parts {
		refs = append(refs, b.cellRef(p.Cell))
		value = value.Add(b.answer.Values.Of(p.Cell))
	}
	list := strings.Join(refs, ",")
	if at, known := b.sums[list]; known {
		return at
	}
	var counts []string
	for some := range slices.Chunk(refs, many) {
		counts = append(counts, "COUNT("+strings.Join(some, ",")+")")
	}
	at := b.working("what a quote is held against", "IF("+strings.Join(counts, "+")+"="+itoa(len(refs))+","+nested("SUM(", refs)+`,"")`, near(value))
	b.sums[list] = at
	return at
}

// signed is a number with its sign.
func signed(x decimal.Decimal) string {
	if x.IsNegative() {
		return "-" + numeral(x.Neg(), bindsAll)
	}
	return "+" + numeral(x, bindsAll)
}
