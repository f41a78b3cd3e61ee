package solve

import (
	"flag"
	"fmt"
	"sync"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

var randomDeals = flag.Int("deals", 150, "random deals to try; a twentieth of them with -short")

// mostAsked is how many exact evaluations a search may need.
const mostAsked = patience + 60 // halving takes some more

func lay(t *rapid.T, d *modeltest.Draw) *model.Model {
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d.Deal)
	require.NoError(t, err)
	return m
}

// A counter keeps the effort of searches, and the deal of the greatest.
type counter struct {
	mutex                   sync.Mutex
	searches, asked, ranged int
	most                    search
	deal                    string
	over                    int // searches that asked more than mostAsked
}

func (c *counter) add(s *search, d *modeltest.Draw) {
	c.mutex.Lock()
	defer c.mutex.Unlock()
	c.searches++
	c.asked += s.asked
	c.ranged += s.ranged
	if s.asked > mostAsked {
		c.over++
	}
	if s.asked > c.most.asked {
		c.most, c.deal = *s, fmt.Sprintf("%#v", d)
	}
}

// require fails if a search asked too much.
func (c *counter) require(t *testing.T, what string) {
	if c.searches == 0 {
		return
	}
	t.Logf("%s: %d searches, on average %d exact and %d range evaluations; at most %d exact with %d range",
		what, c.searches, c.asked/c.searches, c.ranged/c.searches, c.most.asked, c.most.ranged)
	if c.over > 0 {
		t.Errorf("%s: %d searches needed more than %d exact evaluations; %d on this deal:%s", what, c.over, mostAsked, c.most.asked, c.deal)
	}
}

// misses reports whether a watched line is below zero at n.
func (s *search) misses(t *rapid.T, n int64) bool {
	v, err := s.at(n)
	require.NoError(t, err)
	for _, c := range s.watched {
		if v.Of(c).IsNegative() {
			return true
		}
	}
	return false
}

func TestRandomOffersAreHighest(t *testing.T) {
	var effort counter
	modeltest.Check(t, *randomDeals, func(t *rapid.T) {
		d := modeltest.Random(t)
		m := lay(t, d)
		offer, err := MaxOffer(m, d.Targets)
		require.NoError(t, err)

		high, err := reach(m, nil)
		require.NoError(t, err)
		axis := Axis{Cell: m.Find(m.Root, "price"), Step: decimal.NewFromInt(1)}
		s, err := newSearch(m, axis, 0, high, false, nil, cells(m, Targets(d.Targets))...)
		require.NoError(t, err)
		n, found, err := s.last(0, high)
		require.NoError(t, err)
		effort.add(s, d)
		require.Equal(t, found, offer.Found)
		require.False(t, found && !offer.Price.Equal(decimal.NewFromInt(n)))
		if offer.Endless {
			require.False(t, s.misses(t, high), "at the end of the reach, %d", high)
			return
		}
		highest(t, d, s, offer, high)
		if offer.Found {
			lowestMiss(t, d, m, s, offer.Price.IntPart())
		}
	})
	effort.require(t, "maximum offer")
}

// highest checks that the offer holds every target and that nothing above it does.
func highest(t *rapid.T, d *modeltest.Draw, s *search, o Offer, high int64) {
	from := int64(0)
	if o.Found {
		n := o.Price.IntPart()
		require.False(t, s.misses(t, n), "a target is missed at the offer of %d", n)
		from = n + 1
	}
	require.True(t, s.misses(t, from))
	if o.Trusted {
		return // only that a target is missed a dollar higher is claimed
	}
	require.NotEmpty(t, o.Binding)
	require.True(t, o.Short.IsPositive())
	above := edges(d, from, high, "price", "all_in_price")
	for n := from; n <= min(high, from+300); n++ {
		above = append(above, n)
	}
	for range 200 {
		above = append(above, rapid.Int64Range(from, high).Draw(t, "price"))
	}
	for _, n := range above {
		require.True(t, s.misses(t, n), "every target holds at %d, above the offer of %s", n, o.Price)
	}
}

// lowestMiss checks that of the prices up to the offer the first to miss a target is found,
// and that none is where all hold.
func lowestMiss(t *rapid.T, d *modeltest.Draw, m *model.Model, s *search, offer int64) {
	from := rapid.Int64Range(0, offer).Draw(t, "from")
	miss, found, err := FirstMiss(m, d.Targets, decimal.NewFromInt(from), decimal.NewFromInt(offer))
	require.NoError(t, err)
	all := offer
	if found {
		require.True(t, s.misses(t, miss.IntPart()), "every target holds at %s", miss)
		all = miss.IntPart() - 1
	}
	if from > all {
		return
	}
	below := edges(d, from, all, "price", "all_in_price")
	for range 100 {
		below = append(below, rapid.Int64Range(from, all).Draw(t, "price"))
	}
	for _, n := range below {
		require.False(t, s.misses(t, n), "a target is missed at %d, under %d and over %d", n, all, from)
	}
}

// Without charges that fall as the price rises, a dearer house brings no more.
func TestProfitNeverRisesWithPrice(t *testing.T) {
	modeltest.Check(t, *randomDeals, func(t *rapid.T) {
		d := modeltest.RandomSteady(t)
		m := lay(t, d)
		high, err := reach(m, nil)
		require.NoError(t, err)
		axis := Axis{Cell: m.Find(m.Root, "price"), Step: decimal.NewFromInt(1)}
		profit := m.Find(m.Root, "profit")
		s, err := newSearch(m, axis, 0, high, false, nil, profit)
		require.NoError(t, err)
		for range 20 {
			cheap := rapid.Int64Range(0, high/5).Draw(t, "price")
			dear := cheap + rapid.SampledFrom([]int64{1, 2, 10, 100, 1000, 10_000, 100_000}).Draw(t, "more")
			a, err := s.at(cheap)
			require.NoError(t, err)
			b, err := s.at(dear)
			require.NoError(t, err)
			require.True(t, b.Of(profit).LessThanOrEqual(a.Of(profit)), "profit is %s at %d and %s at %d", a.Of(profit), cheap, b.Of(profit), dear)
		}
	})
}
