package deal

import (
	"regexp"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// hire is what a general line is for, by its words, with what it is rarely over in a month and in all.
type hire struct {
	words       *regexp.Regexp
	month, once decimal.Decimal
}

// The charges of a renovation that are hired by the month or done once at its end; common practice, no source.
var hires = sync.OnceValue(func() []hire {
	return []hire{
		{regexp.MustCompile(`(?i)\b((debris|rubble) (removal|disposal)|dump (runs?|fees?)|haul(age|ers?)|haul(ing)?[- ](off|away))\b`), decimal.NewFromInt(3000), decimal.NewFromInt(10_000)},
		{container(), decimal.NewFromInt(3000), decimal.NewFromInt(10_000)},
		{regexp.MustCompile(`(?i)\b(toilets?|porta?-?(potty|john)|restrooms?|latrine)\b`), decimal.NewFromInt(800), decimal.NewFromInt(6000)},
		{regexp.MustCompile(`(?i)\b(tools? (rentals?|hire)|(rental|rented|hired) tools?)\b`), decimal.NewFromInt(2500), decimal.NewFromInt(5000)},
		{regexp.MustCompile(`(?i)\btemp(orary)? (power|electric\w*|service|pole)( (power|service|pole))?\b`), decimal.NewFromInt(1000), decimal.NewFromInt(5000)},
		{regexp.MustCompile(`(?i)\b(final clean(ing)?|clean(ing|ers)|cleaning crew)\b`), decimal.NewFromInt(3000), decimal.NewFromInt(5000)},
	}
})

// moreThanHire are in the names of general lines that hold work, or are bought.
var moreThanHire = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)[,;&+/]|\b(and|plus|with|work|install\w*|rough|new|haul\w*|debris|remov\w*|demo\w*|clean-?out|trash|hoard\w*|estate|abatement|lead|asbestos|mold|mould|sewage|flood|fire|air|ducts?|chimney|storage|office|dirt|soil|earth|excavat\w*|trees?|stumps?|pool|boulders?)\b`)
})

// doubtHires doubts a general line for a container, hauling, what is rented or cleaning of which a nought is too many.
func (r *reader) doubtHires() {
	size := r.sizeOfHouse()
	for _, m := range r.deal.Root.In("general_fee") {
		if permits(m) || permitForContainer(m.Label) {
			continue
		}
		for _, h := range hires() {
			if !h.words.MatchString(m.Label) {
				continue
			}
			if !moreThanHire().MatchString(h.words.ReplaceAllString(m.Label, "")) {
				r.doubtHire(m, h, size)
			}
			break
		}
	}
}

func (r *reader) doubtHire(m *model.Member, h hire, size decimal.Decimal) {
	tell := func(v model.Value, most decimal.Decimal, words string) {
		r.say("charge-high", v.Pos, "%s is %s; such a charge is rarely over %s", m.Label, v.Text, quantity.FormatDollars(most)+words)("check it with whoever gave it to you, for a nought too many; it is used as it stands")
	}
	if v, is := m.Given.Look("fixed"); is {
		if most := h.once.Mul(size).Round(-2); v.Number.GreaterThan(most) {
			tell(v, most, "")
		}
	}
	for _, line := range []string{"a_month", "a_quarter", "a_year"} {
		v, is := m.Given.Look(line)
		months := decimal.NewFromInt(12 / timesAYear[line])
		if most := h.month.Mul(size).Round(-2); is && v.Number.GreaterThan(most.Mul(months)) {
			tell(v, most, "/month")
		}
	}
}
