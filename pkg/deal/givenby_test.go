package deal

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

// What is told to say so that there is some of a measure does bring it: work by that
// measure is refused before, and read after.
func TestWhatIsGivenBringsTheMeasure(t *testing.T) {
	const head = "purchase: {price: $160k}\nvalue: {after-repair value: $260k}\ntime: {marketing: 5 weeks, escrow: 1 month}\n"
	told := 0
	for _, m := range pricebook.Measures {
		from := givenBy(m.Name)
		if from == "" || m.Of == "house" {
			continue
		}
		book := "items: {try it: {trade: carpentry, measure: " + m.Name + ", hours: none, hired: $1 " + each(m) + ", materials: none, brings: none, source: mine}}"
		read := func(what string) []string {
			room := "rooms: {bath: {size: 12' x 10', " + what + "work: {try it: hired}}}\n"
			if m.Of == "outside" {
				room = "outside: {" + what + "work: {try it: hired}}\n"
			}
			_, found := ReadWith(Options{Open: func(string) ([]byte, error) { return []byte(book), nil }}, "a.yaml", []byte(head+"own book: b.yaml\n"+room))
			var codes []string
			for _, d := range found.Errors() {
				codes = append(codes, d.Code)
			}
			return codes
		}
		require.Empty(t, read(from+", "), "%s by %s", m.Name, from)
		if slices.Contains([]string{"outlets", "lights", "registers"}, m.Name) {
			continue // a room has some without
		}
		require.Equal(t, []string{"work-of-nothing"}, read(""), m.Name)
		told++
	}
	require.Greater(t, told, 30)
}

func each(m pricebook.Measure) string {
	if m.Unit == "each" {
		return "each"
	}
	return "per " + string(m.Unit)
}
