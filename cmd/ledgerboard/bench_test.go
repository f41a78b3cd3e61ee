package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// BenchmarkBidProcess is a bid on the demo deal.
func BenchmarkBidProcess(b *testing.B) { process(b, "bid", "../../scenarios/juniper-lane.yaml") }

// BenchmarkScopeProcess is the scope of a house of ten rooms.
func BenchmarkScopeProcess(b *testing.B) { process(b, "scope", "../../scenarios/walnut-row.yaml") }

// process runs the program as it is built and reports how long the middle run took, for a few are held
// up by what else the machine does, its greatest memory in megabytes and how often it touched a page
// of memory that it had not.
func process(b *testing.B, args ...string) {
	program := filepath.Join(b.TempDir(), "ledgerboard")
	build := exec.Command("go", "build", "-o", program, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	require.NoError(b, build.Run())
	text, err := os.ReadFile(program) // what the linker just wrote lies in memory in small pages
	require.NoError(b, err)
	program += "-installed" // and a copy as if read from the disk
	require.NoError(b, os.WriteFile(program, text, 0o755))
	var most, faults int64
	var took []time.Duration
	for b.Loop() {
		run, from := exec.Command(program, args...), time.Now()
		require.NoError(b, run.Run())
		took = append(took, time.Since(from))
		if usage, ok := run.ProcessState.SysUsage().(*syscall.Rusage); ok {
			most, faults = max(most, usage.Maxrss), faults+usage.Minflt
		}
	}
	slices.Sort(took)
	b.ReportMetric(took[len(took)/2].Seconds()*1000, "ms/middle")
	b.ReportMetric(float64(most)/1024, "MB") // Linux counts in kilobytes
	b.ReportMetric(float64(faults)/float64(b.N), "faults/op")
}
