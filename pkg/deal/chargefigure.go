package deal

import (
	"cmp"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
)

// chargeFigure reads another amount of a charge, in the charge's own form. What the charge
// is of and its phase may stand behind it, and stay as they are in the file.
func (r *reader) chargeFigure(out *Range, title string, text span, to *decimal.Decimal) bool {
	amount, ok := r.sameCharge(out, title, text)
	if !ok {
		return false
	}
	if bare, err := readCharge(amount); err == nil && bare.bare() && out.sign != "" {
		x, or := bare.x, ""
		if out.form.form == share {
			x = x.Shift(-2)
			or = orOfOne(out.sign, x)
		}
		does := map[string]string{"+": "adds that to", "-": "takes that off"}[out.sign]
		r.say("share-or-dollars", amount.at, "%s is %s, which has no unit", title, diag.Quote(out.sign+amount.text))("write   %s%s   , which %s the plan's%s", out.sign, Input{Kind: out.Kind, per: out.per}.Says(x), does, or)
		return false
	}
	c, ok := r.charge(title, amount, "it as the charge is written, e.g. "+out.form.text)
	if n := len(r.diags); !ok && n > 0 && r.diags[n-1].Code == "charge-by-week" {
		r.diags[n-1].Hint = strings.Replace(r.diags[n-1].Hint, "month: ", "month: "+out.sign, 1)
	}
	if ok && (c.form != out.form.form || c.per != out.form.per || !c.unit.Equal(out.form.unit)) {
		example := out.form.x
		if c.form == fixed && out.form.form != share {
			example = c.x
		}
		r.say("range-form", text.at, "%s is %s, and the charge is %s", title, diag.Quote(text.text), diag.Quote(out.form.text))("write both in the same form, e.g. %s%s", out.sign, Input{Kind: out.Kind, per: out.per}.Says(example))
		return false
	}
	*to = c.x
	return ok
}

// sameCharge takes the phase and the base off an amount, and refuses others than the charge's.
func (r *reader) sameCharge(out *Range, title string, text span) (span, bool) {
	amount, of := text, out.Member.Given.Of
	if i := lastWord(amount.text, " during "); i >= 0 {
		phase := strings.TrimSpace(amount.text[i+len(" during "):])
		choices := fieldNamed("<fee>", "during").Choices
		amount = amount.cut(0, i)
		if own := cmp.Or(of("during").Choice, choices[0]); plainKey(phase) != plainKey(own) {
			what := "the phase"
			if !slices.ContainsFunc(choices, func(c string) bool { return plainKey(c) == plainKey(phase) }) {
				what = diag.Quote(phase) + " is no phase of it, which"
			}
			r.say("range-form", text.at, "%s is %s, and the charge runs during %s", title, diag.Quote(out.sign+text.text), phaseWords(own))(
				"%s stays as in the file: write the amount alone, %s", what, out.sign+amount.text)
			return amount, false
		}
	}
	if i, own := lastWord(amount.text, " of "), of("base"); i >= 0 && own.Refers != "" {
		b := baseNamed(amount.text[i+len(" of "):])
		amount = amount.cut(0, i)
		if b == nil || b.line != own.Refers {
			r.say("range-form", text.at, "%s is %s, and the charge is a share of the %s", title, diag.Quote(out.sign+text.text), own.Text)(
				"what it is of stays as in the file: write the share alone, %s", out.sign+amount.text)
			return amount, false
		}
	}
	return amount, true
}

// phaseWords are a phase in a sentence.
func phaseWords(phase string) string {
	switch phase {
	case "hold":
		return "the whole hold"
	}
	return phase
}
