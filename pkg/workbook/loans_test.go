package workbook

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// A file says of a reserve what is asked for: where caps leave nothing of it, its choices go
// together all the same; where none is asked for, or interest is not paid from it, they do not.
func TestAReserveThatCapsTakeAwayGoesTogether(t *testing.T) {
	const text = `purchase: {price: $148k}
value: {after-repair value: $214k}
time: {renovation: 2 months, marketing: 4 weeks, escrow: 1 month}
loans:
- {name: Oak, price share: 90%, rate: 12%, interest on: balance}
- {name: Elm, price share: 5%, rate: 9%, interest on: balance, interest paid: reserve, reserve: $3000, cap on after-repair value: 60%}
`
	says, paths := map[string]string{}, []string{}
	for _, x := range []struct {
		line  string
		value any
		says  string
	}{
		{"reserve_wanted", 3000.0, "ok"}, {"reserve_wanted", 0.0, "THEY DO NOT"}, {"interest_paid", "monthly", "THEY DO NOT"},
	} {
		b, err := made(answered(t, text), Options{Uncached: true})
		require.NoError(t, err)
		elm := b.model.Root.In("loan")[1]
		require.True(t, b.answer.Of(elm, "reserve").IsZero())
		at := b.places[b.model.Find(elm, x.line).Index]
		at.grid.rows[at.row-1][at.col-1].value = x.value
		path := filepath.Join(t.TempDir(), itoa(len(paths))+".xlsx")
		saved(t, path, b)
		paths, says[path] = append(paths, path), x.says
	}
	for path, f := range recomputed(t, paths...) {
		require.Contains(t, printed(t, f, "The deal"), "the choices of every loan go together\n"+says[path], path)
	}
}
