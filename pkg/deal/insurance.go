package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/model"
)

// coverWords are in the names of insurance of a house, as insurers and lenders call it; vacantWords in those of
// insurance that is for a house that stands empty, or is worked on.
var coverWords, vacantWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`insur|hazard\b|home ?owner|\bpolicy\b|\b(ho|dp)[- ]?[1-8]\b|\bdwelling (fire|cover\w*)|\bwalls?-? ?in\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`vacant|\bbuilder\S{0,2}[ -]risk|\bcourse of construction`)
})

// otherCover is insurance of the title or the loan, which covers no house, the dues of those who own there, and
// what a town takes for a house that stands empty.
var otherCover = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(title|mortgage|owner\S*|lender\S*|loan|warranty) (insur\w*|policy)( policy)?|\bpolicy fees?\b|home ?owner\S* (assoc\w*|dues|fees?)|vacant\S*( (property|house|home|building|structure|dwelling))* (regist\w*|fees?|permits?|tax(es)?|licen[cs]e|fines?)`)
})

func insuresVacant(label string) bool {
	return vacantWords().MatchString(otherCover().ReplaceAllString(strings.ToLower(label), ""))
}

// insures reports whether a charge has the name of an insurance.
func insures(m *model.Member) bool {
	return insuresVacant(m.Label) || coverWords().MatchString(otherCover().ReplaceAllString(strings.ToLower(m.Label), ""))
}

// otherThings are in the names of insurance that costs little, for it covers no whole house.
var otherThings = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(floods?|(earth)?quake|umbrella|liability|contents|tools?|condo(minium)?|ho[- ]?[46]|unit|walls?|loan|warranty|renters?|car|truck|vehicle|sewer|lines?|theft|glass|extra|rider)\b`)
})

// coversHouse reports whether a holding cost is all the insurance of the house.
func coversHouse(m *model.Member) bool {
	other := func(x *model.Member) bool { return x != m && x.Set == "fee" && insures(x) }
	return m.Kind == "holding_fee" && insures(m) && !taxes(m) && !otherThings().MatchString(m.Label) && !slices.ContainsFunc(m.Parent.Children, other)
}
