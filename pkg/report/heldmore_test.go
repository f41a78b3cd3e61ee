package report

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The time of what a quote holds beside its own work is unknown, and told where the file states none. The
// house is invented.
func TestTheTimeOfAQuoteThatHoldsMore(t *testing.T) {
	const told = "Of a quote that holds more (kitchen cabinets)"
	for _, x := range []struct {
		time, quote string
		want        bool
	}{
		{"", "holds more: yes", true},
		{"", "holds more: no", false},
		{"renovation: 3 months, ", "holds more: yes", false},
	} {
		a := answered(t, "purchase: {price: $160k}\nvalue: {after-repair value: $260k}\ntime: {"+x.time+`marketing: 5 weeks}
rooms:
  kitchen: {size: 12' x 11', fixed: {base cabinets: 14' x 2', sink: 1}, work: {kitchen cabinets: {quote: $29500, `+x.quote+`}}}
`)
		var page strings.Builder
		require.NoError(t, Scope(&page, a, View{}, Style{}))
		require.Equal(t, x.want, strings.Contains(strings.Join(strings.Fields(page.String()), " "), told), "%+v", x)
	}
}
