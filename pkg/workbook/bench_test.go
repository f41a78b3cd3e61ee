package workbook

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"
)

// BenchmarkTenRooms writes the house of ten rooms with both of its options set beside it.
func BenchmarkTenRooms(b *testing.B) {
	const path = "../../scenarios/walnut-row.yaml"
	a, columns := answerOf(b, path), besides(b, path)
	b.ReportAllocs()
	for b.Loop() {
		require.NoError(b, Write(io.Discard, a, Options{Columns: columns}))
	}
}
