package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// What a look at the house or the papers of a loan cost at most, where that is more than little of the price;
// common practice, no source.
var (
	dearPaper   = decimal.NewFromInt(4000)
	dearLook    = decimal.NewFromInt(3000) // an inspection, with sewer, radon, pests and an engineer
	dearRecord  = decimal.NewFromInt(2500) // recording of the deed, without a tax
	dearOfPrice = decimal.New(1, -2)
)

// paperWords are in the names of looks at a house and of papers; moreThanPaper in those of what may well cost
// more, as it is a share of the loan, a tax, cover, money left with someone, or work.
var paperWords, moreThanPaper = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(inspect(ions?|or)|appraisals?|appraiser|radon|termites?|pests?|sewer (camera|scope)|documents?|documentation|docs?|processing|administration|admin|underwriting|application|flood cert\w*|notary|courier|wire)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`originat|points?\b|broker|commitment|discount|interest|insur|premium|tax|stamp|transfer fee|duty|intangible|record|title|escrow|deposit|reserve|credits?\b|repair|treat|allowance|fund|closing|settlement`)
})

// lookWords are in the names of looks at a house that papers are not.
var lookWords = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\binspect(ion|or)\b`) })

// severalPapers are in names that hold more than one.
var severalPapers = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[,&+/]|\band\b|\binspections\b|\ball\b`) })

// recordWords are in the names of what is paid for recording; moreThanRecord in those of taxes and others with it.
var recordWords, moreThanRecord = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\brecording\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`tax|stamp|transfer|duty|mortgage|title|escrow|clos|settle|excise|intangible|insur|attorney|lawyer|legal`)
})

// mostForPaper is the charge in dollars over which one for looks or papers is doubted; false for others. One
// whose name holds several may be twice that.
func mostForPaper(fee *model.Member) (most decimal.Decimal, is bool) {
	name := strings.ToLower(fee.Label)
	if !slices.Contains([]string{"before_fee", "purchase_fee", "loan_fee"}, fee.Kind) {
		return most, false
	}
	if recordWords().MatchString(name) && !moreThanRecord().MatchString(name) && !severalPapers().MatchString(name) {
		return dearRecord, true
	}
	if !paperWords().MatchString(name) || moreThanPaper().MatchString(name) {
		return most, false
	}
	if severalPapers().MatchString(name) {
		return dearPaper.Mul(two), true
	}
	if lookWords().MatchString(name) && fee.Kind != "loan_fee" {
		return dearLook, true
	}
	return dearPaper, true
}
