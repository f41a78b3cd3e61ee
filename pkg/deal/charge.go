package deal

import (
	"errors"
	"regexp"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// A form is how a charge is written.
type form int

const (
	fixed form = iota + 1
	share
	byStep
	byTime
)

// A charge is an amount in one of its forms.
type charge struct {
	span
	form form
	x    decimal.Decimal // dollars, a fraction, or dollars for each step or period
	unit decimal.Decimal // dollars of a step
	per  quantity.Period
}

const amountSigns = "$0123456789.,"

// readCharge reads an amount as $1,850, 0.55%, $2 per $500 or $88/month.
func readCharge(s span) (charge, error) {
	c := charge{span: s}
	var errs [4]error
	if c.x, errs[0] = quantity.ParseMoney(s.text); errs[0] == nil {
		c.form = fixed
		return c, nil
	}
	if c.x, errs[1] = quantity.ParsePercent(s.text); errs[1] == nil {
		c.form = share
		return c, nil
	}
	rate, err := quantity.ParseRate(s.text)
	if errs[2] = err; err == nil {
		c.form, c.x, c.per = byTime, rate.Amount, rate.Per
		return c, nil
	}
	if _, err := quantity.ParseRate("$1" + strings.TrimLeft(s.text, amountSigns)); err == nil { // by time, but for its amount
		return c, errs[2]
	}
	step, err := quantity.ParseStep(s.text)
	if strings.Trim(s.text, amountSigns) != "" { // a number alone is no step that lacks its end
		errs[3] = err
	}
	if err == nil {
		c.form, c.x, c.unit = byStep, step.Each, step.Unit
		return c, nil
	}
	return c, furthest(s.text, errs[:])
}

// furthest is the refusal of the form that got on best, which is the one meant. The
// last form, dollars for each step, is meant where they got on equally far, to an amount.
func furthest(text string, errs []error) error {
	best, far := errs[0], -1
	for i, err := range errs {
		var q *quantity.Error
		if !errors.As(err, &q) {
			continue
		}
		amount := q.At > 0 && q.At < len(text) && strings.ContainsRune("$0123456789", rune(text[q.At]))
		if q.At > far || q.At == far && amount && i == len(errs)-1 {
			best, far = err, q.At
		}
	}
	return best
}

// bare reports a small number without $ or %, which could be either: 6 is a
// commission of 6% as well as six dollars.
func (c charge) bare() bool {
	return c.form == fixed && c.x.IsPositive() && c.x.LessThan(decimal.NewFromInt(100)) && strings.Trim(c.text, "0123456789.,") == ""
}

// formWanted are the wants of a single form, in place of which all forms are named.
var formWanted = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(an amount in dollars|a percentage|dollars (for|and cents)|a percent sign)`)
})

// shareByTime is a percentage for a month or a year, which is read only of a loan's interest.
var shareByTime = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)%\s*(/|per |an? )\s*(month|quarter|year|mo|yr)\b`)
})

const wantCharge = "dollars, a percentage, $2 per $500, or dollars a month, quarter or year"

const wantRate = "a percentage, dollars, or dollars per $500"

// charge reads an amount and says what is wrong with it, and what is wanted.
func (r *reader) charge(name string, s span, want string) (charge, bool) {
	c, err := readCharge(s)
	switch {
	case err != nil:
		r.badCharge(name, s, err, want)
		return c, false
	case c.bare():
		tell := r.say("share-or-dollars", s.at, "%s is %s, which could be dollars or a percentage", name, diag.Quote(s.text))
		if c.x.LessThan(one) { // 0.05 may be five hundredths of the whole
			tell("write $%s, %s%% or %s", s.text, s.text, quantity.FormatPercent(c.x, 4))
			return c, false
		}
		tell("write $%s or %s%%", s.text, s.text)
		return c, false
	case c.x.IsNegative():
		r.say("below-zero", s.at, "%s is %s, which is below zero", name, diag.Quote(s.text))("write a charge as a positive amount; for money that comes back add   credit: yes")
		return c, false
	case c.form == share && c.x.GreaterThan(decimal.NewFromInt(1)):
		r.say("too-large", s.at, "%s is %s, more than the whole it is a share of", name, diag.Quote(s.text))("accepted is at most 100%%; e.g. %s: 2.5%%", name)
		return c, false
	case c.form == byTime && (c.per == quantity.Day || c.per == quantity.Week):
		same := quantity.FormatMoney(c.rate().PerMonth())
		r.say("charge-by-week", s.at, "%s is charged by the %s", name, c.per)("write it by the month: %s/month is the same, a month being 365/12 days", same)
		return c, false
	}
	return c, r.within(Money, name, kindRanges[Money], "$1,850", s, c.x)
}

func (c charge) rate() quantity.Rate { return quantity.Rate{Amount: c.x, Per: c.per} }

func (r *reader) badCharge(name string, s span, err error, want string) {
	if s.text == "" {
		r.say("bad-charge", s.at, "%s has no amount", name)("write %s", want)
		return
	}
	if _, no := quantity.ParseYesNo(s.text); no == nil && InSet(s.at) {
		for f := range rows() {
			if f.Kind == YesNo && f.Key() == plainKey(name) && !strings.ContainsAny(f.Path, "[<") {
				r.say("bad-charge", s.at, "%s is %s, and no charge", name, diag.Quote(s.text))("did you mean   --set '%s=%s'   instead? %s is a charge here, in dollars", f.Path, s.text, name)
				return
			}
		}
	}
	if i := endsIn(s.text, " credit"); i > 0 {
		want = "{amount: " + strings.TrimSpace(s.text[:i]) + ", credit: yes} for money that comes in"
	}
	var q *quantity.Error
	if errors.As(err, &q) {
		if !formWanted().MatchString(q.Want) {
			want = q.Want // how this number would be written
		}
		if want == wantCharge && shareByTime().MatchString(s.text) {
			want = "dollars for a charge by time, e.g. $2,550/year; a percentage is taken once"
		}
		q = &quantity.Error{Found: q.Found, Why: q.Why, At: q.At, Want: want}
		r.unread(name, s, "bad-charge", q, "$1,850")
	}
}
