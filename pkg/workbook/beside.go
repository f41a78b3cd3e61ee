package workbook

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// besideOf are the conditions that an input at an address is in none of some ways beside others, as far as
// they hold now. A figure that is not in this workbook tells nothing in it.
func (b *book) besideOf(c *model.Cell, all []deal.Beside) (out []func(at string) string) {
	value := func(c *model.Cell) (decimal.Decimal, bool) { return b.answer.Values.Of(c), true }
	missing := func(c *model.Cell) bool { return c == nil || b.secret(c) }
	for _, x := range all {
		if slices.ContainsFunc(x, func(s deal.Sum) bool {
			return slices.ContainsFunc(s.Parts, func(p deal.Part) bool { return missing(p.Cell) || slices.ContainsFunc(p.Or, missing) })
		}) || !x.Holds(value) {
			continue
		}
		var within, beside []string
		for _, s := range x {
			text := ""
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
		out = append(out, func(at string) string { return strings.ReplaceAll(formula, whereAt, at) })
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
