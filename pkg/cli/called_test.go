package cli

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/report"
)

// entry is a row of a page: a label, and the figures behind it.
var entry = regexp.MustCompile(`^(\S.*?) {2,}(\S.*)$`)

// An asked label is to have the last of the figures, or the one of that number.
type asked struct{ label, figures string }

// rows are the labels of a part of a page with their figures; a label that has a line of
// its own has its figures on the next.
func rows(part string) []asked {
	var out []asked
	above := ""
	for _, line := range strings.Split(part, "\n") {
		bare := strings.TrimLeft(line, "+ ")
		m := entry.FindStringSubmatch(bare)
		switch {
		case strings.HasPrefix(line, "    ") && above != "":
			out = append(out, asked{above, bare})
			above = ""
		case m != nil:
			out = append(out, asked{m[1], m[2]})
		case !strings.HasPrefix(line, "    "):
			above = bare
		}
	}
	return out
}

func part(t *testing.T, page, from, to string) string {
	_, rest, ok := strings.Cut(page, from+"\n")
	require.True(t, ok, "%s is not on the page", from)
	_, rest, _ = strings.Cut(rest, "\n") // the heads of the columns
	out, _, _ := strings.Cut(rest, to)
	return out
}

var price = regexp.MustCompile(`-?\$[\d,]+(\.\d\d)?`)

// finds asks for a label and wants the figure of the page, of that number, or the last.
func finds(t *testing.T, a *answer.Answer, label, figures string, number int) {
	all := price.FindAllString(figures, -1)
	require.NotEmpty(t, all, "%s: %s", label, figures)
	if number < 0 {
		number += len(all)
	}
	c, err := find(a.Deal, label, report.Ask(label).Lines)
	require.NoError(t, err, label)
	x := a.Values.Of(c)
	require.Contains(t, []string{quantity.FormatMoney(x), quantity.FormatDollars(x)}, all[number], label)
}

// Why takes every label of the scope page and of the shopping list, and comes to the
// figure that stands there.
func TestWhyTakesTheLabelsOfScopeAndBuy(t *testing.T) {
	for _, file := range []string{"walnut-row.yaml", "salt-creek.yaml"} {
		file = "../../scenarios/" + file
		page := func(args ...string) string {
			var out bytes.Buffer
			require.Zero(t, Run(args, Streams{Out: &out, Err: &out, Env: func(string) string { return "" }}), out.String())
			return out.String()
		}
		c := &common{}
		a, err := c.worked(file)
		require.NoError(t, err)

		scope := page("scope", file, "--items")
		found := rows(part(t, scope, "By room", "\nBy trade"))
		require.Greater(t, len(found), 9)
		for _, row := range found {
			finds(t, a, row.label, row.figures, -1)
		}
		for _, row := range rows(part(t, scope, "By trade", "\n\n")) {
			finds(t, a, row.label, row.figures, 0)
			finds(t, a, row.label+", by trades", row.figures, 1)
		}
		_, pieces, _ := strings.Cut(scope, "\nall ")
		pieces, _, _ = strings.Cut(pieces, "\n\nBrought along")
		asked := 0
		for _, block := range strings.Split(pieces, "\n\n")[1:] {
			head, block, _ := strings.Cut(block, "\n")
			room, _, _ := strings.Cut(head, ":")
			for _, row := range rows(block)[1:] {
				if strings.Contains(row.figures, "$") { // no remark
					finds(t, a, room+": "+row.label, row.figures, -1)
					asked++
				}
			}
		}
		require.Greater(t, asked, 60)
		for _, row := range rows(part(t, "\n"+scope, "Not seen, so something is set aside (likely; least to most)", "\nOnce seen")) {
			if strings.HasPrefix(row.figures, "$") {
				finds(t, a, row.label, row.figures, 0)
			}
		}

		shopping, _, _ := strings.Cut(page("buy", file), "\nCut list")
		bought := 0
		for _, row := range rows(shopping) {
			if strings.Contains(row.figures, "$") && !strings.Contains(row.figures, "things for") {
				finds(t, a, row.label, row.figures, -1)
				bought++
			}
		}
		require.Greater(t, bought, 60)
		for _, label := range []string{"own hours", "weeks", "container", "kitchen: floor", "living room: walls less large openings"} {
			_, err := find(a.Deal, label, report.Ask(label).Lines)
			require.NoError(t, err, label)
		}
	}
}

// The heads of columns and rows of the pages stand for the figure of all rooms.
func TestWhyTakesTheHeadsOfColumns(t *testing.T) {
	a, err := (&common{}).worked("../../scenarios/walnut-row.yaml")
	require.NoError(t, err)
	for head, line := range map[string]string{
		"weeks of work": "work_weeks", "weeks, with waiting": "scope_months", "from your part": "owner_margin",
		"asking price": "price", "most of your money tied up": "cash_needed", "you lose": "lost_backing_out", "other lines": "lines_cost",
		"profit target": "profit_to_spare", "margin target": "margin_to_spare", "ROI target": "roi_to_spare", "cash you have": "cash_to_spare", "own h": "room_own_hours", "hired h": "room_crew_hours", "$/sq ft": "rooms_a_foot", "kitchen: $/sq ft": "cost_a_foot",
	} {
		c, err := find(a.Deal, head, report.Ask(head).Lines)
		require.NoError(t, err, head)
		require.Equal(t, line, c.Line.Name, head)
	}
}

func TestWhatIsCalledSeveralTimesIsListed(t *testing.T) {
	a, err := (&common{}).worked("../../scenarios/walnut-row.yaml")
	require.NoError(t, err)
	for words, want := range map[string]string{
		"toilet":   `say which: "hall bath: toilet", "attic bath: toilet"`,
		"cosmetic": `"living room: cosmetic", "dining room: cosmetic"`,
		"walls":    `"living room.wall_area", "dining room.wall_area"`,
	} {
		_, err := find(a.Deal, words, report.Ask(words).Lines)
		var e *usageError
		require.ErrorAs(t, err, &e, words)
		require.Contains(t, e.hint, want)
	}
	for words, near := range map[string]string{
		"low: xyz": "low value", "hold: kitchen": "hold", "profit: kitchen": "profit", "maximum offer: kitchen": "maximum offer", // what stands behind the colon is no remark
		"kitchn": "did you mean kitchen?", "renovation budgt": "did you mean renovation budget?",
		"kitchen, pait walls": "paint walls", "xyzzy": "scope and buy show the work and the products",
	} {
		_, err := find(a.Deal, words, report.Ask(words).Lines)
		var e *usageError
		require.ErrorAs(t, err, &e, words)
		require.Contains(t, e.hint, near, words)
	}
}

// Where labels are alike, each name of the hint leads to a line of its own, and so do the
// paths that a set takes.
func TestEachNameThatIsToldLeadsToItsLine(t *testing.T) {
	mine := t.TempDir() + "/my-house.yaml"
	require.NoError(t, os.WriteFile(mine, []byte(deal.Starter("my-house")), 0o600))
	for _, path := range []string{mine, "../../scenarios/walnut-row.yaml", "../../scenarios/orchard-street.yaml"} {
		a, err := (&common{}).worked(path)
		require.NoError(t, err)
		asked := map[string]bool{}
		for _, c := range a.Deal.Model.Cells {
			label := c.Member.Label
			if !stands(c) || asked[label] {
				continue
			}
			asked[label] = true
			one, several := meant(a.Deal, report.Ask(label).Lines)
			for _, x := range several[:min(listed, len(several))] {
				require.Nil(t, one)
				name := address(a.Deal, x)
				found, err := find(a.Deal, name, report.Ask(name).Lines)
				require.NoError(t, err, "%s: %s", path, name)
				require.Same(t, x, found, "%s: %s", path, name)
			}
		}
	}
	a, err := (&common{}).worked(mine)
	require.NoError(t, err)
	_, err = find(a.Deal, "transfer tax", report.Ask("transfer tax").Lines)
	var e *usageError
	require.ErrorAs(t, err, &e)
	require.Equal(t, `say which: "purchase.closing.transfer tax", "selling.transfer tax"`, e.hint)
	for path, want := range map[string]string{ // of the starter file: $212,500 in steps of $500 at $0.55
		"purchase.closing.transfer tax": "233.75", "Purchase.Closing.transfer-tax": "233.75", "closing.transfer tax": "233.75",
		"purchase.closing.transfer tax.amount": "233.75", "purchase.price": "212500", "loans[1].rate": "0.1125", "renovation.lines.1": "9800",
	} {
		c, err := find(a.Deal, path, report.Ask(path).Lines)
		require.NoError(t, err, path)
		require.Equal(t, want, a.Values.Of(c).String(), path)
	}
}
