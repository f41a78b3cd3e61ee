package caution

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

const dayForm = "2006-01-02"

// words fills the places of the texts from the facts of the house.
func words(h House) *strings.Replacer {
	days, _ := resaleDays(h)
	suggested, _ := SuggestedContingency(h.YearBuilt, h.UtilitiesOff)
	return strings.NewReplacer(
		"{house}", builtWords(h),
		"{age}", ageWords(h),
		"{own-gas}", some(ownGas(h)),
		"{own-wiring}", some(ownWiring(h)),
		"{own-structure}", some(ownStructure(h)),
		"{own-height}", some(ownHeight(h)),
		"{licensed}", list(licensed(h)),
		"{permits}", list(permits(h)),
		"{minor}", list(minor(h)),
		"{days}", strconv.Itoa(days),
		"{first}", firstDay(h),
		"{over}", overWords(days),
		"{share}", percent(h.ContingencyShare),
		"{suggested}", percent(suggested),
	)
}

func builtWords(h House) string {
	if !yearKnown(h) {
		return "Year built unknown"
	}
	return "Built in " + strconv.Itoa(h.YearBuilt)
}

func ageWords(h House) string {
	age := "a house of this age"
	if !yearKnown(h) {
		age = "a house of unknown age"
	}
	if h.UtilitiesOff {
		age += ", utilities off"
	}
	return age
}

// firstDay names day 91, with its date once the purchase closing is known.
func firstDay(h House) string {
	if h.Bought.IsZero() {
		return "day 91"
	}
	return "day 91 (" + FirstFHAContract(h.Bought).Format(dayForm) + ")"
}

// overWords is the share over the price paid from which the higher-priced
// mortgage rule asks for a second appraisal.
func overWords(days int) string {
	if fhaWindow(days) == Ineligible {
		return "10%"
	}
	return "20%"
}

// percent cuts a share to a tenth of a percent, so that a share under a
// threshold is never printed as the threshold.
func percent(share decimal.Decimal) string {
	return share.Shift(2).Truncate(1).String() + "%"
}

// some names the first of several and counts the others.
func some(names []string) string {
	const named = 1
	switch n := len(names) - named; {
	case n <= 0:
		return strings.Join(names, "")
	case n == 1:
		return names[0] + " and one more"
	default:
		return names[0] + " and " + strconv.Itoa(n) + " more"
	}
}

// list joins words as "a, b and c".
func list(kinds []kind) string {
	var b strings.Builder
	for i, k := range kinds {
		switch {
		case i == 0:
		case i == len(kinds)-1:
			b.WriteString(" and ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(string(k))
	}
	return b.String()
}
