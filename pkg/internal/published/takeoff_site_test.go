package published

import (
	"fmt"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// A site is a house under construction in a test: members are added to it until the
// first figure is asked for.
type site struct {
	*testing.T
	root, trade *model.Member
	m           *model.Model
	v           *exact.Values
}

// with gives inputs: numbers, "of" a line, or a word of choice.
type with map[string]any

func newSite(t *testing.T) *site {
	s := &site{T: t, root: model.NewDeal("house")}
	give(s.root, with{"price": "100000", "after_repair_value": "150000", "escrow": "1"})
	s.trade = s.root.Add("trade", "", "trade")
	return s
}

func give(m *model.Member, inputs with) *model.Member {
	for line, x := range inputs {
		text, ok := x.(string)
		switch n, err := decimal.NewFromString(fmt.Sprint(x)); {
		case err == nil:
			m.GiveNumber(line, n)
		case ok && strings.HasPrefix(text, "of "):
			m.Give(line, model.Value{Refers: strings.TrimPrefix(text, "of ")})
		default:
			m.Give(line, model.Value{Choice: text})
		}
	}
	return m
}

// room adds a room of one rectangle.
func (s *site) room(length, width, height any) *model.Member {
	r := give(s.root.Add("room", "inside", "room"), with{"room_ceiling": height})
	give(r.Add("section", "", "floor"), with{"length": length, "width": width})
	return r
}

// place adds a room without a rectangle: the outside, or the house as a whole.
func (s *site) place(kind string, inputs with) *model.Member {
	return give(s.root.Add("room", kind, kind), inputs)
}

// opening adds doors or windows.
func (s *site) opening(r *model.Member, kind string, width, height decimal.Decimal) {
	give(r.Add("opening", "", kind), with{"kind": kind, "opening_width": width, "opening_height": height})
}

// work adds a piece of work on so much of a measure, or on a number of units.
func (s *site) work(r *model.Member, measure any, inputs with) *model.Member {
	if len(r.In("option")) == 0 {
		r.Add("option", "", "done")
	}
	w := give(r.In("option")[0].Add("item", "", "work"), inputs)
	w.Link(s.trade)
	return give(w, with{"measure": measure})
}

// product adds what comes in packs that hold so much.
func (s *site) product(holds any) *model.Member {
	return give(s.root.Add("product", "", "product"), with{"holds": holds})
}

// use lets a piece of work take a product.
func (s *site) use(w, product *model.Member, inputs with) *model.Member {
	u := give(w.Add("use", "", product.Label), inputs)
	u.Link(product)
	return u
}

// of is a line of a member of the finished house.
func (s *site) of(x *model.Member, line string) decimal.Decimal {
	s.Helper()
	if s.m == nil {
		doc, err := model.Standard()
		require.NoError(s, err)
		s.m, err = model.Bind(doc, s.root)
		require.NoError(s, err)
		s.v, err = exact.Evaluate(s.m)
		require.NoError(s, err)
	}
	c := s.m.Find(x, line)
	require.NotNil(s, c, line)
	return s.v.Of(c)
}

// is asserts a line of a member, or what several come to together.
func (s *site) is(want decimal.Decimal, x *model.Member, lines ...string) {
	s.Helper()
	sum := decimal.Zero
	for _, line := range lines {
		sum = sum.Add(s.of(x, line))
	}
	near(s.T, want, sum, dust)
}

// packsOf works out how many packs of one product that holds so much are bought for
// an amount of work.
func (s *site) packsOf(amount, holds decimal.Decimal, inputs with) *model.Member {
	w := s.work(s.place("whole_house", nil), amount, nil)
	p := s.product(holds)
	s.use(w, p, inputs)
	return p
}
