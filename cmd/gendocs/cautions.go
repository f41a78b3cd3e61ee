package main

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/caution"
	"ledgerboard/pkg/quantity"
)

const cautionsIntro = `# The cautions

A bid ends with the cautions that fit its house; ` + "`ledgerboard bid FILE --cautions`" + `
writes them in full. Here are all of them, the most important first, with what
each rests on. Words in braces are filled in from the deal. Where a fact is not
known, the careful reading is taken. They inform and do not advise, and do not
replace local codes, a lender, a tax adviser or a licensed trade.
`

// cautionsPage lists every caution with its source, then the dated figures.
func cautionsPage(string) (string, error) {
	var b strings.Builder
	b.WriteString(cautionsIntro)
	for _, c := range caution.Catalogue() {
		fmt.Fprintf(&b, "\n## %s\n\n**%s%s.** %s\n\nSource: %s\n", c.ID, strings.ToUpper(c.Title[:1]), c.Title[1:], c.Text, c.Source)
	}
	b.WriteString("\n# The customary contingency\n\n")
	for _, words := range caution.Customary() {
		fmt.Fprintf(&b, "- %s\n", words)
	}
	share, source := caution.SuggestedContingency(0, true)
	fmt.Fprintf(&b, "\nFor a house of unknown age with its utilities off that makes %s. Source: %s\n", quantity.FormatPercent(share, 1), source)
	figures(&b)
	return b.String(), nil
}

// figures lists the self-employment tax figures of every year known.
func figures(b *strings.Builder) {
	b.WriteString("\n# Figures for the tax set-aside by rates\n\n| year | wage base | source |\n|---|---|---|\n")
	var last caution.Figures
	var rates string // the source that all years share
	for year := firstYear(); ; year++ {
		f, _ := caution.SelfEmployment(year)
		if f.AfterLast {
			break
		}
		last = f
		_, wage, _ := strings.Cut(f.Source, ": ")
		wage, rates, _ = strings.Cut(wage, "; ")
		fmt.Fprintf(b, "| %d | %s | %s |\n", f.Year, quantity.FormatDollars(f.WageBase), cell(wage))
	}
	fmt.Fprintf(b, "\nIn every year: %s of the profit counts as net earnings; social security %s up to the wage base, Medicare %s; nothing is due under %s of net earnings. "+
		"Additional Medicare tax %s on earnings above %s (single), %s (joint), %s (married, filing separately). Source: %s\n",
		quantity.FormatPercent(last.Factor, 2), quantity.FormatPercent(last.SocialSecurityRate, 1), quantity.FormatPercent(last.MedicareRate, 1),
		quantity.FormatDollars(last.LeastEarnings), quantity.FormatPercent(last.AdditionalRate, 1),
		quantity.FormatDollars(last.AdditionalFrom.Single), quantity.FormatDollars(last.AdditionalFrom.Joint), quantity.FormatDollars(last.AdditionalFrom.MarriedSeparate), rates)
}

// firstYear is the first year with published figures in the table.
func firstYear() int {
	for year := 1900; ; year++ {
		if _, known := caution.SelfEmployment(year); known {
			return year
		}
	}
}
