package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// BenchmarkBidProcess is a bid on the demo deal.
func BenchmarkBidProcess(b *testing.B) { process(b, "bid", "../../scenarios/juniper-lane.yaml") }

// BenchmarkScopeProcess is the scope of a house of ten rooms.
func BenchmarkScopeProcess(b *testing.B) { process(b, "scope", "../../scenarios/walnut-row.yaml") }

// process runs the program as it is built and reports its greatest memory in megabytes
// and how often it touched a page of memory that it had not.
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
	for b.Loop() {
		run := exec.Command(program, args...)
		require.NoError(b, run.Run())
		if usage, ok := run.ProcessState.SysUsage().(*syscall.Rusage); ok {
			most, faults = max(most, usage.Maxrss), faults+usage.Minflt
		}
	}
	b.ReportMetric(float64(most)/1024, "MB") // Linux counts in kilobytes
	b.ReportMetric(float64(faults)/float64(b.N), "faults/op")
}
