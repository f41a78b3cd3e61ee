package answer

// Unproved names the figures whose search gave up being sure: it took for granted that
// what it looks for changes only once along the way.
func (a *Answer) Unproved() []string {
	var out []string
	say := func(trusted bool, what string) {
		if trusted {
			out = append(out, what)
		}
	}
	say(a.Offer.Trusted, "the maximum offer")
	say(a.HasLow && a.OfferLow.Trusted, "the maximum offer at the low value")
	b := a.BreakEven
	say(b.SalePrice.Trusted, "the break-even sale price")
	say(b.Overrun.Trusted, "the break-even overrun")
	say(b.Months.Trusted, "the break-even months")
	if b := a.BreakEvenAtTarget; b != nil && (b.SalePrice.Trusted || b.Overrun.Trusted || b.Months.Trusted) {
		out = append(out, "what loses the profit target")
	}
	return out
}
