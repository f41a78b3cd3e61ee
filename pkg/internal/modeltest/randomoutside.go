package modeltest

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// outside draws what lies around the house.
func (d *drawer) outside() *model.Member {
	d.use("an outside")
	r := d.Deal.Add("room", "outside", "outside")
	for i := range d.upTo(2) {
		d.plane(r, i+1)
	}
	areas := []string{"roof", "siding", "soffit", "deck", "yard", "driveway", "walk", "patio"}
	runs := []string{"eaves", "rakes", "gutters", "foundation_run", "deck_rail", "fence"}
	for _, line := range areas {
		d.give(6, r, line, func() decimal.Decimal { return d.ft(0, 2000) })
	}
	for _, line := range runs {
		d.give(6, r, line, func() decimal.Decimal { return d.ft(0, 200) })
	}
	d.give(6, r, "downspouts", func() decimal.Decimal { return d.whole(0, 8) })
	d.give(6, r, "deck_footings", func() decimal.Decimal { return d.whole(0, 8) })
	d.give(6, r, "trees", func() decimal.Decimal { return d.whole(0, 5) })
	d.give(6, r, "wall_height", func() decimal.Decimal { return d.ft(8, 24) })
	return r
}

func (d *drawer) plane(r *model.Member, n int) {
	p := r.Add("plane", "", fmt.Sprintf("roof %d", n))
	p.GiveNumber("plane_length", d.ft(10, 60))
	p.GiveNumber("plane_width", d.ft(10, 40))
	d.give(8, p, "overhang", func() decimal.Decimal { return d.ft(0, 3) })
	d.give(12, p, "pitch", func() decimal.Decimal { return d.whole(0, 14).DivRound(decimal.NewFromInt(12), 40) })
}
