package cli_test

import "testing"

// BenchmarkStressGrid is the whole verb with a grid of 40 by 40, all four figures.
func BenchmarkStressGrid(b *testing.B) {
	for b.Loop() {
		_, wrong, code := run(nil, "", "stress", scenarios+"/juniper-lane.yaml", "--across", "months late=0..6 months/39", "--down", "overrun=0%..60%/39", "--json")
		if code != 0 {
			b.Fatal(wrong)
		}
	}
}
