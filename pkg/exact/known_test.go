package exact_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

const lent = `set loan of deal; money borrowed

== Main ==

sale_month | deal | month
  = 3 month
  how long it takes
interest | deal | $
  = total(if(amount > 0, asked, 0) of loan)
  what all loans cost
amount | loan | $
  = input
  what is lent
rate | loan | $
  = 1 $ / amount * 1 $
  what each dollar costs
asked | loan | $
  = rate + rate
  what it costs
`

// What no line of the deal takes is worked out where it is asked for; that it cannot be is
// said by the name of the line alone, not of those that led to it.
func TestALineThatNoneTakesFailsWhereItIsAskedFor(t *testing.T) {
	doc, err := model.Parse(model.Source{Name: "lent", Text: lent})
	require.NoError(t, err)
	deal := model.NewDeal("test")
	none := deal.Add("loan", "", "no loan")
	none.GiveNumber("amount", number("0"))
	some := deal.Add("loan", "", "a loan")
	some.GiveNumber("amount", number("4"))
	m, err := model.Bind(doc, deal)
	require.NoError(t, err)
	v, err := exact.Known(walk.NewKnown(m))
	require.NoError(t, err)
	require.Equal(t, "0.5", v.Of(m.Find(deal, "interest")).String()) // 1/4 + 1/4
	require.NoError(t, v.Work(m.Find(some, "rate")))
	require.EqualError(t, v.Work(m.Find(none, "asked")), "no loan: rate: division by zero")
	require.Panics(t, func() { v.Of(m.Find(none, "rate")) })
}
