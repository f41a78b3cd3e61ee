package exact_test

import (
	"errors"
	"flag"
	"fmt"
	"path"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

var randomHouses = flag.Int("houses", 2000, "random houses to try; a twentieth of them with -short")

// dust is more than the digits that quotients do not keep come to.
var dust = decimal.New(1, -25)

// alike is an error if two figures that must be one differ by more than dust.
func alike(what string, want, got decimal.Decimal) error {
	return check(want.Sub(got).Abs().LessThan(dust), "%s: %s against %s", what, want, got)
}

// ofTakeoff reports whether a line is one of rooms, work and products.
func ofTakeoff(l *model.Line) bool {
	return slices.Contains([]string{"25-rooms.txt", "27-items.txt"}, path.Base(l.File))
}

// measured lays a house over the document and works out what concerns its rooms,
// its work and the budget, but not the months.
func measured(t *rapid.T, d *modeltest.Draw) worked {
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d.Deal)
	require.NoError(t, err)
	var want []*model.Cell
	for _, c := range m.Cells {
		if ofTakeoff(c.Line) || slices.Contains([]string{"budget", "works_at_trade_price", "cost.trade_price", "after_repair_value"}, c.Line.ID()) {
			want = append(want, c)
		}
	}
	v, err := exact.Evaluate(m, want...)
	require.NoError(t, err)
	return worked{d, v, m}
}

// all are the members of a set or a kind, wherever they stand.
func (w worked) all(set string) (out []*model.Member) {
	var visit func(*model.Member)
	visit = func(x *model.Member) {
		if x.Set == set || x.Kind == set {
			out = append(out, x)
		}
		for _, c := range x.Children {
			visit(c)
		}
	}
	visit(w.Deal)
	return out
}

// holds fails with all that does not hold in a house.
func holds(t *rapid.T, w worked, all []property) {
	var errs []error
	for _, p := range all {
		if err := p.holds(w); err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", p.name, err))
		}
	}
	if err := errors.Join(errs...); err != nil {
		t.Fatalf("%v", err)
	}
}

func TestTakeoffAddsUp(t *testing.T) {
	var tally counter
	modeltest.Check(t, *randomHouses, func(t *rapid.T) {
		w := measured(t, modeltest.RandomHouse(t))
		holds(t, w, takeoffProperties)
		tally.count(w)
	})
	if t.Failed() {
		return
	}
	doc, err := model.Standard()
	require.NoError(t, err)
	least := max(1, tally.deals/50)
	if testing.Short() {
		least = 0
	}
	wanted := wantedOfHouses(doc)
	for _, option := range wanted {
		if n := tally.uses[option]; n < least {
			t.Errorf("only %d of %d houses have: %s", n, tally.deals, option)
		}
	}
	slices.SortFunc(wanted, func(a, b string) int { return tally.uses[a] - tally.uses[b] })
	t.Logf("%d houses; the rarest options: %s", tally.deals, tally.told(wanted[:8]))
}

// wantedOfHouses are the options that random houses must use: every input of rooms,
// work and products, given and left out, every word of a choice, and what the
// generator names.
func wantedOfHouses(doc *model.Document) []string {
	all := append(slices.Clone(modeltest.HouseOptions), "leaves out renovation", "leaves out after_repair_value", "gives value_before_work", "leaves out value_before_work")
	for _, l := range doc.Lines {
		if !l.Input || !ofTakeoff(l) {
			continue
		}
		all = append(all, "gives "+l.ID())
		if l.Formula() != nil {
			all = append(all, "leaves out "+l.ID())
		}
		for _, word := range l.Choices {
			all = append(all, fmt.Sprintf("%s is %q", l.ID(), word))
		}
	}
	return all
}
