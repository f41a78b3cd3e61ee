package main

import (
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// BenchmarkBidProcess runs bid on the demo deal as a whole process and reports
// its greatest memory in megabytes.
func BenchmarkBidProcess(b *testing.B) {
	program := filepath.Join(b.TempDir(), "ledgerboard")
	require.NoError(b, exec.Command("go", "build", "-o", program, ".").Run())
	var most int64
	for b.Loop() {
		run := exec.Command(program, "bid", "../../scenarios/juniper-lane.yaml")
		require.NoError(b, run.Run())
		if usage, ok := run.ProcessState.SysUsage().(*syscall.Rusage); ok {
			most = max(most, usage.Maxrss)
		}
	}
	b.ReportMetric(float64(most)/1024, "MB") // Linux counts in kilobytes
}
