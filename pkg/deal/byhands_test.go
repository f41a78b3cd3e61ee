package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// doers are the pieces of work of a deal that begin with some words, each with who does it.
func doers(t *testing.T, book, text string, begin ...string) []string {
	t.Helper()
	open := func(string) ([]byte, error) { return []byte(book), nil }
	if book != "" {
		text = "own book: mine.yaml\n" + text
	}
	d, found := deal.ReadWith(deal.Options{Open: open}, "house.yaml", []byte(walked+text+"\n"))
	require.NotNil(t, d, found)
	require.Empty(t, found.Errors())
	out := []string{}
	for m, w := range d.Work {
		if slices.ContainsFunc(begin, func(b string) bool { return strings.HasPrefix(w.Item.Name, b) }) {
			who := m.Given.Of("who").Choice
			if who == "" {
				who = "hired" // as where nothing is said
			}
			out = append(out, w.Item.Name+" "+who)
		}
	}
	slices.Sort(out)
	return out
}

// A dishwasher by own hands brings a circuit, which a licensed trade lays. What that breaks
// open is patched by a trade too, whose firm has its certificate.
func TestWhatATradeBringsIsHired(t *testing.T) {
	const kitchen = "house: {year built: 1955}\nrooms: {kitchen: {kind: kitchen, size: 10' x 12', options: {a: {work: {dishwasher fitted: own hands}}}}}"
	require.Equal(t, []string{"circuit hired", "dishwasher fitted own", "lead-safe supplies hired", "wall patching after trades hired"},
		doers(t, "", kitchen, "circuit", "dishwasher", "lead-safe", "wall patching"))
	patching := strings.Replace(kitchen, "dishwasher fitted: own hands", "dishwasher fitted: own hands, drywall patch: own hands", 1)
	require.Contains(t, doers(t, "", patching, "lead-safe"), "lead-safe firm certificate hired")
}

// The condition looks at who does the work in the end: zs, which za and zb bring, is done by
// own hands as soon as one of them is, and brings zt and, once for the house, zu with it, in
// whatever order they stand. From a licensed trade, zs brings neither.
func TestOwnHandsOfTheWorkThatBrings(t *testing.T) {
	const book = `items:
  za: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zs], source: x}
  zb: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zs], source: x}
  zs: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zt if own hands, zu in house if own hands], source: x}
  zt: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: none, source: x}
  zu: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: none, source: x}
`
	den := func(work string) string { return "rooms: {den: {size: 10' x 12', work: {" + work + "}}}" }
	for _, work := range []string{"za: hired, zb: own hands", "zb: own hands, za: hired"} {
		require.Equal(t, []string{"za hired", "zb own", "zs own", "zt own", "zu own"}, doers(t, book, den(work), "z"), work)
	}
	require.Equal(t, []string{"za hired", "zb hired", "zs hired"}, doers(t, book, den("za: hired, zb: hired"), "z"))
	licensed := strings.Replace(book, "source: x}\n  zt", "licence: yes, source: x}\n  zt", 1)
	require.Equal(t, []string{"za hired", "zb own", "zs hired"}, doers(t, licensed, den("za: hired, zb: own hands"), "z"))
}
