package caution

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// Figures are the published self-employment tax figures of one year. Rates and
// the factor are shares of one, amounts are dollars; nothing is rounded.
type Figures struct {
	// Year is the year the figures were published for.
	Year int
	// AfterLast is true when the year asked for is later than the last one
	// known and the last known figures stand in for it.
	AfterLast bool
	// WageBase is the most earnings the social security part reaches, wages
	// already taxed included.
	WageBase decimal.Decimal
	// SocialSecurityRate and MedicareRate apply to net profit times Factor.
	SocialSecurityRate, MedicareRate, Factor decimal.Decimal
	// LeastEarnings is the net earnings, after the factor, below which no tax is due.
	LeastEarnings decimal.Decimal
	// AdditionalRate is the additional Medicare rate above AdditionalFrom.
	AdditionalRate decimal.Decimal
	AdditionalFrom Thresholds
	// Source names the publications and says what was read second-hand.
	Source string
}

// Thresholds are dollars of earnings by filing status.
type Thresholds struct {
	Single, Joint, MarriedSeparate decimal.Decimal
}

type wageBase struct {
	year    int
	dollars int64
	source  string
}

const (
	ssaTable  = "SSA Office of the Chief Actuary, Automatic Determinations, table 2015-2025 (read in copies)"
	irsTopic  = "IRS Topic 751 (read only second-hand)"
	rateTable = "rates and thresholds: IRS Pub. 533, Schedule SE (Form 1040), lines 4a, 4c, 10-13 (thresholds read second-hand)"
)

// wageBases are the social security wage bases by year, without a gap.
func wageBases() []wageBase {
	return []wageBase{
		{2014, 117000, ssaTable},
		{2015, 118500, ssaTable},
		{2016, 118500, ssaTable},
		{2017, 127200, ssaTable},
		{2018, 128400, ssaTable},
		{2019, 132900, ssaTable},
		{2020, 137700, ssaTable},
		{2021, 142800, ssaTable},
		{2022, 147000, ssaTable},
		{2023, 160200, ssaTable},
		{2024, 168600, ssaTable},
		{2025, 176100, ssaTable},
		{2026, 184500, irsTopic},
	}
}

// SelfEmployment returns the self-employment tax figures of a tax year. It is
// false for a year before the table begins (2014). A year after the last known
// one returns the last with AfterLast set and says so in Source. It computes no
// tax and is not tax advice.
func SelfEmployment(year int) (Figures, bool) {
	bases := wageBases()
	at := min(year-bases[0].year, len(bases)-1)
	if at < 0 {
		return Figures{}, false
	}
	f := figuresOf(bases[at])
	if year > f.Year {
		f.AfterLast = true
		f.Source = fmt.Sprintf("%d is not known yet, the figures are those of %d; %s", year, f.Year, f.Source)
	}
	return f, true
}

// figuresOf joins a year's wage base to the rates, which have not changed in
// the years of the table.
func figuresOf(b wageBase) Figures {
	return Figures{
		Year:               b.year,
		WageBase:           decimal.NewFromInt(b.dollars),
		SocialSecurityRate: decimal.New(124, -3),
		MedicareRate:       decimal.New(29, -3),
		Factor:             decimal.New(9235, -4),
		LeastEarnings:      decimal.NewFromInt(400),
		AdditionalRate:     decimal.New(9, -3),
		AdditionalFrom: Thresholds{
			Single:          decimal.NewFromInt(200000),
			Joint:           decimal.NewFromInt(250000),
			MarriedSeparate: decimal.NewFromInt(125000),
		},
		Source: fmt.Sprintf("wage base %d: %s; %s", b.year, b.source, rateTable),
	}
}
