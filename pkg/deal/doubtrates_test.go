package deal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// Amounts that pairs tell and that are hardly so are doubted, and so is a market that runs
// away or that two sales tell too roughly.
func TestUnusualAmountsAreDoubted(t *testing.T) {
	for _, c := range []struct{ house, comps, says, hint string }{
		{"living area: 1190 sq ft", "1 Ash St: {sold: 2025-11-20, price: $279k, living area: 1165}|2 Oak St: {sold: 2025-10-20, price: $389k, living area: 1265}|3 Elm St: {sold: 2025-10-25, price: $282k, living area: 1170}", "a sq ft is worth $1,100 by 1 pair of sales", "square foot: $95"},
		{"living area: 1190 sq ft", "1 Ash St: {sold: 2025-11-20, price: $279k, living area: 1165}|2 Oak St: {sold: 2025-10-20, price: $289k, living area: 1265}|3 Elm St: {sold: 2025-10-25, price: $280k, living area: 1170}", "", ""},
		{"baths: 1.5", "1 Ash St: {sold: 2025-11-20, price: $279k, baths: 1}|2 Oak St: {sold: 2025-10-20, price: $379k, baths: 2}|3 Elm St: {sold: 2025-10-25, price: $282k, baths: 1}", "a full bath is worth $98,500 by 2 pairs of sales, over a quarter of the middle price, $70,500", "bath: $9,000"},
		{"baths: 1.5", "1 Ash St: {sold: 2025-11-20, price: $279k, baths: 1}|2 Oak St: {sold: 2025-10-20, price: $289k, baths: 2}|3 Elm St: {sold: 2025-10-25, price: $282k, baths: 1}", "", ""},
		{"baths: 1.5", "1 Ash St: {sold: 2025-11-20, price: $279k, baths: 1}|2 Oak St: {sold: 2025-10-20, price: $379k, baths: 2}", "by 1 pair of sales, over", "bath: $9,000"},
		{"baths: 1", "amounts: {market a month: 4%}|1 Ash St: {sold: 2025-11-20, price: $279k, baths: 1}", "changes by 4% a month, it says, which is 48% in a year", "market a month: 0.33%"},
		{"baths: 1", "amounts: {market a month: 2%}|1 Ash St: {sold: 2025-11-20, price: $279k, baths: 1}", "changes by 2% a month, it says, which is 24% in a year", "market a month: 0.17%"},
		{"baths: 1", "amounts: {market a month: -1.5%}|1 Ash St: {sold: 2025-11-20, price: $279k, baths: 1}", "changes by -1.5% a month", ""},
		{"baths: 1", "amounts: {market a month: 1.4%}|1 Ash St: {sold: 2025-11-20, price: $279k, baths: 1}", "", ""},
	} {
		lines := strings.Split(c.comps, "|")
		text := unvalued + "house: {" + c.house + "}\ncomps:\n"
		if strings.HasPrefix(lines[0], "amounts") {
			text, lines = text+"  "+lines[0]+"\n", lines[1:]
		}
		d, found := deal.Read("a.yaml", []byte(text+"  sold:\n    "+strings.Join(lines, "\n    ")+"\n"))
		require.NotNil(t, d, "%v", found)
		says, hint := "", ""
		for _, x := range found {
			if x.Code == "comps-amount-unusual" {
				require.Empty(t, says, "told once")
				says, hint = x.Message, x.Hint
			}
		}
		require.Contains(t, says, c.says, "%v", found)
		require.Equal(t, c.says == "", says == "", says)
		require.Contains(t, hint, c.hint)
	}
}

// An amount for land that would make it over half of a price is doubted, and what was changed about.
func TestAmountsForLandThatAreTheWholePrice(t *testing.T) {
	for _, c := range []struct{ amounts, says, hint string }{
		{"square foot of lot: $45", "a square foot more of lot is worth $45, it says, and the sales went for $42.50 a sq ft of theirs", "square foot of lot: $1.50"},
		{"square foot: $1.50, square foot of lot: $95", "is worth $95, it says", "changed about with   square foot: $1.50"},
		{"square foot: $95, square foot of lot: $21", "", ""},
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1180 sq ft, lot: 7000 sq ft}\ncomps:\n  amounts: {"+c.amounts+"}\n  table: |\n"+`    address  sold on     price     sq ft  lot
    1 A St   2025-11-07  $340,000  1180   8,000
    2 A St   2025-10-20  $339,000  1180   7,000
    3 A St   2025-09-08  $341,000  1180   8,100
`))
		says := ""
		for _, x := range found {
			if x.Code == "comps-amount-unusual" {
				says += x.Message
				require.Contains(t, x.Hint, c.hint)
			}
		}
		require.Contains(t, says, c.says)
		require.Equal(t, c.says == "", says == "", says)
	}
}

// Amounts that leave nothing of sales around are doubted, with how many those are.
func TestAmountsThatLeaveNothingOfSalesAroundAreDoubted(t *testing.T) {
	table := ""
	for i := range 80 {
		area := 1000 + i%7*20
		if i%30 == 11 {
			area = 2600
		}
		table += fmt.Sprintf("      %d Elm St;2025-%02d-%02d;%d;%d;%d\n", i+1, 1+i%9, 1+i%27, 60_000+i%11*500, area, 1+i%2)
	}
	text := unvalued + "house: {living area: 1,040 sq ft, baths: 1}\ncomps:\n  take: 10\n  amounts: {square foot: $60}\n  table: |\n      Address;Sold;Price;Living area;Baths\n" + table
	_, found := deal.Read("a.yaml", []byte(text))
	i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "comps-amount-unusual" })
	require.GreaterOrEqual(t, i, 0, "%v", found)
	require.Contains(t, found[i].Message, "your amounts leave nothing of the price of 3 sales around")
}

// A bedroom that makes a house cheaper, by pairs of sales, is used and doubted.
func TestABedroomWorthLessThanNothingIsDoubted(t *testing.T) {
	_, found := deal.Read("a.yaml", []byte(unvalued+`house: {living area: 1180 sq ft, bedrooms: 3}
comps:
  amounts: {market a month: 0%}
  table: |
    address  sold on     price     sq ft  bedrooms
    1 A St   2025-11-07  $260,000  1180   3
    2 A St   2025-10-20  $249,000  1180   4
    3 A St   2025-09-08  $261,000  1180   3
`))
	i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "comps-amount-unusual" })
	require.GreaterOrEqual(t, i, 0, "%v", found)
	require.Contains(t, found[i].Message, "a bedroom is worth -$11,500 by 2 pairs of sales, less than nothing")
	require.Contains(t, found[i].Hint, "amounts: {bedroom: ")
}

// By one pair a trend is off by as much as it is, whatever the last bit of either: it is doubted.
func TestATrendOfOnePairIsDoubted(t *testing.T) {
	for price := 256; price <= 281; price++ {
		text := unvalued + "house: {living area: 1180 sq ft}\ncomps:\n  amounts: {square foot: $88}\n  table: |\n" + fmt.Sprintf(`    address  sold on     price     sq ft
    1 A St   2025-11-07  $%d,000  1180
    2 A St   2025-08-20  $261,000  1200
    3 A St   2025-07-08  $262,000  1250
    4 A St   2025-06-09  $287  1300
`, price)
		d, found := deal.Read("a.yaml", []byte(text))
		require.NotNil(t, d, "%v", found)
		if rate := d.Comps.Value.Trend; rate.From == "pairs" && rate.Pairs == 1 && rate.Worth != 0 {
			require.Contains(t, codesIn(found), "comps-amount-unusual", "%d", price)
		}
		at := slices.IndexFunc(found, func(x diag.Diag) bool { return x.Code == "doubtful-sale" })
		require.Contains(t, found[at].Hint, "did you mean $287,000 or so, or")
	}
}

// A few hundred may be thousands or a price per square foot; a few dollars are no price cut short.
func TestAPriceThatIsHardlyOneIsNotGuessedAt(t *testing.T) {
	for price, want := range map[string]string{"$191.73": "did you mean $192,000 or so, or is it a price per square foot?", "$1": "it is set aside; name it", "$287": "did you mean $287,000 or so"} {
		text := unvalued + "house: {living area: 1180 sq ft}\ncomps:\n  amounts: {square foot: $88}\n  table: |\n    address  sold on     price     sq ft\n" +
			"    1 A St   2025-11-07  $259,000  1180\n    2 A St   2025-08-20  $261,000  1200\n    3 A St   2025-07-08  $262,000  1250\n    4 A St   2025-06-09  " + price + "  1300\n"
		_, found := deal.Read("a.yaml", []byte(text))
		at := slices.IndexFunc(found, func(x diag.Diag) bool { return x.Code == "doubtful-sale" })
		require.Contains(t, found[at].Hint, want)
	}
}

// A market that a regression tells too roughly is doubted as one by pairs is.
func TestARoughTrendOfARegressionIsDoubted(t *testing.T) {
	table := ""
	for i := range 80 {
		area := 1000 + i*53%400
		table += fmt.Sprintf("      %d Elm St;2025-09-%02d;%d;%d\n", i+1, 1+i*7%29, area*180*(100+(i*37%23-11))/100, area)
	}
	d, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1,200 sq ft}\ncomps:\n  table: |\n      Address;Sold;Price;Living area\n"+table))
	require.NotNil(t, d, "%v", found)
	require.Equal(t, "regression", d.Comps.Value.Trend.From)
	require.True(t, slices.ContainsFunc(found, func(x diag.Diag) bool {
		return x.Code == "comps-amount-unusual" && strings.Contains(x.Message, "by the regression, so it may not change at all")
	}), "%v %v", d.Comps.Value.Trend, found)
}

// A value that is written without its $ is warned of in dollars.
func TestWarningsSayValuesInDollars(t *testing.T) {
	sales := "house: {living area: 1180 sq ft}\ncomps:\n  sold:\n    1 A St: {sold: 2026-02-01, price: $150k, living area: 1180 sq ft}\n    2 A St: {sold: 2026-02-01, price: $151k, living area: 1180 sq ft}\n"
	for said, want := range map[string]string{"304000": "($304,000)", "304k": "($304,000)", "$304k": "($304k)", "304000.5": "($304,000.50)"} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"value: {after-repair value: "+said+"}\n"+sales))
		at := slices.IndexFunc(found, func(x diag.Diag) bool { return x.Code == "value-outside-comps" })
		require.GreaterOrEqual(t, at, 0, "%v", found)
		require.Contains(t, found[at].Message, "the after-repair value "+want+" is outside")
	}
}

// A year newer is worth less than nothing where the newer of two twins sold for less, and not
// where it sold for more.
func TestAYearNewerWorthLessThanNothingIsDoubted(t *testing.T) {
	for _, c := range []struct {
		newer int
		says  string
	}{
		{270_000, ""},
		{252_000, "a year newer is worth -$400 by 2 pairs of sales, less than nothing"},
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+fmt.Sprintf(`house: {living area: 1180 sq ft, year built: 1960}
comps:
  amounts: {market a month: 0%%}
  table: |
    address  sold on     price  sq ft  built
    1 A St   2025-11-07  260000  1180  1960
    2 A St   2025-10-20  %d      1180  1980
    3 A St   2025-09-08  260000  1180  1960
`, c.newer)))
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "comps-amount-unusual" })
		if c.says == "" {
			require.Equal(t, -1, i, "%v", found)
			continue
		}
		require.GreaterOrEqual(t, i, 0, "%v", found)
		require.Contains(t, found[i].Message, c.says)
		require.Contains(t, found[i].Hint, "amounts: {year newer: ")
	}
}

// An amount for a square foot near the whole price of one is doubted, and so is a step of
// condition of a few dollars, which was meant as a share.
func TestAmountsThatAreHardlyWhatAUnitMoreIsWorthAreDoubted(t *testing.T) {
	for _, c := range []struct{ amounts, says string }{ // the sales went for $200 a sq ft
		{"square foot: $195", "a square foot more is worth $195, it says, and the sales went for $200 a sq ft"},
		{"square foot: $260", "the sales went for $200 a sq ft"},
		{"square foot: $120", ""},
		{"step of condition: 15", "a step of condition is worth $15, it says, which is next to nothing"},
		{"step of condition: 0", ""},
		{"step of condition: $9,000", ""},
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1300 sq ft, condition: good}\ncomps:\n  amounts: {market a month: 0.3%, "+c.amounts+`}
  sold:
    1 A St: {sold: 2025-11-07, price: $260,000, living area: 1300, condition: good}
    2 A St: {sold: 2025-10-20, price: $240,000, living area: 1200, condition: good}
    3 A St: {sold: 2025-09-08, price: $280,000, living area: 1400, condition: average}
`))
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "comps-amount-unusual" })
		require.Equal(t, c.says != "", i >= 0, "%s: %v", c.amounts, found)
		if i >= 0 {
			require.Contains(t, found[i].Message, c.says)
		}
	}
}

// An amount by the name of a column, or with its unit behind it, leads to how it is written.
func TestAmountsByOtherNamesLeadToTheirs(t *testing.T) {
	for amounts, hint := range map[string]string{
		"sq ft: 95": `did you mean "square foot"?`, "beds: 95": `did you mean "bedroom"?`, "market a year: 4%": `did you mean "market a month"?`, "year built: 300": `did you mean "year newer"?`,
		"square foot: 95 per sq ft": "write the dollars for one alone, e.g. square foot: $95",
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"comps:\n  amounts: {"+amounts+"}\n  sold:\n    1 A St: {sold: 2025-11-07, price: $260,000}\n"))
		require.NotEmpty(t, found, amounts)
		require.Equal(t, hint, found[0].Hint, amounts)
	}
}

// A rate that only an option beside the scope goes by is no slip: the same file is read for both.
func TestARateOfAnotherOptionIsNotDoubted(t *testing.T) {
	for by, doubted := range map[string]bool{"{by: hired, by the hour: yes}": false, "hired": true} {
		text := strings.Replace(twoOptions, "gut: {work: {hang wall board: hired}}", "gut: {work: {hang wall board: "+by+"}}", 1)
		text = strings.Replace(text, "rooms:\n", "labour: {trades: {drywall: {rate: $58/hour}}}\nscope: fresh\nrooms:\n", 1)
		_, found := deal.Read("a.yaml", []byte(text))
		require.False(t, found.HasErrors(), "%v", found)
		require.Equal(t, doubted, slices.Contains(codesIn(found), "rate-unused"), "%v", found)
	}
}
