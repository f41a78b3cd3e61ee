package exact_test

import (
	"errors"
	"flag"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

var randomDeals = flag.Int("deals", 13_000, "random deals to try; a twentieth of them with -short")

// atLeast is how often each option must occur in 10,000 deals.
const atLeast = 200

// worked is a random deal worked out whole.
type worked struct {
	*modeltest.Draw
	*exact.Values
	m *model.Model
}

func workOut(t *rapid.T) worked {
	d := modeltest.Random(t)
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d.Deal)
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	return worked{d, v, m}
}

// of is the value of a line of the deal.
func (w worked) of(line string) decimal.Decimal { return w.at(w.Deal, line) }

// at is the value of a line of a member.
func (w worked) at(x *model.Member, line string) decimal.Decimal { return w.Of(w.m.Find(x, line)) }

// in is the value of a line of a member in a month.
func (w worked) in(x *model.Member, line string, month int) decimal.Decimal {
	return w.In(w.m.Find(x, line), month)
}

// sum is the total of a line of a member over the months.
func (w worked) sum(x *model.Member, line string) (total decimal.Decimal) {
	for m := range w.Months() + 1 {
		total = total.Add(w.in(x, line, m))
	}
	return total
}

// over is the total of a line over members.
func (w worked) over(all []*model.Member, line string) (total decimal.Decimal) {
	for _, x := range all {
		total = total.Add(w.at(x, line))
	}
	return total
}

func total(all ...decimal.Decimal) decimal.Decimal { return decimal.Sum(decimal.Zero, all...) }

// same is an error if two figures that must be one differ.
func same(what string, want, got decimal.Decimal) error {
	if want.Equal(got) {
		return nil
	}
	return fmt.Errorf("%s: %s against %s", what, want, got)
}

// check is an error if a condition does not hold.
func check(ok bool, format string, args ...any) error {
	if ok {
		return nil
	}
	return fmt.Errorf(format, args...)
}

// A property holds for every deal.
type property struct {
	name  string
	holds func(worked) error
}

var properties = []property{
	{"cash comes to the profit", cashIsProfit},
	{"owner and partner share the whole", sharesAreWhole},
	{"sources meet uses", sourcesMeetUses},
	{"charges come to their totals", chargesAddUp},
	{"charges are as their rules say", chargesAsWritten},
	{"the spending is spent", spendingIsSpent},
	{"draws come out of the holdback", drawsAddUp},
	{"what lenders pay of lines comes to the holdback", linesComeToHoldback},
	{"balances end at nothing", balancesEnd},
	{"interest is paid once", interestAddsUp},
	{"the caps hold", capsHold},
	{"holding is paid", holdingAddsUp},
	{"the low point is lowest", lowPoint},
	{"nothing moves after the sale", nothingAfterSale},
	{"money lines are in cents", wholeCents},
	{"the bridge from the rule of thumb re-adds", bridge},
	{"a prepared question has the same answer", preparedIsSame},
}

func TestRandomDealsAddUp(t *testing.T) {
	var tally counter
	modeltest.Check(t, *randomDeals, func(t *rapid.T) {
		w := workOut(t)
		var errs []error
		for _, p := range properties {
			if err := p.holds(w); err != nil {
				errs = append(errs, fmt.Errorf("%s: %w", p.name, err))
			}
		}
		if err := errors.Join(errs...); err != nil {
			t.Fatalf("%v", err)
		}
		tally.count(w)
	})
	if !t.Failed() {
		tally.require(t)
	}
}

// A counter counts how many deals use an option.
type counter struct {
	mutex sync.Mutex
	deals int
	uses  map[string]int
}

func (c *counter) count(w worked) {
	seen := w.options()
	c.mutex.Lock()
	defer c.mutex.Unlock()
	if c.uses == nil {
		c.uses = map[string]int{}
	}
	c.deals++
	for option := range seen {
		c.uses[option]++
	}
}

// require fails for every option that the deals use too seldom.
func (c *counter) require(t *testing.T) {
	least := max(1, min(atLeast, atLeast*c.deals/10_000))
	if testing.Short() {
		least = 1
	}
	doc, err := model.Standard()
	require.NoError(t, err)
	for _, option := range wanted(doc) {
		if n := c.uses[option]; n < least {
			t.Errorf("only %d of %d deals have: %s", n, c.deals, option)
		}
	}
	rarest := slices.SortedFunc(maps.Keys(c.uses), func(a, b string) int { return c.uses[a] - c.uses[b] })
	t.Logf("%d deals; the rarest options: %s", c.deals, c.told(rarest[:min(8, len(rarest))]))
}

func (c *counter) told(options []string) string {
	var out []string
	for _, o := range options {
		out = append(out, fmt.Sprintf("%s %d", o, c.uses[o]))
	}
	return strings.Join(out, ", ")
}
