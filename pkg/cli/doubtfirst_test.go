package cli_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What is likely mistyped, of the house, of the price and of the sales, comes before the value by
// them and before a bid that goes by it, and nowhere else.
func TestWhatIsLikelyMistypedComesFirst(t *testing.T) {
	third := "    3 C St: {sold: 2026-05-01, price: \"$325,000\", living area: 1200 sq ft, baths: 2, condition: good}\n"
	for name, c := range map[string]struct {
		edit []string
		want string
	}{
		"as it is":         {nil, ""},
		"the house":        {[]string{`"1,200 sq ft"`, `"12,000 sq ft"`}, "the house has 12,000 sq ft of living area, and the sales about 1,200: likely the house was mistyped; look whether its living area"},
		"all prices":       {[]string{`"$3`, `"$3,`, `,000"`, `0,000"`}, "it is more than ten times the price, $220,000. Look at that price and at those of the sales"},
		"the price":        {[]string{"$220k", "$22k"}, "it is more than ten times the price, $22,000."},
		"the price up":     {[]string{"$220k", "$22m"}, "it is less than a tenth of the price, $22,000,000."},
		"one of two":       {[]string{third, "", `"$340,000"`, `"$3,400,000"`}, "it is drawn from two sales alone, 1 A St, sold for $300,000 (standard input:8:5), and 2 B St, sold for $3,400,000 (standard input:9:5), and one of them is likely wrong"},
		"one of two, less": {[]string{third, "", `"$300,000"`, `"$30,000"`}, "it is drawn from two sales alone, 1 A St, sold for $30,000 (standard input:8:5), and 2 B St"},
	} {
		text := strings.NewReplacer(c.edit...).Replace(soldDeal)
		for verb, lead := range map[string]string{"comps": "Doubt this value first: ", "bid": "Doubt the value first, by sold houses: "} {
			out, wrong, code := run(t, text, verb, "-")
			require.Zero(t, code, wrong)
			out = flowing(out)
			require.Equal(t, c.want != "", strings.Contains(out, lead), "%s, %s: %s", name, verb, out)
			before, _, _ := strings.Cut(out, map[string]string{"comps": "Likely $", "bid": "The asking price"}[verb])
			require.Contains(t, before, c.want, "%s, %s", name, verb)
			stated, _, code := run(t, text+"value: {after-repair value: $325k}\n", verb, "-")
			require.Zero(t, code)
			require.Equal(t, c.want != "" && verb == "comps", strings.Contains(flowing(stated), lead), "%s, %s", name, verb)
		}
	}
}
