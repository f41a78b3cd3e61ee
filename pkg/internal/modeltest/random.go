package modeltest

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"ledgerboard/pkg/model"
)

// A Draw is a deal drawn at random.
type Draw struct {
	Deal    *model.Member
	Targets []string        // the stated targets, as the lines that must not fall below zero
	Uses    map[string]bool // which of Options it uses
}

// Random draws a deal that a deal file could state. Every input of the document is
// drawn in some deals, at ordinary values and at the edges of what is accepted.
func Random(t *rapid.T) *Draw { return anyDeals.Draw(t, "deal") }

// RandomSteady draws a deal in which no charge falls as the price rises: without
// falling slabs, credits, tables chosen by total or day, without a charge for each draw
// where a dearer house can leave less to draw, and without extensions of a loan that level
// payments may have cleared.
func RandomSteady(t *rapid.T) *Draw { return steadyDeals.Draw(t, "deal") }

var (
	anyDeals    = rapid.Custom(func(t *rapid.T) *Draw { return draw(t, false) })
	steadyDeals = rapid.Custom(func(t *rapid.T) *Draw { return draw(t, true) })
)

// Options are the ways of a deal that Draw.Uses tells of, beyond which inputs are given.
var Options = []string{
	"cash purchase", "one loan", "two loans", "three loans",
	"marginal brackets", "slabs", "rate per unit", "fixed slab", "table by base", "table by day",
	"base at an edge", "open end", "closed end", "least and most", "credit by share",
	"before fee", "purchase fee", "general fee", "holding fee", "selling fee", "loan fee",
	"bill paid ahead", "premium paid ahead",
	"deposit", "credit at the purchase", "no lead-in", "no renovation", "no marketing", "no escrow", "only one phase",
	"whole months", "days and weeks", "no works", "work of no length", "standstill in work",
	"stated past the end", "stated short of the end", "no targets", "all targets",
	"commitment and reserve", "of remainder behind a loan", "exit by share of balance", "exit by share of commitment",
	"no rate", "extension by share", "extension by fixed fee", "term without extension", "unequal split",
}

// drawer fills a draw.
type drawer struct {
	Draw
	t      *rapid.T
	steady bool // no charge may fall as the price rises
	bare   bool // one loan pays for everything, so no cash is needed
	refs   map[string]decimal.Decimal
}

func draw(t *rapid.T, steady bool) *Draw {
	d := &drawer{t: t, steady: steady, refs: map[string]decimal.Decimal{}}
	d.Deal, d.Uses = model.NewDeal("random deal"), map[string]bool{}
	d.bare = d.chance(2)
	d.values()
	d.comparables()
	d.time()
	d.works()
	d.purchase()
	d.loans()
	d.sale()
	d.partner()
	d.tax()
	d.targets()
	return &d.Draw
}

func (d *drawer) use(option string) { d.Uses[option] = true }

// GoString prints the deal as a tree of what it gives.
func (d *Draw) GoString() string {
	var b strings.Builder
	show(&b, d.Deal, "\n")
	fmt.Fprintf(&b, "\ntargets: %v\n", d.Targets)
	return b.String()
}

func show(b *strings.Builder, m *model.Member, lead string) {
	fmt.Fprintf(b, "%s%s %s:", lead, m.Set, m.Kind)
	given := slices.SortedFunc(slices.Values(m.Given), func(a, b model.Given) int { return strings.Compare(a.Line, b.Line) })
	for _, g := range given {
		line, v := g.Line, g.Value
		switch {
		case v.Refers != "":
			fmt.Fprintf(b, " %s=of %s", line, v.Refers)
		case v.Choice != "":
			fmt.Fprintf(b, " %s=%q", line, v.Choice)
		default:
			fmt.Fprintf(b, " %s=%s", line, v.Number)
		}
	}
	for _, c := range m.Children {
		show(b, c, lead+"  ")
	}
}
