package deal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// read reads a text that must be free of mistakes.
func read(t testing.TB, text string, sets ...deal.Set) *deal.Deal {
	d, found := deal.Read("a.yaml", []byte(text), sets...)
	require.NotNil(t, d, "%v", found)
	return d
}

// given is what the deal gives for "line", "fee label > line" or deeper, as
// number, word or line, with what was written.
func given(t testing.TB, d *deal.Deal, path string) string {
	m := d.Root
	parts := strings.Split(path, " > ")
	for _, label := range parts[:len(parts)-1] {
		var next *model.Member
		for _, c := range m.Children {
			if c.Label == label {
				next = c
			}
		}
		require.NotNil(t, next, "no %q in %s", label, path)
		m = next
	}
	v, ok := m.Given.Look(parts[len(parts)-1])
	if !ok {
		return "-"
	}
	require.NotEmpty(t, v.Text, path)
	require.Positive(t, v.Pos.Line, path)
	require.Positive(t, v.Pos.Col, path)
	require.Positive(t, v.Pos.Len, path)
	switch {
	case v.Refers != "":
		return v.Refers
	case v.Choice != "":
		return v.Choice
	}
	return v.Number.String()
}

// Each form feeds these lines; the numbers are read off the text by hand, days and
// weeks being 12/365 and 84/365 of a month.
func TestFormsFeedTheirLines(t *testing.T) {
	for _, c := range []struct {
		add  string
		want map[string]string
	}{
		{"rule of thumb: 72%", map[string]string{"rule_share": "0.72"}},
		{"tax withheld at sale: $1.2k", map[string]string{"tax_withheld": "1200"}},
		{"partner: {share: 40%, split: 50%, preferred_return: 8%}", map[string]string{"partner_share": "0.4", "partner_split": "0.5", "preferred_rate": "0.08"}},
		{"TARGETS: {Profit: 30,000, ROI: 1/2%}", map[string]string{"target_profit": "30000", "target_roi": "0.005"}},
		{"renovation: {spending: [$10k, $20,000, 5k], own labor rate: $45 an hour}", map[string]string{"curve": "stated", "month 2 of spending > amount": "20000", "own_labour_rate": "45"}},
		{"renovation: {spending: Front, contingency: 12%}", map[string]string{"curve": "front", "contingency_share": "0.12"}},
		{"renovation: {lines: [{trade: tile, work: bath, materials: $640, labor: $1,000, own hours: 40, hired rate: 55/hr}, {trade: roof, amount: $9,800}]}",
			map[string]string{"tile: bath > materials": "640", "tile: bath > labour": "1000", "tile: bath > own_hours": "40", "tile: bath > hired_rate": "55", "roof > lump": "9800"}},
		{"renovation: {general: {cleaning: $88/month, permits: $1,200, overhead: 5%}}", map[string]string{
			"cleaning > a_month": "88", "cleaning > during": "renovation", "permits > fixed": "1200", "permits > during": "-", "overhead > share": "0.05", "overhead > base": "works_cost"}},
		{"renovation: {general: {permits: 1.2%, building_permits: 1%, Building Permit: {slabs: {up to $50k: $300, above: 1%}}}}", map[string]string{
			"permits > base": "works_at_trade_price", "Building Permit > base": "works_at_trade_price", "building_permits > base": "works_at_trade_price"}},
		{"renovation: {general: {permits: {amount: 1%, of: works cost}}}", map[string]string{"permits > base": "works_cost"}},
		{"holding: {tax: $4,120/year, hoa: 365.50 a quarter, yard: $88/month during renovation}", map[string]string{
			"tax > a_year": "4120", "hoa > a_quarter": "365.5", "yard > a_month": "88", "yard > during": "renovation", "tax > during": "-"}},
		{"holding: {insurance: {amount: $1,900/year, premium paid ahead: 1 year}, bill: {amount: $2,400/year, paid ahead: 6 months}}", map[string]string{
			"insurance > a_year": "1900", "insurance > paid_ahead": "12", "insurance > kept_least": "-", "bill > paid_ahead": "6", "bill > kept_least": "0"}},
		{"selling: {agent: 2.5%, stamp: $0.70 per $100 of after-repair value, cap: {amount: 1.2%, at most: $2,500, at least: $100, credit: yes}}", map[string]string{
			"agent > share": "0.025", "agent > base": "sale_price", "agent > at_sale": "1", "stamp > unit_price": "0.7", "stamp > unit_size": "100", "stamp > base": "after_repair_value",
			"cap > most": "2500", "cap > least": "100", "cap > credit": "1"}},
		{"selling: {tax: {of: sale price, slabs: {below $250,000: 0.4%, below $300k: $2 per $500, rest: $1,200}}}", map[string]string{
			"tax > slabs > slab": "1", "tax > slabs > edge_in": "0", "tax > slabs > below $250,000 > upper": "250000", "tax > slabs > below $250,000 > lower": "-", "tax > slabs > below $300k > lower": "250000",
			"tax > slabs > below $300k > unit_price": "2", "tax > slabs > below $300k > unit_size": "500", "tax > slabs > rest > fixed": "1200", "tax > slabs > rest > lower": "300000", "tax > slabs > rest > upper": "-"}},
		{"selling: {tax: {tables: [{when: up to $350,000, brackets: {up to $100k: 0.1%, above $100,000: 0.2%}}, {when: above $350k up to $500k, amount: 1.1%}, {when: above $500k, amount: $5}]}}", map[string]string{
			"tax > table 1 > base_up_to": "350000", "tax > table 1 > base_over": "-", "tax > table 1 > base_edge_in": "1", "tax > table 1 > slab": "0", "tax > table 1 > above $100,000 > rate": "0.002",
			"tax > table 2 > base_over": "350000", "tax > table 2 > base_up_to": "500000", "tax > table 2 > slab": "1", "tax > table 2 > 1.1% > rate": "0.011", "tax > table 3 > $5 > fixed": "5"}},
		{"purchase: {date: 2026-03-02}\nselling: {tax: {tables: [{until: 2026-04-01, amount: 1%}, {from: 2026-04-01, until: 2027-03-02, amount: 2%}]}}", map[string]string{
			"tax > table 1 > until_day": "30", "tax > table 1 > from_day": "-", "tax > table 2 > from_day": "30", "tax > table 2 > until_day": "365"}},
		{"purchase: {auction premium: 5%, earnest deposit: $5,000, closing: {recording: 0.55%, x: {amount: 1%, of: all-in price}}, paid before closing: {camera: $240}}", map[string]string{
			"premium_share": "0.05", "earnest_deposit": "5000", "recording > base": "price", "x > base": "all_in_price", "camera > fixed": "240"}},
		{"purchase: {auction premium: {share: 5%, at least: $2,500}, deposits: {key: $300}, prorations: {taxes: $365.04 credit, dues: $80}}", map[string]string{
			"premium_least": "2500", "key > amount": "300", "key > credit": "-", "taxes > amount": "365.04", "taxes > credit": "1", "dues > credit": "0"}},
		{"time: {lead-in: 10 days, marketing: 6 weeks}", map[string]string{"lead_in": "0.328767123287671232876712328767123287671232877", "marketing": "1.380821917808219178082191780821917808219178082"}},
		{"loans: [{price share: 85%, exit fee: 1% of commitment, extension: {each: 3 months, fee: $900}, term: 1 year, points: 2 points, day count: actual/360, draws: {lag: 0, owner first: yes}}]", map[string]string{
			"loan > price_share": "0.85", "loan > exit_share": "0.01", "loan > exit_on": "commitment", "loan > extension_fixed": "900", "loan > extension_months": "3", "loan > term": "12",
			"loan > points_share": "0.02", "loan > actual_360": "1", "loan > lag": "0", "loan > owner_first": "1"}},
		{"loans: [{name: first, fixed amount: $180k, interest paid: at payoff, amortising: ~}]", nil},
		{"loans: [{name: first, fixed amount: $180k, exit fee: $750, interest paid: added-monthly, fees: {broker: 1% of loan at closing, doc: {amount: $5, finance charge: no}}}]", map[string]string{
			"first > fixed_amount": "180000", "first > exit_fixed": "750", "first > interest_paid": "added monthly", "first > broker > base": "loan_at_closing", "first > broker > share": "0.01", "first > doc > finance_charge": "0"}},
		{"purchase: {date: 2026-03-02}\ntax: {income rate: 22%, filing: joint, other wages: $40k}", map[string]string{
			"tax_method": "rates", "income_rate": "0.22", "other_wages": "40000", "wage_base": "184500", "additional_threshold": "250000", "medicare_rate": "0.029"}},
	} {
		if c.want == nil {
			_, found := deal.Read("a.yaml", []byte(merged(c.add)))
			require.True(t, found.HasErrors(), c.add)
			continue
		}
		d := read(t, merged(c.add))
		for path, want := range c.want {
			require.Equal(t, want, given(t, d, path), "%s in %s", path, c.add)
		}
	}
}

// merged adds groups to the least deal; purchase and time are filled up to it.
func merged(add string) string {
	base := minimal
	for _, line := range strings.Split(add, "\n") {
		switch {
		case strings.HasPrefix(line, "purchase: {"):
			base = strings.Replace(base, "purchase: {price: $200k, closing: {title: $1k}}", "purchase: {price: $200k, "+line[len("purchase: {"):], 1)
		case strings.HasPrefix(line, "time: {"):
			base = strings.Replace(base, "time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}", "time: {renovation: 3 months, "+line[len("time: {"):], 1)
		default:
			base += line + "\n"
		}
	}
	return base
}

func TestFactsBesideTheModel(t *testing.T) {
	d := read(t, deal.Starter("Birch"))
	require.Equal(t, []string{"profit_to_spare", "roi_to_spare", "cash_to_spare"}, d.Targets)
	require.Equal(t, []string{"roof", "kitchen", "tile", "electrical", "paint"}, d.Trades)
	require.Equal(t, "2026-03-02 2026-02-12", d.PurchaseDate.String()+" "+d.DepositRefundableUntil.String())
	require.Equal(t, 1962, d.YearBuilt)
	require.Equal(t, 1, d.Units)
	require.True(t, d.HasCash && d.Insured && d.VacantInsured && d.Permitted && !d.UtilitiesOff)
	require.Equal(t, "an invented example, no real house", d.Notes)
	require.Contains(t, d.Sources, "a.yaml")

	d = read(t, minimal)
	require.Empty(t, d.Targets)
	require.Equal(t, "a.yaml", d.Name)
	require.False(t, d.HasCash || d.Insured || d.Permitted)
}

// Every number and word that the starter gives points at just its text.
func TestPlacesHoldWhatTheySay(t *testing.T) {
	for _, text := range []string{deal.Starter("places"), string(worked(t, "capped")), "\ufeff" + strings.ReplaceAll(deal.Starter("é"), "\n", "\r\n")} {
		d := read(t, text)
		lines := strings.Split(strings.TrimPrefix(text, "\ufeff"), "\n")
		points := 0
		var walk func(*model.Member)
		walk = func(m *model.Member) {
			for _, g := range m.Given {
				line, v := g.Line, *g.Value
				at := []rune(lines[v.Pos.Line-1])[v.Pos.Col-1:]
				require.GreaterOrEqual(t, len(at), v.Pos.Len, line)
				if string(at[:v.Pos.Len]) == v.Text {
					points++
				}
			}
			for _, c := range m.Children {
				walk(c)
			}
		}
		walk(d.Root)
		require.Greater(t, points, 20)
	}
}

// A single loan needs no list, in the file and in a set.
func TestALoanMayStandByItself(t *testing.T) {
	for _, text := range []string{"loans: {price share: 80%, rate: 9%}\n", "loan: {price share: 80%, rate: 9%}\n", "loans: [{price share: 80%, rate: 9%}]\n"} {
		d := read(t, minimal+text, deal.Set{Path: "points", Value: "2%"})
		require.Equal(t, "0.8", given(t, d, "loan > price_share"), text)
		require.Equal(t, "0.02", given(t, d, "loan > points_share"), text)
	}
	d := read(t, minimal, deal.Set{Path: "loans", Value: "{price share: 80%, rate: 9%}"}, deal.Set{Path: "loans.1.rate", Value: "8%"})
	require.Equal(t, "0.08", given(t, d, "loan > rate"))
	_, found := deal.Read("a.yaml", []byte(minimal+"loans: {price share: .8, rats: 9%}\n"))
	require.Equal(t, []string{"bad-percent", "unknown-key"}, []string{found[0].Code, found[1].Code}, "what is wrong in it is told")
}

// A table may end where the totals that it is for do.
func TestBracketsThatCoverTheirTotalsAreNotDoubted(t *testing.T) {
	const tables = "selling: {excise: {tables: [{when: up to $250k, %s: {up to %s: 1%%}}, {when: above $250k, amount: 2%%}]}}\n"
	for _, way := range []string{"brackets", "slabs"} {
		for upTo, want := range map[string]bool{"$250k": false, "$200k": true} {
			_, found := deal.Read("a.yaml", fmt.Appendf([]byte(minimal), tables, way, upTo))
			open := slices.ContainsFunc(found, func(d diag.Diag) bool { return d.Code == way+"-open" })
			require.Equal(t, want, open, "%s up to %s", way, upTo)
		}
	}
}
