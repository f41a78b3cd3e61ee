package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
)

func (r *reader) checkLoans() {
	for i, l := range r.loans() {
		r.checkAmount(l, i)
		r.checkInterest(l)
		r.checkExtension(l)
	}
	if g, funded := r.together("renovation share"); g != nil {
		r.say("funded-over-100", g.at(), "the loans fund %s%% of the renovation together", funded.Shift(2))("accepted is at most 100%% together; the last loan may take a share   of remainder: yes")
	}
}

// together is the first share of loans with which they take more than there is, or nil, with
// how much all of them take. One of the remainder takes its share of what those before it leave.
func (r *reader) together(key string) (over *reading, taken decimal.Decimal) {
	for _, l := range r.loans() {
		g, rest := r.good(l.path+key), r.good(l.path+"of remainder")
		if g == nil {
			continue
		}
		takes := g.number
		if rest != nil && !rest.number.IsZero() {
			takes = takes.Mul(decimal.Max(decimal.Zero, one.Sub(taken)))
		}
		taken = taken.Add(takes)
		if over == nil && takes.IsPositive() && taken.GreaterThan(one) {
			over = g
		}
	}
	return over, taken
}

func (r *reader) checkAmount(l scope, i int) {
	share, amount := r.of(l, "price share"), r.of(l, "fixed amount")
	if share != nil && amount != nil {
		r.say("price-two-ways", amount.key.at, "the loan has a fixed amount and a price share")("keep one of them")
	}
	if rest := r.good(l.path + "of remainder"); i == 0 && rest != nil && !rest.number.IsZero() {
		r.say("remainder-first", rest.key.at, "the first loan takes a share of the remainder, but no loan comes before it")("leave it out, or put the loan behind the one it follows")
	}
}

func (r *reader) checkInterest(l scope) {
	reserve, paid, on := r.good(l.path+"reserve"), r.good(l.path+"interest paid"), r.good(l.path+"interest on")
	fromReserve := paid != nil && paid.choice == "reserve"
	switch {
	case reserve != nil && reserve.number.IsPositive() && !fromReserve && r.badly(l.path+"interest paid"):
		r.say("reserve-unused", reserve.key.at, "the loan has a reserve, but its interest is not paid from it")("add   interest paid: reserve   or leave out the reserve")
	case fromReserve && (reserve == nil || reserve.number.IsZero()) && !r.meant[l.path+"reserve"] && r.badly(l.path+"reserve"):
		r.say("reserve-missing", paid.at(), "interest is paid from a reserve, but there is none")("add   reserve: $4,000")
	}
	am := r.of(l, "amortising")
	if am == nil {
		return
	}
	if paid != nil && paid.choice != "monthly" {
		r.say("amortising-interest", am.key.at, "level payments (amortising) do not go with interest paid %s", diag.Quote(paid.choice))("leave out amortising, or write   interest paid: monthly")
	}
	if on != nil && on.choice == "commitment" {
		r.say("amortising-interest", am.key.at, "level payments (amortising) do not go with interest on the commitment")("leave out amortising, or write   interest on: balance")
	}
}

// badly reports whether a key is absent or was read; one that could not be read is
// spoken of already.
func (r *reader) badly(path string) bool { return r.got[path] == nil || r.got[path].ok }

func (r *reader) checkExtension(l scope) {
	ext := r.of(l, "extension")
	if ext == nil || !ext.ok || r.odd[l.path+"extension."] {
		return
	}
	for _, part := range []string{"each", "fee"} {
		if r.of(l, "extension."+part) == nil {
			r.say("extension-incomplete", ext.key.at, "the extension says no %s", diag.Quote(part))("write it like   extension: {each: 3 months, fee: 0.5%%}")
		}
	}
	if r.of(l, "term") == nil && !r.meant[l.path+"term"] {
		r.say("extension-without-term", ext.key.at, "the extension has no term to lengthen")("add   term: 12 months   to the loan")
	}
}
