package deal_test

import (
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// A change to the starter file, which is read without a doubt, and all the codes
// that come of it. With old "" the new text is added at the end; with "=" it is
// the whole file; with "--set" the new text is a set, and with a set behind that the
// file that it is for.
type slip struct{ codes, old, new string }

func (s slip) text() []byte {
	base := deal.Starter("slip")
	switch s.old {
	case "":
		return []byte(base + s.new + "\n")
	case "=":
		return []byte(s.new)
	}
	if strings.HasPrefix(s.old, "--set ") {
		return []byte(s.new)
	}
	return []byte(strings.Replace(base, s.old, s.new, 1))
}

// where the starter has what the slips change.
const (
	price     = "price: $212,500"
	fees      = "    underwriting: $1,495"
	notes     = "notes: an invented example, no real house"
	loanRate  = "rate: 11.25%"
	roof      = "{trade: roof, work: new shingles, amount: $9800}"
	extension = "extension: {each: 3 months, fee: 0.5%}"
	transfer  = "transfer tax: {slabs: {up to $250k: 0.5%, above: 0.75%}}"
	agents    = "listing agent: 2.5%       # shares are of the sale price\n  buyer's agent: 2.5%"
	settle    = "settlement: $1,200"
	yard      = "yard: $88/month during marketing"
	reserve   = "renovation share: 90%"
	partner   = "partner: {share: 40%}"
)

var slips = []slip{
	{"file-empty", "=", "# nothing\n"},
	{"file-too-large", "=", "notes: " + strings.Repeat("x", 1<<20)},
	{"file-not-utf8", "=", "notes: caf\xe9\n"},
	{"file-not-utf8", "=", "\xff\xfen\x00"},
	{"file-not-utf8", "=", "PK\x03\x04\x14"},
	{"file-not-utf8", "=", "%PDF-1.7"},
	{"odd-character", notes, "notes: a\x07b"},
	{"odd-character", notes, "notes: a\u200eb"},
	{"odd-character", notes, `notes: "a\e[31mb"`},
	{"odd-character", notes, `"a\x9bb": c`},
	{"odd-character", roof, `{trade: roof, work: "new \u202e shingles", amount: $9800}`},
	{"odd-character", "--set", "deal=a\x1b[31mb"},
	{"odd-character", "--set", "price\x1b=$200k"},
	{"yaml-syntax", notes, "notes: seen: once"},
	{"yaml-syntax", notes, "notes: @home"},
	{"yaml-syntax", notes, "notes: [a, b"},
	{"yaml-syntax", notes, `notes: "a \q"`},
	{"tab-indent", "  " + price, "\t" + price},
	{"more-documents", "", "---\ndeal: b"},
	{"yaml-anchor", price, "price: &p $212,500"},
	{"yaml-anchor yaml-anchor", notes, "notes: &n text\ntax withheld at sale: *n"},
	{"yaml-merge", notes, "<<: {deal: b}"},
	{"yaml-tag", price, "price: !!int 212500"},
	{"want-value nested-too-deep", notes, "notes: " + strings.Repeat("[", 20) + strings.Repeat("]", 20)},
	{"too-many", notes, "notes: [" + strings.Repeat("a, ", 2001) + "a]"},
	{"too-many", "  - name: first loan", strings.Repeat("  - {fixed amount: $1, rate: 5%, interest on: balance, term: 1 year}\n", 10) + "  - name: first loan"},
	{"key-not-text", notes, "? [a, b]\n: c"},
	{"duplicate-key", notes, notes + "\nDeal: again"},
	{"duplicate-key", notes, notes + "\nname: again"},
	{"not-a-deal", "=", "- a\n- b\n"},
	{"comma-in-list comma-in-list", "contingency: 15%", "contingency: 15%\n  spending: [10,000, 20,000]"},

	{"unknown-key", price, "price: $212,500\n  prise: 5"},
	{"unknown-key", "holding:", "items: {tile floor: {hours: 0.2 per sq ft}}\nholding:"},
	{"unknown-key", "holding:", "price book: mine.yaml\nholding:"},
	{"unknown-key", price, "price: $212,500\n  points: 2%"},
	{"unknown-key", price, "price: $212,500\n  xylophone: 5"},
	{"missing-value", price, "price:"},
	{"missing-value", settle, "settlement: ~"},
	{"want-value", price, "price: [1, 2]"},
	{"want-value", settle, "settlement: [$5]"},
	{"want-group", roof, "roof $9,800"},
	{"want-group", "targets: {profit: $30k, roi: 25%}", "targets: $30k"},
	{"want-list", "=", minimal + "loans: {bank: {rate: 9%}}\n"},
	{"bad-money", price, "price: about $212,500"},
	{"bad-money", price, "price: $05k"},
	{"bad-money", "--set price=05k", minimal},
	{"bad-charge", settle, "settlement: 0900"},
	{"bad-percent", loanRate, "rate: 0.1125"},
	{"bad-duration", "term: 12 months", "term: 12"},
	{"bad-date", "date: 2026-03-02", "date: 14/5/2026"},
	{"bad-number", "units: 1", "units: one"},
	{"bad-hours", "own hours: 60", "own hours: 2 days"},
	{"bad-hour-rate", "own labour rate: $45/hour", "own labour rate: $45/day"},
	{"bad-yes-no", "utilities: on", "utilities: maybe"},
	{"bad-choice", "interest on: balance", "interest on: balanse"},
	{"below-zero", "targets: {profit: $30k", "targets: {profit: -$30k"},
	{"below-zero", settle, "settlement: -$5"},
	{"zero", price, "price: $0"},
	{"zero", "term: 12 months", "term: 0"},
	{"too-small", "year built: 1962", "year built: 62"},
	{"too-large", loanRate, "rate: 1200%"},
	{"too-large", "price share: 85%", "price share: 120%"},
	{"too-large", settle, "settlement: 120%"},
	{"too-large", "expected discount: 2%", "expected discount: 100%"},
	{"too-large", "", "partner: {share: 100%}"},
	{"not-whole", "units: 1", "units: 1.5"},
	{"not-whole-months", "lag: 1 month", "lag: 2 weeks"},

	{"bad-charge", settle, "settlement: some"},
	{"bad-charge", extension, "extension: {each: 3 months, fee: $5/month}"},
	{"share-or-dollars", settle, "settlement: 6"},
	{"charge-by-week", "utilities: $310/month", "utilities: $71/week"},
	{"charge-by-time-here", settle, "settlement: $50/month"},
	{"fee-empty", settle, "settlement: {at least: $5}"},
	{"rates-two-ways", transfer, "transfer tax: {amount: $5, slabs: {above: 1%}}"},
	{"rates-two-ways", yard, "bill: {amount: $50/month, paid ahead: 2 months, premium paid ahead: 3 months}"},
	{"rates-two-ways", transfer, "transfer tax: {tables: [{amount: 1%, slabs: {above: 1%}}]}"},
	{"unknown-base", settle, "settlement: 1% of sale prise"},
	{"unknown-base", extension, extension + "\n    exit fee: 1% of price"},
	{"base-not-here", "recording: $190", "recording: 1% of commitment"},
	{"base-not-here", "permits: $1,250", "permits: 1% of price"},
	{"base-twice", settle, "settlement: {amount: 1% of price, of: sale price}"},
	{"base-unused", settle, "settlement: $500 of price"},
	{"base-unused", extension, extension + "\n    exit fee: $500 of balance"},
	{"unknown-phase", yard, "yard: $88/month during winter"},
	{"detail-not-here", settle, "settlement: {amount: $5, finance charge: no}"},
	{"least-above-most", settle, "settlement: {amount: 1%, at least: $500, at most: $400}"},
	{"paid-ahead-once", yard, "yard: {amount: $88, paid ahead: 6 months}"},
	{"paid-ahead-with", yard, "yard: {amount: $88/month, paid ahead: 6 months, at least: $5}"},
	{"kept-without-ahead", yard, "yard: {amount: $88/month, insurer keeps at least: 25%}"},
	{"kept-of-a-bill", yard, "yard: {amount: $88/month, paid ahead: 6 months, insurer keeps at least: 25%}"},
	{"credit-not-here", price, price + "\n  deposits: {utility: $300 credit}"},
	{"bracket-words", transfer, "transfer tax: {slabs: {until $250k: 0.5%, above: 1%}}"},
	{"bracket-words", transfer, "transfer tax: {slabs: {up to much: 0.5%, above: 1%}}"},
	{"bracket-order", transfer, "transfer tax: {slabs: {up to $250k: 0.5%, up to $200k: 0.6%, above: 1%}}"},
	{"bracket-gap", transfer, "transfer tax: {slabs: {up to $250k: 0.5%, above $300k: 1%}}"},
	{"bracket-after-last", transfer, "transfer tax: {slabs: {above: 1%, up to $250k: 0.5%}}"},
	{"bracket-rate", transfer, "transfer tax: {slabs: {above: $5/month}}"},
	{"bracket-rate", transfer, "transfer tax: {tables: [{amount: $5/month}]}"},
	{"bracket-fixed", transfer, "transfer tax: {brackets: {up to $250k: $500, above: 1%}}"},
	{"brackets-empty", transfer, "transfer tax: {slabs: {}}"},
	{"brackets-empty", transfer, "transfer tax: {tables: []}"},
	{"mixed-edges", transfer, "transfer tax: {slabs: {up to $250k: 0.5%, below $300k: 0.6%, above: 1%}}"},
	{"mixed-edges", transfer, "transfer tax: {tables: [{when: up to $250k, amount: 1%}, {when: from $250k, amount: 2%}]}"},
	{"table-words", transfer, "transfer tax: {tables: [{when: it rains, amount: 1%}]}"},
	{"table-empty", transfer, "transfer tax: {tables: [{when: up to $250k}, {when: above $250k, amount: 1%}]}"},
	{"table-dates", transfer, "transfer tax: {tables: [{from: 2026-05-01, until: 2026-05-01, amount: 1%}]}"},
	{"table-overlap", transfer, "transfer tax: {tables: [{when: up to $250k, amount: 1%}, {when: above $240k, amount: 2%}]}"},
	{"table-gap", transfer, "transfer tax: {tables: [{until: 2026-08-01, amount: 1%}, {from: 2026-09-01, amount: 2%}]}"},
	{"dates-without-purchase", "=", minimal + "selling: {tax: {tables: [{from: 2026-01-01, amount: 1%}]}}\n"},

	{"missing-price", "=", strings.Replace(minimal, "purchase: {price: $200k, closing: {title: $1k}}\n", "", 1)},
	{"missing-after-repair-value", "=", strings.Replace(minimal, "value: {after-repair value: $300k}\n", "", 1)},
	{"missing-hold", "=", strings.Replace(minimal, "time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}\n", "", 1)},
	{"hold-too-long time-long", "marketing: 5 weeks", "marketing: 10 years"},
	{"deposit-after-purchase", "2026-02-12", "2026-04-12"},
	{"built-after-purchase", "year built: 1962", "year built: 2071"},
	{"deposit-above-price", "earnest deposit: {amount: $3k", "earnest deposit: {amount: $300k"},
	{"credit-above-price", price, price + "\n  seller credit: $300k"},
	{"low-above-value", "low: $335k", "low: $435k"},
	{"keep-back-above", "cash: {available: $95k", "cash: {available: $9.5k"},
	{"keep-back-alone", "cash: {available: $95k, keep back", "cash: {keep back"},
	{"cost-two-ways", roof, "{trade: roof, work: new shingles, amount: $9800, materials: $5}"},
	{"line-empty", roof, "{trade: roof, work: new shingles}"},
	{"spending-zero", "contingency: 15%", "contingency: 15%\n  spending: [$0, $0]"},
	{"price-two-ways", "price share: 85%", "price share: 85%\n    fixed amount: $5k"},
	{"remainder-first", "price share: 85%", "price share: 85%\n    of remainder: yes"},
	{"funded-over-100", "holding:", "  - {renovation share: 20%, rate: 9%, interest on: balance, term: 1 year}\nholding:"},
	{"reserve-unused", reserve, reserve + "\n    reserve: $4,000"},
	{"reserve-missing", reserve, reserve + "\n    interest paid: reserve"},
	{"amortising-interest", reserve, reserve + "\n    interest paid: at payoff\n    amortising: 30 years"},
	{"amortising-interest", "interest on: balance", "interest on: commitment\n    amortizing: 30 years"},
	{"extension-incomplete", extension, "extension: {each: 3 months}"},
	{"extension-without-term", "=", minimal + "loans: [{price share: 50%, rate: 9%, extension: {each: 3 months, fee: $5}}]\n"},
	{"partner-incomplete", "", "partner: {split: 50%}"},
	{"tax-two-ways", "tax: {set aside: 30%}", "tax: {set aside: 30%, income rate: 22%}"},
	{"tax-incomplete", "tax: {set aside: 30%}", "tax: {filing: joint}"},
	{"tax-needs-date", "=", minimal + "tax: {income rate: 22%}\n"},
	{"tax-year-unknown", "=", strings.Replace(minimal, "{price: $200k", "{date: 2011-01-01, price: $200k", 1) + "tax: {income rate: 22%, filing: single}\n"},

	{"value-below-price", "after-repair value: $359k # what it should sell for when the work is done\n  low: $335k", "after-repair value: $200k"},
	{"value-far-above-price", "after-repair value: $359k", "after-repair value: $359,000k"},
	{"lender-value-above", "expected discount", "lender's value: $400k\n  expected discount"},
	{"lender-value-far-below", "expected discount", "lender's value: $38,000\n  expected discount"},
	{"as-is-far-below-price", "expected discount", "as-is value: $21,250\n  expected discount"},
	{"low-far-below", "low: $335k", "low: $33.5k"},
	{"discount-high", "expected discount: 2%", "expected discount: 20%"},
	{"discount-under-low", "expected discount: 2%", "expected discount: 7%"},
	{"closing-costs-missing", "=", strings.Replace(minimal, ", closing: {title: $1k}", "", 1)},
	{"marketing-missing", "marketing: 5 weeks", "marketing: 0"},
	{"escrow-missing", "escrow: 1 month", "escrow: 0"},
	{"works-without-time", "renovation: 4 months", "renovation: 0"},
	{"contingency-none", "contingency: 15%", "contingency: 0%"},
	{"contingency-low", "contingency: 15%", "contingency: 14%"},
	{"contingency-low", "utilities: on", "utilities: off"},
	{"contingency-assumed", "contingency: 15%", "# none"},
	{"contingency-high", "contingency: 15%", "contingency: 60%"},
	{"contingency-twice", "    permits: $1,250", "    permits: $1,250\n    contingency reserve: $5,000"},
	{"spending-sum", "contingency: 15%", "contingency: 15%\n  spending: [$10k, $20k, $200k, $10k]"},
	{"spending-beyond", "contingency: 15%", "contingency: 15%\n  spending: [$1k, $1k, $1k, $1k, $1k]"},
	{"own-hours-unpriced own-hours-unpriced", "own labour rate: $45/hour", "# none"},
	{"loan-empty", "holding:", "  - {rate: 9%, interest on: balance, term: 1 year}\nholding:"},
	{"loan-name-twice price-shares-over-100", "holding:", "  - {name: First Loan, price share: 20%, rate: 9%, interest on: balance, term: 1 year}\nholding:"},
	{"loan-without-rate", loanRate, "rate: 0"},
	{"rate-unusual", loanRate, "rate: 30%"},
	{"rate-unusual", loanRate, "rate: 0.1125%"},
	{"rate-unusual", "own labour rate: $45/hour", "own labour rate: $3837/hour"},
	{"points-high", "points: 2 points", "points: 6 points"},
	{"points-high", "points: 2 points", "points: 0.2%"},
	{"loan-fee-high", "points: 2 points", "points: 2 points\n    exit fee: 10%"},
	{"loan-fee-high", "points: 2 points", "points: 2 points\n    exit fee: $30,000"},
	{"loan-fee-high", extension, "extension: {each: 3 months, fee: 5%}"},
	{"amortising-short", "points: 2 points", "points: 2 points\n    amortising: 30 months"},
	{"charge-small", "listing agent: 2.5%", "concessions: $3\n  listing agent: 2.5%"},
	{"interest-basis-assumed", "interest on: balance", "# none"},
	{"loan-without-term", "term: 12 months\n    " + extension, "# none"},
	{"term-long", "term: 12 months\n    " + extension, "term: 270 months"},
	{"term-before-sale", "term: 12 months\n    " + extension, "term: 6 months"},
	{"retainage-high", "lag: 1 month", "lag: 1 month, retainage: 20%"},
	{"draws-unused", reserve, "# none"},
	{"price-shares-over-100", "holding:", "  - {price share: 20%, rate: 9%, interest on: balance, term: 1 year}\nholding:"},
	{"renovation-share-low owner-first-mixed", "holding:", "  - {name: bea, renovation share: 5%, rate: 9%, interest on: balance, term: 1 year, draws: {lag: 0, owner first: yes}}\nholding:"},
	{"selling-of-price", settle, settle + "\n  second agent: 2.5% of the price"},
	{"preferred-high", "", "partner: {share: 40%, preferred return: 30%}"},
	{"insurance-missing", "vacant-house insurance: {amount: $1900/year, premium paid ahead: 12 months, insurer keeps at least: 25%}", "shelter: $1900/year"},
	{"property-tax-missing", "property tax", "county"},
	{"property-tax-high", "property tax: $4,120/year", "property tax: $2,980/month"},
	{"property-tax-high", "property tax: $4,120/year", "property tax: $17,001/year"},
	{"amount-small", "amount: $9800", "amount: 8.25"},
	{"amount-small", "labour: $3.2k", "labour: $6.4"},
	{"insurance-high", "amount: $1900/year, premium paid ahead: 12 months, insurer keeps at least: 25%", "amount: $1900/month"},
	{"target-small", "profit: $30k", "profit: $30"},
	{"cash-small", "{available: $95k, keep back: $10k}", "{available: 95}"},
	{"loan-small", "price share: 85%", "fixed amount: 180"},
	{"own-hours-crowded", "own hours: 110", "own hours: 1,900"},
	{"below-zero", "  closing:", "  prorations: {county taxes: -$318.77}\n  closing:"},
	{"time-long", "marketing: 5 weeks", "marketing: 50 weeks"},
	{"least-interest-long", "price share: 85%", "price share: 85%\n    least interest: 90 months"},
	{"least-draw-high", "lag: 1 month", "lag: 1 month, at least: $50,000"},
	{"paid-ahead-long", "premium paid ahead: 12 months", "premium paid ahead: 60 months"},
	{"price-share-low", "price share: 85%", "price share: 8.5%"},
	{"renovation-share-low", reserve, "renovation share: 9%"},
	{"deposit-date-early", "refundable until: 2026-02-12", "refundable until: 2025-02-12"},
	{"too-small", price, "price: 164.9"},
	{"too-small", "low: $335k", "low: $335"},
	{"holding-once", "utilities: $310/month", "utilities: $310"},
	{"holding-once", "utilities: $310/month", "water: 0.2%"},
	{"phase-empty", "=", minimal + "holding: {yard: {amount: $90/month, during: lead-in}}\n"},
	{"income-as-cost", "utilities: $310/month", "rent of a tenant: $310/month"},
	{"counted-already", "utilities: $310/month", "utilities: $310/month\n  loan interest: $1,600/month"},
	{"income-tax-as-cost", settle, settle + "\n  capital gains tax: 15%"},
	{"staging-early", "utilities: $310/month", "utilities: $310/month\n  staging: $1,900/month"},
	{"staging-dear", "utilities: $310/month", "utilities: $310/month\n  staging: {amount: $12,900/month, during: marketing}"},
	{"property-tax-low", "property tax: $4,120/year", "property tax: $412/year"},
	{"credit-high", price, price + "\n  seller credit: $21,250"},
	{"agent-share-low", agents, "agents: 0.5%"},
	{"agents-missing", agents, "deed: $120"},
	{"buyers-agent-missing", agents, "listing agent: 2.5%"},
	{"charge-high", settle, "settlement: $12,000"},
	{"charge-high", fees, "    underwriting: $14,950"},
	{"charge-small", settle, "settlement: $1.2"},
	{"charge-small", "listing agent: 2.5%", "listing agent: $2.5"},
	{"draw-fee-high", "fee: $175", "fee: $1750"},
	{"share-high", transfer, "transfer tax: 7.5%"},
	{"utilities-high", "utilities: $310/month", "utilities: $3,720/month"},
	{"utilities-low", "utilities: $310/month", "utilities: $310/year"},
	{"insurance-low", "amount: $1900/year", "amount: $190/year"},
	{"agent-share-low", settle, "listing broker: 0.3%"},
	{"share-high", settle, "settlement: 30%"},
	{"charge-high", price, price + "\n  assignment fee: $42,000"},
	{"rate-falls", transfer, "transfer tax: {brackets: {up to $250k: 5%, above: 0.75%}}"},
	{"brackets-open", transfer, "transfer tax: {brackets: {up to $250k: 0.5%}}"},
	{"slabs-open", transfer, "transfer tax: {slabs: {up to $250k: 0.5%}}"},
	{"tables-open", transfer, "transfer tax: {tables: [{when: up to $250k, amount: 1%}]}"},
	{"rates-outdated", transfer, "transfer tax: {tables: [{until: 2026-08-01, amount: 1%}]}"},
	{"rates-not-yet", transfer, "transfer tax: {tables: [{from: 2027-08-01, amount: 1%}]}"},
	{"cash-missing", "cash: {available: $95k, keep back: $10k}", "# none"},
	{"target-missing", "targets: {profit: $30k, roi: 25%}", "# none"},
	{"rule-unusual", "", "rule of thumb: 95%"},
	{"tax-filing-assumed", "tax: {set aside: 30%}", "tax: {income rate: 22%}"},
	{"tax-year-later", "=", strings.Replace(minimal, "{price: $200k", "{date: 2050-01-01, price: $200k", 1) + "tax: {income rate: 22%, filing: single}\n"},
	{"works-missing", "=", minimal},
	{"selling-costs-missing", "=", minimal},

	{"unknown-set-path", "--set", "prise=$5"},
	{"ambiguous-set-path", "--set", "at least=$5"},
	{"set-into-value", "--set", "purchase.price.of=5"},
	{"set-loses-time", "--set", "holding.utilities=$330"},
	{"set-adds-near", "--set", "selling.settlemnt=$1,300"},
}

// minimal is the least that can be reckoned; it leaves much to doubt.
const minimal = `purchase: {price: $200k, closing: {title: $1k}}
value: {after-repair value: $300k}
time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}
`

// unreached are the fallbacks: the checks before leave no way to them.
var unreached = []string{"missing-input", "circle", "not-bound", "bad-axis", "axis-not-here"}

func TestEachCodeIsReachedAndReadsWell(t *testing.T) {
	reached := map[string]bool{}
	for _, s := range slices.Concat(slips, roomSlips, rangeSlips, daySlips) {
		var sets []deal.Set
		text := s.text()
		if s.old == "--set" {
			path, value, _ := strings.Cut(s.new, "=")
			text, sets = []byte(deal.Starter("slip")), []deal.Set{{Path: path, Value: value}}
		}
		if set, ok := strings.CutPrefix(s.old, "--set "); ok {
			path, value, _ := strings.Cut(set, "=")
			sets = []deal.Set{{Path: path, Value: value}}
		}
		d, found := deal.Read("slip.yaml", text, sets...)
		require.Equal(t, found.HasErrors(), d == nil)
		var got []string
		for _, x := range found {
			got = append(got, x.Code)
			reached[x.Code] = true
			readsWell(t, x)
		}
		want := strings.Fields(s.codes)
		if s.old == "=" && len(got) > len(want) && d != nil {
			require.Contains(t, got, want[0], "%q", s.new) // the minimal file leaves much to doubt
			continue
		}
		assert.Equal(t, want, got, "%q -> %q\n%v", s.old, s.new, found)
	}
	for _, c := range deal.Codes() {
		if strings.HasPrefix(c.Name, "book-") || strings.HasSuffix(c.Name, "s-old") || c.Name == "price-far" || c.Name == "own-name-near" || c.Name == "rent-uncounted" || deal.AboutComps(c.Name) {
			continue // books and their prices, and sold houses, have tests of their own
		}
		require.Equal(t, !slices.Contains(unreached, c.Name), reached[c.Name], c.Name)
	}
}

// readsWell checks the house form of a diagnostic.
func readsWell(t *testing.T, d diag.Diag) {
	i := slices.IndexFunc(deal.Codes(), func(c deal.Code) bool { return c.Name == d.Code })
	require.GreaterOrEqual(t, i, 0, "%s is not in the table of codes", d.Code)
	require.Equal(t, deal.Codes()[i].Severity, d.Severity, d.Code)
	require.NotEmpty(t, d.Hint, d.Code)
	for _, text := range []string{d.Message, d.Hint} {
		require.False(t, unicode.IsUpper([]rune(text)[0]), text)
		require.False(t, strings.HasSuffix(text, "."), text)
		require.NotContains(t, text, "%!", d.Code)
		require.NotContains(t, text, "%%", d.Code)
	}
	require.NotEmpty(t, d.Pos.File, d.Code)
	if d.Severity == diag.Error {
		require.Positive(t, d.Pos.Line, d.Code)
	}
}

// Shares of over 100% of the price are no slip where a cap leaves room for the next loan.
func TestSharesThatACapLeavesRoomFor(t *testing.T) {
	for cap, doubted := range map[string]bool{"": true, ", cap on after-repair value: 50%": false} {
		_, found := deal.Read("a.yaml", []byte(minimal+"loans: [{name: bank, price share: 85%, rate: 9%"+cap+"}, {name: gap, price share: 20%, rate: 12%}]\n"))
		require.Equal(t, doubted, slices.Contains(codesIn(found), "price-shares-over-100"), cap)
	}
}

func TestCodesAreDistinct(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range deal.Codes() {
		require.False(t, seen[c.Name], c.Name)
		require.NotEmpty(t, c.Meaning, c.Name)
		seen[c.Name] = true
	}
	require.GreaterOrEqual(t, len(seen), 100)
}

func TestStarterRunsWithoutADoubt(t *testing.T) {
	d, found := deal.Read("starter.yaml", []byte(deal.Starter(`Birch "9": #2`)))
	require.Empty(t, found)
	require.Equal(t, `Birch "9": #2`, d.Name)
	require.Contains(t, deal.Starter(""), "invented")
}

func TestAllMistakesAreReportedAtOnceInOrder(t *testing.T) {
	_, found := deal.Read("a.yaml", []byte(`purchase:
  price: &p $200k
  price: $210k
  closing: {title: 6, stamp: $2 per}
value: {after-repair value: 300}
time: {renovation: 3, marketing: 1 month}
loans:
  - {rate: 1200%, points: 0.02, lag: 1}
  - roof
holdings: {}
`))
	var got []string
	for _, d := range found {
		got = append(got, d.Code)
	}
	require.Equal(t, []string{"yaml-anchor", "duplicate-key", "share-or-dollars", "bad-charge", "too-small", "bad-duration", "too-large", "bad-percent", "unknown-key", "want-group", "unknown-key"}, got)
}

// None but insurance has a premium, whatever its line is called.
func TestAPremiumIsInsurance(t *testing.T) {
	text := strings.Replace(deal.Starter("slip"), "vacant-house insurance", "shelter", 1)
	require.Contains(t, text, "shelter: {amount: $1900/year, premium paid ahead")
	d, found := deal.Read("slip.yaml", []byte(text))
	require.Empty(t, found)
	require.True(t, d.Insured)
	require.False(t, d.VacantInsured, "which does not say that it covers a vacant house")
}
