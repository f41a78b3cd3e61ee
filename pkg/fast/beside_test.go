//go:build unix

package fast_test

import (
	"encoding/binary"
	"flag"
	"math"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/odds"
	"ledgerboard/pkg/solve"
)

var beside = flag.String("beside", "", "a folder into which BenchmarkBeside writes trials and what comes of them, for docs/speed/run")

// BenchmarkBeside is this side of the comparison in docs/speed.md: trials of the demo deal
// with its loans as planned, and the drawing of them, on one core by its own time.
func BenchmarkBeside(b *testing.B) {
	const n = 64 * odds.Block
	spreads, ties := chances(b)
	m := scenario(b, juniper)
	axes := stresses(m)
	in, out := make([][]float64, len(axes)), make([][]float64, 4)
	for i, s := range spreads {
		axes[i].Least, axes[i].Most = s.Ends()
	}
	for i := range out {
		out[i] = make([]float64, n)
	}
	held, err := solve.Held(m)
	require.NoError(b, err)
	q, err := fast.Ask(m, axes, all(m, "owner_profit", "roi", "cash_needed", "hold_months"), held...)
	require.NoError(b, err)
	size, err := q.Size(9)
	require.NoError(b, err)

	drawer := odds.NewDrawer(spreads, ties)
	for block := range uint64(n / odds.Block) {
		for i, x := range drawer.Draw(1, block) {
			in[i] = append(in[i], x...)
		}
	}
	b.Run("draws", func(b *testing.B) {
		timed(b, n*len(spreads), func() {
			for block := range uint64(n / odds.Block) {
				drawer.Draw(1, block)
			}
		})
	})
	b.Run("trials", func(b *testing.B) {
		worker := q.Worker()
		require.NoError(b, worker.Run(in, out))
		timed(b, n, func() {
			if err := worker.Run(in, out); err != nil {
				b.Error(err)
			}
		})
		b.ReportMetric(float64(size), "operations")
		if *beside != "" {
			require.NoError(b, writeColumns(filepath.Join(*beside, "trials"), in))
			require.NoError(b, writeColumns(filepath.Join(*beside, "fast"), out))
		}
	})
}

// timed reports the time of the processor that one of n things takes, in the quickest pass.
func timed(b *testing.B, n int, do func()) {
	least := time.Duration(math.MaxInt64)
	for b.Loop() {
		began := used(b)
		do()
		least = min(least, used(b)-began)
	}
	b.ReportMetric(float64(least)/float64(n), "cpu-ns/each")
}

func used(b *testing.B) time.Duration {
	var u syscall.Rusage
	require.NoError(b, syscall.Getrusage(syscall.RUSAGE_SELF, &u))
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// writeColumns writes one column after the other.
func writeColumns(path string, columns [][]float64) error {
	var to []byte
	for _, c := range columns {
		to, _ = binary.Append(to, binary.LittleEndian, c)
	}
	return os.WriteFile(path, to, 0o600)
}

// What is written is read back as numpy and C read it: float64, little end first, one
// column after the other.
func TestWriteColumns(t *testing.T) {
	path := filepath.Join(t.TempDir(), "columns")
	require.NoError(t, writeColumns(path, [][]float64{{1, -2.5}, {0, 359_000}}))
	got, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, []byte{
		0, 0, 0, 0, 0, 0, 0xf0, 0x3f, 0, 0, 0, 0, 0, 0, 0x04, 0xc0, // by IEEE 754: 1 is 0x3ff0..., -2.5 is 0xc004...
		0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0x60, 0xe9, 0x15, 0x41, // 359,000 is 2^18 × 1.369476318359375
	}, got)
}
