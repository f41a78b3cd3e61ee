package answer

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// notSeen is the number of the word for a part of the house that was not seen.
var notSeen = decimal.NewFromInt(1)

// MadeNew are the parts of the house that were not seen and for which nothing is set aside, since
// work makes them new, each with that work: "wiring (rewire)"; and the dollars that else would be.
func (a *Answer) MadeNew() (parts []string, spared decimal.Decimal) {
	for _, c := range a.Model.Root.In("check") {
		if !a.Of(c, "made_new").IsZero() && a.Of(c, "seen").Equal(notSeen) {
			parts = append(parts, c.Label+" ("+strings.Join(a.makers(c), ", ")+")")
			spared = spared.Add(a.Of(c, "if_bad"))
		}
	}
	return parts, spared
}

// NewParts says for what nothing is set aside, or "" where that is so of none.
func (a *Answer) NewParts() string {
	parts, _ := a.MadeNew()
	return newParts(parts, ", ")
}

func newParts(said []string, between string) string {
	if len(said) == 0 {
		return ""
	}
	return "Nothing is set aside for what work makes new: " + strings.Join(said, between) + "."
}

// makers are the names of the work that makes a part of the house new.
func (a *Answer) makers(part *model.Member) (out []string) {
	for _, x := range part.In("renewal") {
		if a.Of(x, "renewed").IsPositive() && !slices.Contains(out, x.Parent.Label) {
			out = append(out, x.Parent.Label)
		}
	}
	return out
}

// NewPartsOf says for what nothing is set aside under some of several scopes, or "" where that
// is so of none.
func NewPartsOf(all []Column) string {
	var said []string
	for _, c := range all {
		if made, _ := c.MadeNew(); len(made) > 0 {
			said = append(said, strings.Join(made, ", ")+", in "+c.Name)
		}
	}
	return newParts(said, "; ")
}
