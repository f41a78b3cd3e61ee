package deal

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/model"
)

// A sheet doubts a quote by the rules that check has, from far below its work to far above all that it
// is taken to hold.
func TestAQuoteIsDoubtedBesideAsByCheck(t *testing.T) {
	doubts := 0
	for _, quote := range []string{"$90", "$900", "$3,000", "$4,300", "$5,200", "$6,400", "$8,900", "$12,400", "$20,000", "$40,000", "{quote: $12,400, holds more: no}", "{quote: $40,000, holds more: no}", "{quote: $40,000, holds more: yes}", "{quote: $12,400, covers: labour}", "{quote: $6,400, covers: labour}", "{quote: $6,400, covers: labour, holds more: no}"} {
		for _, work := range []string{"outside wall paint", "vinyl siding", "shingle roof gable", "gutters: {quote: $1,900}, vinyl siding", "gutters: own hands, outside wall paint"} {
			text := fmt.Sprintf(`
purchase: {price: $160k}
value: {after-repair value: $260k}
time: {marketing: 5 weeks, escrow: 1 month}
house: {year built: 1988}
rooms: {den: {size: 12' x 10', work: {paint walls: own hands}}}
outside: {around: 160 ft, siding: 1440 sq ft, gutters: 120 ft, doors: 2, windows: 12, roof: [{size: 44' x 32', pitch: 6/12, overhang: 1'}], work: {%s: %s}}
`, work, quote)
			d, found := Read("a.yaml", []byte(text))
			require.False(t, found.HasErrors(), "%v", found)
			told := false
			for _, x := range found {
				told = told || slices.Contains([]string{"quote-far", "quote-half", "quote-holds-other"}, x.Code)
			}
			var c *model.Cell
			for _, w := range d.reader.chosenWorks() {
				if w.quoted() && strings.HasSuffix(work, w.item.Name) {
					c = d.Model.Find(w.member, "quote")
				}
			}
			value := func(c *model.Cell) (decimal.Decimal, bool) { return d.reader.worked(c.Member, c.Line.Name) }
			beside := slices.ContainsFunc(d.Beside(c), func(x Beside) bool { return !x.Holds(value) })
			require.Equal(t, told, beside, "%s: %s: %v", work, quote, found)
			if told {
				doubts++
			}
		}
	}
	require.Greater(t, doubts, 10)
}
