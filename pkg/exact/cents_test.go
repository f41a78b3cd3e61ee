package exact_test

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"
)

// unrounded are the lines in dollars that need not be whole cents, with the reason.
var unrounded = map[string]string{
	"fee.by_share": inner, "fee.by_time": inner, "fee.by_table": inner, "fee.in_full": inner, "table.charge": inner, "bracket.charge": inner,
	"stage.in_phase": spread, "stage.up_to_here": spread, "stage.spent_of_it": spread, "stated_spending": spread, "stated_to_date": spread,
	"margin_to_spare": compared, "roi_to_spare": compared, "lump_limit": compared,
	"fee.lender_part": parted, "fee.lender_so_far": parted, "cost.lender_part": parted, "cost.lender_so_far": parted, "item.lender_part": parted,
	"item.lender_so_far": parted, "option.lender_part": parted, "room.lender_part": parted, "room.before_room": parted, "option.before_option": parted, "check.lender_part": parted,
	"check.lender_so_far": parted, "before_lines": parted, "before_rooms": parted, "before_checks": parted, "before_disposal": parted, "before_rents": parted,
	"before_contingency": parted, "loan.left_open": parted, "comps_mean": meant,
}

const (
	inner    = "a step inside a charge, which is rounded once, in its amount"
	spread   = "a weight by which the spending is spread, which is rounded once, in spent_to_date"
	compared = "a share of a sum in cents, compared with another and never paid"
	parted   = "a lender's part before cents are shared out, which is rounded in lender_pays"
	meant    = "what one sale is by all and the others is drawn from, which is rounded in value_by_comps"
)

func wholeCents(w worked) error {
	var errs []error
	for _, c := range w.m.Cells {
		if c.Line.Unit != "$" || unrounded[c.Line.ID()] != "" {
			continue
		}
		months := []decimal.Decimal{w.Of(c)}
		if c.Line.Monthly {
			months = w.ByMonth(c)
		}
		for m, x := range months {
			if !x.Equal(x.Round(2)) {
				errs = append(errs, fmt.Errorf("%s (%s) in month %d: %s", c.Name(), c.Line.ID(), m, x))
				break
			}
		}
	}
	return errors.Join(errs...)
}
