package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

// A can of a gallon paints 350 sq ft in the starter book, so a pail of five does 1,750:
// two coats on 352 sq ft of walls take as many gallons of either, 704/350.
func TestAnotherPackDoesTheWorkByWhatItHolds(t *testing.T) {
	for name, c := range map[string]struct{ book, work string }{
		"a pail in an own book": {"products: {wall paint: {pack: pail of 5 gal, price: $150}}", "paint walls: hired"},
		"another product":       {"products: {pail paint: {pack: pail of 5 gal, price: $150}}", "paint walls: {by: hired, product: pail paint}"},
		"as the book has it":    {"products: {wall paint: {price: $33}}", "paint walls: hired"},
		"said of the pail":      {"products: {wall paint: {pack: pail of 5 gal, price: $150}}\nitems: {paint walls: {materials: {wall paint: {one for: 1750 sq ft, each coat: yes}}}}", "paint walls: hired"},
	} {
		text := walked + "own book: b.yaml\nrooms: {den: {size: 12' x 10', work: {" + c.work + "}}}\n"
		d, found := deal.ReadWith(deal.Options{Open: func(string) ([]byte, error) { return []byte(c.book), nil }}, "a.yaml", []byte(text))
		require.NotNil(t, d, found)
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		use := d.Root.In("inside")[0].In("option")[0].In("item")[0].In("use")[0]
		require.Equal(t, "2.01", v.Of(d.Model.Find(use, "net_use")).StringFixed(2), name)
		require.NotNil(t, d.Model.Find(use, "covers_with").Given, "%s: another pack in a sheet would do no more", name)
	}
}
