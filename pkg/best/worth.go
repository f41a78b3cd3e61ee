package best

import (
	"encoding/binary"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
)

// A Choice is an option for each room, worked out exactly.
type Choice struct {
	Options    []int           // 0 is as it is
	Profit     decimal.Decimal // the owner's
	Cash       decimal.Decimal // needed at most
	Renovation decimal.Decimal // months
	OwnHours   decimal.Decimal
	Budget     decimal.Decimal
}

var weeksAMonth = decimal.NewFromInt(365).DivRound(decimal.NewFromInt(12*7), 30)

// Weeks is how long the work takes.
func (c *Choice) Weeks() decimal.Decimal { return c.Renovation.Mul(weeksAMonth) }

// At works a choice out exactly: the work with any sticks, the cut lists, the work with
// them, and from its totals the money.
func (h *House) At(choice []int) (*Choice, error) {
	key := string(bytes(choice))
	if c := h.known[key]; c != nil {
		return c, nil
	}
	if err := h.work.Evaluate(h.taking(choice)...); err != nil {
		return nil, err
	}
	cuts, err := h.cuts(choice)
	if err != nil {
		return nil, err
	}
	if err := h.work.Evaluate(cuts...); err != nil {
		return nil, err
	}
	var given []exact.Change
	for _, c := range h.totals {
		given = append(given, exact.Change{Cell: c, Value: h.work.Of(c)})
	}
	for _, s := range h.shifted {
		given = append(given, exact.Change{Cell: s.cell, Value: s.base.Add(h.work.Of(h.totals[added]))})
	}
	if err := h.money.Evaluate(given...); err != nil {
		return nil, err
	}
	v := func(i int) decimal.Decimal { return h.money.Of(h.results[i]) }
	c := &Choice{append([]int{}, choice...), v(profit), v(cash), v(renovation), v(ownHours), v(budget)}
	h.known[key] = c
	h.worked++
	return c, nil
}

func bytes(choice []int) []byte {
	out := make([]byte, 0, 2*len(choice))
	for _, o := range choice {
		out = binary.BigEndian.AppendUint16(out, uint16(o))
	}
	return out
}
