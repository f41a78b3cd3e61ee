package workbook

import (
	"archive/zip"
	"bytes"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// sentinels is an invented deal whose private figures are numbers that nothing else is.
const sentinels = `
deal: Sentinel
purchase: {price: $100,000, closing: {title: $917}}
value: {after-repair value: $190,000, low: $171,337.73}
time: {lead-in: 2 weeks, renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation:
  contingency: 10%
  own labour rate: $417.37/hour
  lines:
    - {trade: tile, work: bath, materials: $900, own hours: 73.371}
    - {trade: roof, work: reroof, amount: $9,000}
  general: {permits: $400}
rooms:
  bath: {size: 12' x 4', fixed: {toilet: 1}, work: {paint bath walls: own hands, toilet: {by: hired, by the hour: yes}}}
loans:
  - {name: first loan, price share: 80%, renovation share: 90%, rate: 10%, own work at trade price: yes, draws: {retainage: 10%}}
selling: {commission: 5%}
tax: {set aside: 27.3179%}
rule of thumb: 71.3731%
walk away: 13.7739%
targets: {profit: $31,337.79, margin: 3.37117%, roi: 31.7317%}
cash: {available: $90,000, keep back: $9,733.31}
`

func answered(t testing.TB, text string) *answer.Answer {
	t.Helper()
	d, found := deal.Read("deal.yaml", []byte(text))
	require.NotNil(t, d, "%v", found)
	a, err := answer.Of(d, found)
	require.NoError(t, err)
	return a
}

// parts are the texts of all parts of a workbook.
func parts(t testing.TB, a *answer.Answer, how Options) map[string]string {
	t.Helper()
	var w bytes.Buffer
	require.NoError(t, Write(&w, a, how))
	z, err := zip.NewReader(bytes.NewReader(w.Bytes()), int64(w.Len()))
	require.NoError(t, err)
	out := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		require.NoError(t, err)
		text, err := io.ReadAll(r)
		require.NoError(t, err)
		out[f.Name] = string(text)
	}
	return out
}

var numbers = regexp.MustCompile(`[0-9][0-9.,]*(?:[eE][-+]?[0-9]+)?`)

// digits is a number by its digits alone, between 1 and 10: however it is written, as a
// share, as a percentage or with its thousands apart, they are the same.
func digits(x float64) float64 {
	if x = math.Abs(x); x == 0 {
		return 0
	}
	return x / math.Pow(10, math.Floor(math.Log10(x)))
}

// written reads a number with a point or a comma before its decimals.
func readings(token string) (out []float64) {
	token = strings.Trim(token, ".,")
	for _, text := range []string{strings.ReplaceAll(token, ",", ""), strings.ReplaceAll(strings.ReplaceAll(token, ".", ""), ",", ".")} {
		if x, err := strconv.ParseFloat(text, 64); err == nil {
			out = append(out, digits(x))
		}
	}
	return out
}

// private are all figures that a lender is not to see, of five digits and more: those of
// hidden lines, the offers, and the own wage once more, out of what it comes to.
func private(a *answer.Answer) map[string]float64 {
	b := &book{answer: a, model: a.Model, how: Options{For: Lender}}
	out, open := map[string]float64{}, map[float64]bool{}
	for _, c := range a.Model.Cells {
		if !c.Line.Monthly && !b.secret(c) {
			open[digits(near(a.Values.Of(c)))] = true
		}
	}
	keep := func(name string, x decimal.Decimal) {
		if d := digits(near(x)); len(strings.Trim(x.Coefficient().String(), "-0")) > 4 && !open[d] {
			out[name] = d
		}
	}
	for _, c := range a.Model.Cells {
		if !c.Line.Monthly && b.secret(c) {
			keep(c.Name(), a.Values.Of(c))
			keep(c.Name()+" in whole dollars", a.Values.Of(c).Round(0))
		}
	}
	keep("maximum offer", a.Offer.Price)
	keep("maximum offer at the low value", a.OfferLow.Price)
	for _, m := range a.Missed() {
		keep("missed by", m.Short)
	}
	return out
}

func TestLenderSeesNothingPrivate(t *testing.T) {
	a := answered(t, sentinels)
	secrets := private(a)
	for _, name := range []string{"target_profit", "target_margin", "target_roi", "low_value", "own_labour_rate", "tax_share", "rule_share", "walk_away_share", "cash_reserve",
		"profit_to_spare", "tax_set_aside", "rule_offer", "profit_after_own_hours", "maximum offer", "maximum offer at the low value"} {
		require.Contains(t, secrets, name)
	}
	leaks := func(how Options) (out []string) {
		for part, text := range parts(t, a, how) {
			for _, token := range numbers.FindAllString(text, -1) {
				for _, x := range readings(token) {
					for name, secret := range secrets {
						if math.Abs(x-secret) < 1e-9 {
							out = append(out, name+": "+token+" in "+part)
						}
					}
				}
			}
		}
		return out
	}
	require.Empty(t, leaks(Options{For: Lender}))
	require.Greater(t, len(leaks(Options{For: Owner})), 10, "the search finds them where they are")
}

// The names of what is private are not there either: in sheets, names, notes or rules.
func TestLenderSeesNoPrivateNames(t *testing.T) {
	a := answered(t, sentinels)
	doc, err := model.Standard()
	require.NoError(t, err)
	b := &book{answer: a, model: a.Model, how: Options{For: Lender}}
	open := map[string]bool{}
	for _, l := range doc.Lines {
		open[l.Name] = open[l.Name] || !b.hidden(l)
	}
	all := strings.ToLower(strings.Join(mapped(parts(t, a, Options{For: Lender})), "\n"))
	for _, l := range doc.Lines {
		if open[l.Name] || !strings.Contains(l.Name, "_") {
			continue
		}
		require.NotRegexp(t, `\b`+l.Name+`\b`, all)
		require.NotContains(t, all, strings.ReplaceAll(l.Name, "_", " "))
		require.NotContains(t, all, strings.ToLower(l.Meaning))
	}
	for _, words := range []string{"maximum offer", "walk away", "rule of thumb", "go above"} {
		require.NotContains(t, all, words)
	}
}

func mapped(m map[string]string) (out []string) {
	for _, s := range m {
		out = append(out, s)
	}
	return out
}
