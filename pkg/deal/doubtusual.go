package deal

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// inThousands is a too small plain amount with the k that it probably lacks, or "".
func inThousands(k Kind, s span, x decimal.Decimal, accepts []limit) string {
	if k != Money || !x.IsPositive() || strings.Trim(s.text, "$0123456789.,") != "" {
		return ""
	}
	for _, l := range accepts {
		if !l.holds(x.Shift(3)) {
			return ""
		}
	}
	return s.text + "k"
}

// beyondUsual reports whether a number is told to be outside what is usual, by itself.
func beyondUsual(g *reading) bool {
	return slices.ContainsFunc(limits(g.field.Kind, g.field.Doubt), func(l limit) bool { return !l.holds(g.number) })
}

// usual doubts a number outside what is usual; it stays good.
func (r *reader) usual(f *Field, s span, x decimal.Decimal) bool {
	for _, l := range limits(f.Kind, f.Doubt) {
		if !l.holds(x) && !(l.least && x.IsZero()) { // nothing is spoken of elsewhere
			r.say(f.DoubtCode, s.at, "%s is %s; usual is %s", f.title(), diag.Quote(s.text), f.Doubt)("%s", usualHint(f, s, x, l))
		}
	}
	return true
}

// usualHint is what to do about a number that does not keep a limit of what is usual.
func usualHint(f *Field, s span, x decimal.Decimal, l limit) string {
	better := inThousands(f.Kind, s, x, limits(f.Kind, f.Doubt))
	if better == "" {
		better = largerUnit(f, s)
	}
	switch {
	case f.Line == "own_pace":
		return paceHint(x)
	case f.DoubtCode == "least-interest-long":
		return "check it with the lender's term sheet, for days in the place of months; it is used as it stands"
	case f.DoubtCode == "time-long" && l.least:
		return "check it, for days in the place of weeks or months; it is used as it stands"
	case f.DoubtCode == "time-long":
		return "check it, for a digit too many, or weeks or days in the place of months; it is used as it stands"
	case f.DoubtCode == "factor-unusual" && l.least:
		return fmt.Sprintf("it is what the book's prices are multiplied by: for %s more than they are write %s", s.text, quantity.FormatPercent(one.Add(x), 2))
	case strings.HasPrefix(f.Path, "labour.") || f.group() == "<work>": // which nobody but the owner says
		return "check it; it is used as it stands"
	case l.least && better != "" && f.Kind == Money:
		return "write " + better + " if thousands are meant; it is used as it stands"
	case l.least && better != "":
		return "write   " + f.Key() + ": " + better + "   if that is meant; it is used as it stands"
	}
	return "check it with whoever gave it to you; it is used as it stands"
}

// largerUnits are the units of what a container holds and may weigh that are mistaken for others.
// Never written to.
var largerUnits = map[Kind]string{Volume: "cu yd", Weight: "tons"}

// largerUnit is a volume or weight in the unit that was probably meant, or "".
func largerUnit(f *Field, s span) string {
	unit, known := largerUnits[f.Kind]
	end := strings.IndexFunc(s.text, unicode.IsLetter)
	if !known || end < 0 {
		return ""
	}
	better := strings.TrimSpace(s.text[:end]) + " " + unit
	x, err := number(f.Kind, better)
	if err != nil || slices.ContainsFunc(limits(f.Kind, f.Doubt), func(l limit) bool { return !l.holds(x) }) {
		return ""
	}
	return better
}
