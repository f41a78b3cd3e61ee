package cli_test

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// figure is what stands at the end of an entry of a page, behind its label.
var figure = regexp.MustCompile(`^(.*?\S) +(over [$\d.,%]+|-?\$[\d.,]+|-?[\d.,]+%|-?[\d.]+( months?)?|none|already|doubtful)$`)

// labelsOf are the labels of a page that stand before a figure in two columns, and
// those of what is assumed.
func labelsOf(page string) []string {
	_, entries, _ := strings.Cut(page, "The deal at the asking price")
	entries, rest, _ := strings.Cut(entries, "\nAssumed, because the file does not say\n")
	var out []string
	for _, line := range strings.Split(entries, "\n")[1:] {
		r := []rune(line + strings.Repeat(" ", 80))
		for _, half := range []string{string(r[2:39]), string(r[41:78])} {
			if m := figure.FindStringSubmatch(strings.TrimSpace(half)); m != nil && r[0] == ' ' {
				out = append(out, m[1])
			}
		}
	}
	assumed, _, _ := strings.Cut(rest, "\n\n")
	for _, part := range strings.Split(assumed, ";") {
		label, _, _ := strings.Cut(strings.Join(strings.Fields(part), " "), ":")
		out = append(out, label)
	}
	return out
}

// The help promises it: why takes every label that a page puts before a figure.
func TestWhyTakesTheLabelsOfThePages(t *testing.T) {
	asked := map[string]bool{}
	for _, name := range names(t) {
		file := filepath.Join(scenarios, name)
		page, _, code := run(t, "", "bid", file)
		require.Zero(t, code)
		labels := labelsOf(page)
		require.Greater(t, len(labels), 35)
		for _, label := range append(labels, "Don't go above", "low point", "out", "in", "so far", "loan.1.balance") {
			if asked[label] || strings.HasPrefix(label, "loan.") && name == "cedar-court.yaml" { // bought with cash
				continue
			}
			asked[label] = true
			out, wrong, code := run(t, "", "why", file, label)
			require.Zero(t, code, "%s: %s: %s", name, label, wrong)
			require.NotEmpty(t, out)
		}
	}
	for _, label := range []string{"first loan, draws", "- partner's profit then", "points and loan fees", "overrun over bids above", "- all loan costs", "spending", "loans' cost a year (APR)"} {
		require.True(t, asked[label], "no page says %q", label)
	}
}

// What is near to a part of a thing keeps the thing before it.
func TestWhyKeepsWhatAPartIsOf(t *testing.T) {
	_, wrong, _ := run(t, "", "why", filepath.Join(scenarios, "walnut-row.yaml"), "living room: paint wals")
	require.Contains(t, wrong, "did you mean living room: paint walls?")
}

// A path of a key that its group does not have is none, and what no loan is asked of has none.
func TestWhyTakesNoPathsThatAreNone(t *testing.T) {
	for name, says := range map[string]string{"purchase.profit": "nothing in the deal is called", "loan.points": "the deal has no loan"} {
		_, wrong, code := run(t, "", "why", filepath.Join(scenarios, "cedar-court.yaml"), name)
		require.NotZero(t, code)
		require.Contains(t, wrong, says)
	}
}
