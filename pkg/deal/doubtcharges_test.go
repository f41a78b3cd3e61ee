package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A point that slipped and a nought too many are told of every way to state a charge; what such charges
// may well be is not.
func TestChargesWithASlip(t *testing.T) {
	const den = "  den: {size: 12' x 13', work: {paint walls: hired}}\n"
	for _, c := range []struct {
		keys string
		told map[string]int
	}{
		{"selling: {transfer tax: {brackets: {up to $250k: 4%, up to $500k: 0.7%, above: 1%}}}", map[string]int{"rate-falls": 1}},
		{"selling: {transfer tax: {brackets: {up to $250k: 0.4%, up to $500k: 7%, above: 1%}}}", map[string]int{"rate-falls": 1}},
		{"selling: {stamp: {slabs: {below $150k: 0.2%, below $400k: 3%, above: 0.5%}}}", map[string]int{"rate-falls": 1}},
		{"selling: {stamp: {tables: [{when: up to $350,000, brackets: {up to $100k: 5%, above: 1%}}, {when: above $350,000, amount: 1%}]}}", map[string]int{"rate-falls": 1}},
		{"selling: {transfer tax: {brackets: {up to $250k: 40%, above: 1%}}}", map[string]int{"rate-falls": 1, "share-high": 1}},
		{"selling: {stamp: $110 per $500}", map[string]int{"share-high": 1}},
		{"selling: {stamp: {slabs: {below $150k: $110 per $500, above: $110 per $500}}}", map[string]int{"share-high": 2}},
		{"selling: {transfer tax: {brackets: {up to $250k: 0.4%, up to $500k: 0.7%, above: 1%}}, title: {brackets: {up to $100k: $5.75 per $1000, above: $2.25 per $1000}}, agents: 6%}", nil},
		{"selling: {surcharge: {brackets: {up to $250k: 1%, above: 0%}}}", nil},
	} {
		for _, code := range []string{"rate-falls", "share-high", "charge-high"} {
			require.Len(t, toldOf(t, code, den, c.keys+"\n"), c.told[code], "%s: %s", code, c.keys)
		}
	}
	for charge, want := range map[string]int{
		"county: 11%": 1, "county: 1.1%": 0, "county: 5%": 0, "county: {slabs: {up to $150k: 0.1%, above: 11%}}": 1, "county: $55 per $500": 1, "county: $5.50 per $500": 0,
		"buyer's premium: 10%": 1, "title: 3.5%": 1, "title: 2.5%": 0, "title and transfer tax: 4%": 0,
	} {
		require.Len(t, toldWith(t, "share-high", "closing: {"+charge+"}"), want, charge)
	}
	for purchase, want := range map[string]int{
		"assignment fee: $42,000": 1, "assignment fee: $20,000": 0, "closing: {title: $14,500}": 1, "closing: {title: $1,450}": 0, "closing: {title: $10,000}": 1, "closing: {title and escrow: $5,900}": 0, "closing: {settlement: $6,100}": 1, "closing: {closing costs: $9,000}": 0, "closing: {escrow deposit: $9,000}": 0, "closing: {title and transfer tax: $9,500}": 0,
		"closing: {recording: $9,500}": 1, "closing: {recording: $2,400}": 0, "closing: {recording tax: $9,500}": 0, "closing: {mortgage recording: $6,000}": 0, "closing: {recording and transfer: $6,000}": 0,
	} {
		require.Len(t, toldWith(t, "charge-high", purchase), want, purchase)
	}
}

// Permits in dollars are held against the work as a share of it is, but for those of a small job.
func TestPermitsInDollars(t *testing.T) {
	for keys, want := range map[string]int{
		"general: {permits: $7,500}": 1,
		"lines: [{work: roof, amount: $60k}], general: {building permits: $12,000}": 1,
		"lines: [{work: roof, amount: $60k}], general: {building permits: $1,200}":  0,
		"lines: [{work: roof, amount: $160k}], general: {permits: $7,500}":          0,
		"general: {permits: $900}": 0, "general: {permits: $2,400}": 0,
		"general: {permits: $7,500, contractor: $180k}": 0,
	} {
		text := strings.Replace(walked, "time: {", "renovation: {"+keys+"}\ntime: {", 1) + "seen: {hazards: good, oil tank: good, foundation: good}\nrooms: {bath: {size: 8' x 5', work: {paint walls: hired}}}\n"
		_, found := deal.Read("a.yaml", []byte(text))
		require.False(t, found.HasErrors(), "%s: %v", keys, found)
		n := 0
		for _, code := range codesIn(found) {
			if code == "charge-high" {
				n++
			}
		}
		require.Equal(t, want, n, keys)
	}
}

// What agents take of the sale is asked for where nothing of it is among the charges, and doubted where it
// is next to nothing; the other charges of the sale are as those of the purchase.
func TestTheSaleIsByAgentsUnlessTheFileSaysSo(t *testing.T) {
	const den = "  den: {size: 12' x 13', work: {paint walls: hired}}\n"
	for _, c := range []struct {
		keys string
		told map[string]int
	}{
		{"title: $1,900, transfer tax: 0.5%", map[string]int{"agents-missing": 1}},
		{"title agent: $1,900, transfer tax: 4%, seller concessions: 3%", map[string]int{"agents-missing": 1}},
		{"transfer tax: {brackets: {up to $250k: 1.5%, above: 2.5%}}", map[string]int{"agents-missing": 1}},
		{"title: $1,900, agents: 0%", nil},
		{"title: $1,900, agents: $0", nil},
		{"title: $1,900, listing agent: $9,000", nil},
		{"title: $1,900, buyer side commission: 2.5%", nil},
		{"costs of the sale: 7%", nil}, {"closing costs: 8%", nil}, {"agents and closing: $16,000", nil}, {"buyer's side: 2.5%", nil}, {"commission and transfer tax: 6%", nil},
		{"both agents: 2.5%", map[string]int{"agent-share-low": 1}},
		{"listing and buyer agent: 2.5%", map[string]int{"agent-share-low": 1}},
		{"both agents: 4%", nil},
		{"agents: 0.5%", map[string]int{"agent-share-low": 1}},
		{"commission: 0.6%", map[string]int{"agent-share-low": 1}},
		{"listing agent: 0.25%, buyer's agent: 2.5%", map[string]int{"agent-share-low": 1}},
		{"listing agent: 0.5%, buyer's agent: 2.5%", nil},
		{"agents: 1%", nil},
		{"listing agent: 5%, buyer's agent: 5%", map[string]int{"share-high": 1}},
		{"agents: 15%", map[string]int{"share-high": 1}},
		{"agents: 9%", map[string]int{"share-high": 1}},
		{"agents: 8%", nil}, {"commission and transfer tax: 9%", nil},
		{"agents and closing: 9%", map[string]int{"share-high": 0}},
		{"listing agent: 3.5%, buyer's agent: 3%, transfer tax: 2%", nil},
		{"listing agent: 2.5%, title: $1,900", map[string]int{"buyers-agent-missing": 1}},
		{"seller's agent: 3%", map[string]int{"buyers-agent-missing": 1}},
		{"listing broker: 3%, transfer tax: 2.5%", map[string]int{"buyers-agent-missing": 1}},
		{"listing agent: 2.5%, buyer's agent: 0%", nil}, {"listing agent: 5%", nil}, {"listing agent: 2.5%, selling agent: 2%", nil}, {"listing side: 2.5%, buyer: 2.5%", nil},
		{"agents: 5%, title: $15,000", map[string]int{"charge-high": 1}},
		{"agents: 5%, title: $6,000", nil},
		{"agents: $15,600, title: $1,500, seller credit: $14,000", nil},
		{"agents: 5%, staging: $14,000", map[string]int{"charge-high": 1}},
	} {
		for _, code := range []string{"agents-missing", "buyers-agent-missing", "agent-share-low", "share-high", "charge-high"} {
			require.Len(t, toldOf(t, code, den, "selling: {"+c.keys+"}\n"), c.told[code], "%s: %s", code, c.keys)
		}
	}
}

// Title and settlement of the sale, and charges of a loan, are shares of a few percent; what a buyer is given,
// and what is left with a lender, may be more.
func TestSharesOfTheSaleAndOfLoans(t *testing.T) {
	for charge, want := range map[string]int{
		"title: 17.5%": 1, "title and escrow: 3.5%": 1, "closing: 4.5%": 0, "title and stamps: 4%": 0, "settlement: 12%": 1, "closing: 12%": 1, "closing costs: 8%": 1, "credit to the buyer: 15%": 1,
		"title: 2.5%": 0, "transfer taxes: 4.6%": 0, "seller concessions: 6%": 0, "credit to the buyer: 9%": 0, "title and transfer tax: 5.5%": 0, "tax withheld: 15%": 0,
	} {
		require.Equal(t, want, tellsIn(t, "share-high", settle, charge), charge)
	}
	require.Zero(t, tellsIn(t, "share-high", settle, "closing costs: 8%", "listing agent: 2.5%", "# ", "buyer's agent: 2.5%", "# "), "it holds what agents take")
	for charge, want := range map[string]int{
		"origination: 10%": 1, "documents: 9%": 1, "underwriting: {amount: 10%, of: loan at closing}": 1,
		"origination: 5%": 0, "interest reserve: 9%": 0, "prepaid interest: 11%": 0, "mortgage tax: 2.8%": 0, "profit share: {amount: 10%, of: sale price}": 0, "inspection: {amount: 6%, of: holdback}": 0,
	} {
		require.Equal(t, want, tellsIn(t, "share-high", fees, "    "+charge), charge)
	}
}

// Charges of a loan in dollars are held against the loan as shares are, but for those that a small loan has too.
func TestDollarsOfLoans(t *testing.T) {
	for fee, want := range map[string]int{
		"origination: $12.5k": 1, "points: $30k": 1, "origination: $4,500": 0, "broker: $9,000": 0, "interest reserve: $14k": 0, "mortgage tax: $13k": 0,
	} {
		require.Len(t, toldOf(t, "charge-high", smallDen, "loans: [{fixed amount: $150k, rate: 9%, fees: {"+fee+"}}]\n"), want, fee)
	}
	require.Empty(t, toldOf(t, "charge-high", smallDen, "loans: [{fixed amount: $30k, rate: 9%, fees: {origination: $3,500}}]\n"))
}

// What is drawn before the work is a share of it; hauling, rented tools and power for the work have a price.
func TestGeneralLinesWithANoughtTooMany(t *testing.T) {
	for line, want := range map[string]int{
		"architect: $18k": 1, "plans: $18k": 1, "engineer: $1,800": 0, "plans: $14k": 0, "engineered beams: $18k": 0, "foundation engineering and work: $18k": 0,
		"debris hauling: $16.4k": 1, "haul away: $12k": 1, "debris removal: $12k": 1, "debris removal and demolition: $14k": 0, "hauling: $3,900/month": 1, "debris hauling: $6,400": 0, "trash hauling: $12k": 0, "dirt hauling: $14k": 0, "debris of the fire: $14k": 0,
		"tool rental: $6,500": 1, "rented tools: $3,400/month": 1, "tool rental: $650": 0, "tools: $7,000": 0,
		"temporary power: $8,500": 1, "temp power pole: $8,500": 1, "temporary power: $900": 0, "temporary electrical work: $8,500": 0,
	} {
		require.Len(t, toldOf(t, "charge-high", smallDen, "renovation: {lines: [{work: all of it, amount: $60k}], general: {"+line+"}}\n"), want, line)
	}
	require.Empty(t, toldOf(t, "charge-high", smallDen, "renovation: {lines: [{work: all of it, amount: $180k}], general: {architect: $24k}}\n"))
}

// A length of time that is rather one of days or weeks is told; slow markets and long work are let stand.
func TestTimesOfAnotherUnit(t *testing.T) {
	for time, want := range map[string]int{
		"marketing: 5 weeks, escrow: 5 years": 1, "marketing: 50 weeks, escrow: 50 weeks": 2, "lead-in: 8 months, marketing: 5 weeks": 1, "renovation: 3 years, marketing: 5 weeks": 1, "renovation: 100 weeks, lead-in: 52 weeks": 1,
		"lead-in: 5 months, renovation: 18 months, marketing: 8 months, escrow: 90 days": 0,
	} {
		_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "marketing: 5 weeks, escrow: 1 month", time, 1)+"renovation: {lines: [{work: all of it, amount: $60k}]}\n"))
		require.False(t, found.HasErrors(), "%v", found)
		require.Equal(t, want, strings.Count(strings.Join(codesIn(found), " "), "time-long"), time)
	}
}

// A year's utilities by the month are told, at any price of a house.
func TestAYearsUtilitiesByTheMonth(t *testing.T) {
	const den = "  den: {size: 12' x 13', work: {paint walls: hired}}\n"
	for charge, want := range map[string]int{
		"utilities: $3,120/month": 1, "power and water: $1,440/month": 1, "electric: $1,800/month during marketing": 1, "gas: $6,000/quarter": 1, "utilities: $31,200/year": 1, "heating oil: $2,400/month": 1,
		"utilities: $260/month": 0, "utilities: $1,100/month": 0, "heating oil: $1,800/quarter": 0, "utilities: $3,120/year": 0, "yard: $1,900/month": 0,
	} {
		require.Len(t, toldOf(t, "utilities-high", den, "holding: {"+charge+"}\n"), want, charge)
	}
	_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "price: $160k", "price: $1.6m", 1)+"holding: {utilities: $3,120/month}\nrooms:\n"+den))
	require.NotContains(t, codesIn(found), "utilities-high")
}

// toldWith are the messages of one code in a deal whose purchase at $200,000 says more.
func toldWith(t *testing.T, code, purchase string) (out []string) {
	t.Helper()
	_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "price: $160k", "price: $200k, "+purchase, 1)))
	require.False(t, found.HasErrors(), "%s: %v", purchase, found)
	for _, d := range found {
		if d.Code == code {
			out = append(out, d.Message)
		}
	}
	return out
}
