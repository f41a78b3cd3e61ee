package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// shown is how many doubts and cautions the page lists.
const (
	doubtsShown   = 6
	cautionsShown = 10
)

// notes writes what was assumed, what is doubtful and what to be careful about.
func notes(p *page, a *answer.Answer, full bool) {
	doubtful(p, a)
	careful(p, a, full, "--cautions")
}

// doubtful writes what was assumed and what is doubtful.
func doubtful(p *page, a *answer.Answer) {
	if parts := a.Assumptions(); len(parts) > 0 {
		p.heading("Assumed, because the file does not say")
		p.text("  ", strings.Join(parts, "; "))
	}
	if unproved := a.Unproved(); len(unproved) > 0 {
		p.heading("Not proved")
		p.text("  ", strings.Join(unproved, ", ")+": the search takes for granted that it turns only once; other figures beyond it may turn it back")
	}
	if n := len(a.Warnings); n > 0 {
		p.heading("Doubtful; look again")
		for _, d := range weightiest(a.Warnings)[:min(n, doubtsShown)] {
			p.text("  - ", doubt(a, d))
		}
		if n > doubtsShown {
			p.text("  - ", fmt.Sprintf("and %d more; ledgerboard check tells them all, with what to do", n-doubtsShown))
		}
	}
}

// aboutValue are the doubts about the figure that the whole deal hangs on.
var aboutValue = []string{"value-below-price", "value-far-above-price", "value-outside-comps", "above-best-sale", "cost-above-best-sale", "comps-condition-unused", "comps-condition-today", "house-built-lately", "comps-amount-unusual", "sales-old", "sale-far-off", "house-beyond-sales"}

// weightiest puts the doubts about the value first, so that a page that has no room for all
// of them has room for those.
func weightiest(all diag.List) diag.List {
	out := slices.Clone(all)
	first := func(d diag.Diag) int {
		switch {
		case d.Code == deal.MistypedHouse:
			return 0
		case slices.Contains(aboutValue, d.Code):
			return 1
		}
		return 2
	}
	slices.SortStableFunc(out, func(x, y diag.Diag) int { return cmp.Compare(first(x), first(y)) })
	return out
}

func careful(p *page, a *answer.Answer, full bool, texts string) {
	p.heading("Be careful; this informs, it does not advise")
	if full {
		for _, c := range a.Cautions {
			p.text("  - ", c.Text)
			p.text("      ", "["+c.Source+"]")
		}
		return
	}
	for _, c := range a.Cautions[:min(len(a.Cautions), cautionsShown)] {
		p.text("  - ", c.Title)
	}
	more := "The"
	if n := len(a.Cautions) - cautionsShown; n > 0 {
		more = fmt.Sprintf("%d more and the", n)
	}
	p.text("  ", "Check locally. "+more+" full texts with their sources: "+texts)
}

// doubt says a doubt with its line, and the file where that is not the deal's.
func doubt(a *answer.Answer, d diag.Diag) string {
	if f := d.Pos.File; d.Pos.Line > 0 && f != a.Deal.Root.Pos.File && !deal.InSet(d.Pos) {
		return fmt.Sprintf("%s, line %d: %s", f, d.Pos.Line, d.Message)
	}
	if d.Pos.Line > 0 {
		if deal.InSet(d.Pos) {
			return "--set: " + d.Message
		}
		return fmt.Sprintf("line %d: %s", d.Pos.Line, d.Message)
	}
	return d.Message
}
