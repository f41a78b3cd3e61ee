package published

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// A levy is a tax or fee schedule as an owner would write it down.
type levy struct {
	fees map[string]string // the charges, by the name of the figure they come to
	sums map[string][]string
	base string // what they are charged on, if not the price
}

// levies say the rules of testdata/published/transfer-tax.json in deal files.
var levies = map[string]levy{
	"XFER-WA": {
		fees: map[string]string{
			"state": `{tables: [
        {until: 2023-01-01, brackets: {up to $500000: 1.1%, up to $1500000: 1.28%, up to $3m: 2.75%, above: 3%}},
        {from: 2023-01-01, brackets: {up to $525000: 1.1%, up to $1525000: 1.28%, up to $3025000: 2.75%, above: 3%}}]}`,
			"local": "0.5%",
		},
		sums: map[string][]string{"with_local_0_5": {"state", "local"}},
	},
	"XFER-PHL": {
		fees: map[string]string{
			"city":  "{tables: [{until: 2025-07-01, amount: 3.278%}, {from: 2025-07-01, amount: 3.578%}]}",
			"state": "1%",
		},
		sums: map[string][]string{"total": {"city", "state"}},
	},
	"XFER-NY": {fees: map[string]string{
		"transfer": "$2 per $500 or part",
		"mansion":  "{slabs: {below $1m: 0%, above: 1%}}",
	}},
	"XFER-NYC": {
		fees: map[string]string{
			"state": "{slabs: {below $3m: 0.4%, above: 0.65%}}",
			"city":  "{slabs: {up to $500000: 1%, above: 1.425%}}",
			"buyer": `{slabs: {below $1m: 0%, below $2m: 1%, below $3m: 1.25%, below $5m: 1.5%, below $10m: 2.25%,
        below $15m: 3.25%, below $20m: 3.5%, below $25m: 3.75%, above: 3.9%}}`,
		},
		sums: map[string][]string{"total": {"state", "city", "buyer"}},
	},
	"XFER-FL": {fees: map[string]string{
		"tax":  "$0.70 per $100 or part",
		"note": "{amount: $0.35 per $100, at most: $2450}", // the stamp of an unsecured note
	}},
	"XFER-NJ": {fees: map[string]string{"fee": `
      tables:
        - when: up to $350,000
          brackets: {up to $150000: $2 per $500, up to $200000: $3.35 per $500, up to $350000: $3.90 per $500}
        - when: above $350,000
          brackets: {up to $150000: $2.90 per $500, up to $200000: $4.25 per $500, up to $550000: $4.80 per $500,
            up to $850000: $5.30 per $500, up to $1m: $5.80 per $500, above: $6.05 per $500}`}},
	"XFER-NJ2": {fees: map[string]string{"fee": `{tables: [
        {until: 2025-07-10, amount: 0%},
        {from: 2025-07-10, slabs: {up to $1m: 0%, up to $2m: 1%, up to $2.5m: 2%, up to $3m: 2.5%, up to $3.5m: 3%, above: 3.5%}}]}`}},
	"XFER-PA": {
		fees: map[string]string{"state": "1%", "local": "1%", "pittsburgh": "3%"},
		sums: map[string][]string{"total": {"state", "local"}, "total_pittsburgh": {"state", "pittsburgh"}},
	},
	"XFER-TX": {fees: map[string]string{"tax": "0%"}},
	"XFER-OTHER": {fees: map[string]string{
		"state_tax":  "{brackets: {up to $800000: 0.75%, above: 1.25%}}", // Connecticut
		"county_tax": "$0.55 per $500",                                   // California
	}},
	"K203-7": {base: "works cost", fees: map[string]string{
		"fee": "{of: works cost, slabs: {up to $50000: $1000, up to $85000: $1200, up to $140000: $1400, above: 1%}, at most: $2000}",
	}},
}

type taxCase struct {
	origin
	Tests []map[string]any
}

// given are the keys of a vector that are no amounts charged.
var given = []string{"price", "repairs", "date", "origin", "units"}

func TestTransferTaxes(t *testing.T) {
	cases := published[taxCase](t, "transfer-tax.json")
	var without []string
	for id, c := range cases {
		if len(c.Tests) == 0 {
			without = append(without, id)
			continue
		}
		for _, v := range c.Tests {
			l, ok := levies[id]
			require.True(t, ok, id)
			on, day := amount(v, "price", "repairs"), text(v["date"])
			name := fmt.Sprintf("%s, %s on $%s", c.name(), text(v["origin"]), on)
			t.Run(name, func(t *testing.T) { l.test(t, on, day, figures(v), amount(v, "units")) })
		}
	}
	slices.Sort(without)
	require.Equal(t, []string{"XFER-PA", "XFER-TX", "XFER-WA2"}, without, "no vectors for these; Pennsylvania and Texas stand among the edges")
}

func figures(v map[string]any) map[string]string {
	out := map[string]string{}
	for key, x := range v {
		if n, ok := x.(json.Number); ok && !slices.Contains(given, key) {
			out[key] = n.String()
		}
	}
	return out
}

func amount(v map[string]any, keys ...string) string {
	for _, k := range keys {
		if n, ok := v[k].(json.Number); ok {
			return n.String()
		}
	}
	return ""
}

func text(v any) string { s, _ := v.(string); return s }

// Right at the edges and on the days at which rates change. Every amount is
// computed here by hand from the published rule.
func TestTransferTaxesAtTheEdges(t *testing.T) {
	for _, c := range []struct{ id, on, day, figure, want string }{
		{"XFER-WA", "525000", "", "state", "5775"},           // 1.1%
		{"XFER-WA", "525001", "", "state", "5775.01"},        // and 1.28% of the last dollar
		{"XFER-WA", "600000", "2022-12-31", "state", "6780"}, // 500,000 at 1.1%, 100,000 at 1.28%
		{"XFER-WA", "600000", "2023-01-01", "state", "6735"}, // 525,000 at 1.1%, 75,000 at 1.28%
		{"XFER-PHL", "500000", "2025-06-30", "total", "21390"},
		{"XFER-PHL", "500000", "2025-07-02", "total", "22890"},
		{"XFER-NY", "999999.99", "", "mansion", "0"},
		{"XFER-NY", "999999.99", "", "transfer", "4000"}, // 2,000 units
		{"XFER-NY", "1000000.01", "", "transfer", "4002"},
		{"XFER-NY", "1000000.01", "", "mansion", "10000"},
		{"XFER-NYC", "500000", "", "city", "5000"},
		{"XFER-NYC", "500001", "", "city", "7125.01"}, // 7,125.01425
		{"XFER-NYC", "999999.99", "", "buyer", "0"},
		{"XFER-NYC", "1000000", "", "buyer", "10000"},
		{"XFER-NYC", "1999999.99", "", "buyer", "20000"}, // 19,999.9999
		{"XFER-NYC", "3000000", "", "total", "107250"},   // 0.65%, 1.425% and 1.5%
		{"XFER-NYC", "2999999.99", "", "state", "12000"},
		{"XFER-NYC", "25000000", "", "buyer", "975000"},
		{"XFER-FL", "40675", "", "note", "142.45"}, // 407 units
		{"XFER-FL", "700000", "", "note", "2450"},
		{"XFER-FL", "700001", "", "note", "2450"},
		{"XFER-NJ", "350000", "", "fee", "2105"},       // 300 x 2.00 + 100 x 3.35 + 300 x 3.90
		{"XFER-NJ", "350000.01", "", "fee", "2739.80"}, // 300 x 2.90 + 100 x 4.25 + 301 x 4.80
		{"XFER-NJ2", "1000000", "", "fee", "0"},
		{"XFER-NJ2", "3500000", "", "fee", "105000"},
		{"XFER-NJ2", "3500001", "", "fee", "122500.04"},   // 122,500.035
		{"XFER-NJ2", "2900000", "2025-07-09", "fee", "0"}, // the buyer's 1% until then is another charge
		{"XFER-NJ2", "2900000", "2025-07-10", "fee", "72500"},
		{"XFER-PA", "212345.67", "", "total", "4246.92"}, // each layer 2,123.4567, in cents
		{"XFER-PA", "250000", "", "total_pittsburgh", "10000"},
		{"XFER-TX", "250000", "", "tax", "0"},
		{"XFER-OTHER", "800000", "", "state_tax", "6000"},
		{"XFER-OTHER", "123500", "", "county_tax", "135.85"}, // 247 units
		{"XFER-OTHER", "123501", "", "county_tax", "136.40"},
		{"K203-7", "85000", "", "fee", "1200"},
		{"K203-7", "85001", "", "fee", "1400"},
		{"K203-7", "140001", "", "fee", "1400.01"},
		{"K203-7", "199999", "", "fee", "1999.99"},
		{"K203-7", "200001", "", "fee", "2000"},
		{"K203-7", "450000", "", "fee", "2000"},
	} {
		t.Run(strings.Join([]string{c.id, c.on, c.day, c.figure}, " "), func(t *testing.T) {
			levies[c.id].test(t, c.on, c.day, map[string]string{c.figure: c.want}, "")
		})
	}
}

// test puts the charges on a purchase and on a sale, and compares every figure.
func (l levy) test(t *testing.T, on, day string, want map[string]string, units string) {
	require.NotEmpty(t, want)
	deals := map[string]string{"purchase_fee": l.buying(t, on, day), "selling_fee": l.selling(t, on, day)}
	if l.base != "" {
		deals = map[string]string{"purchase_fee": l.onWorks(on), "loan_fee": l.onWorksOfLoan(on)}
	}
	for kind, file := range deals {
		b := read(t, file)
		of := b.Root
		if kind == "loan_fee" {
			of = b.loan()
		}
		for figure, x := range want {
			parts := l.sums[figure]
			if parts == nil {
				parts = []string{figure}
			}
			sum := dec("0")
			for _, p := range parts {
				sum = sum.Add(b.of(b.fee(of, kind, p), "amount"))
			}
			cents(t, x, sum, "%s of the %s", figure, kind)
		}
		if units != "" {
			f := b.fee(of, kind, "tax")
			cents(t, dec(units).Mul(b.of(f, "unit_price")).String(), b.of(f, "by_unit"), "%s units", units)
		}
	}
}

func (l levy) list() string {
	var out strings.Builder
	for _, name := range slices.Sorted(maps.Keys(l.fees)) {
		fmt.Fprintf(&out, "    %s: %s\n", name, l.fees[name])
	}
	return out.String()
}

// today is a day on which the newest rates of every rule are in force.
const today = "2026-03-02"

func (l levy) buying(t *testing.T, price, day string) string {
	if day == "" {
		day = today
	}
	return fmt.Sprintf(`
purchase:
  price: $%s
  date: %s
  closing:
%svalue: {after-repair value: $30m}
time: {marketing: 6 months}
`, price, day, l.list())
}

// saleDays is a hold of six months in days: 182.5, rounded down.
const saleDays = 182

func (l levy) selling(t *testing.T, price, day string) string {
	bought := today
	if day != "" {
		d, err := time.Parse(time.DateOnly, day)
		require.NoError(t, err)
		bought = d.AddDate(0, 0, -saleDays).Format(time.DateOnly)
	}
	return fmt.Sprintf(`
purchase: {price: $1000, date: %s}
value: {after-repair value: $%s}
time: {marketing: 6 months}
selling:
%s`, bought, price, l.list())
}

func (l levy) onWorks(repairs string) string {
	return fmt.Sprintf(`
purchase:
  price: $100,000
  closing:
%svalue: {after-repair value: $900k}
time: {renovation: 6 months}
renovation: {lines: [{trade: all, work: all, amount: $%s}]}
`, l.list(), repairs)
}

func (l levy) onWorksOfLoan(repairs string) string {
	return fmt.Sprintf(`
purchase: {price: $100000}
value: {after-repair value: $900k}
time: {renovation: 6 months}
renovation: {lines: [{trade: all, work: all, amount: $%s}]}
loans:
- price share: 80%%
  rate: 7%%
  fees:
%s`, repairs, l.list())
}
