package deal_test

import (
	"os"
	"testing"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

func BenchmarkZRead(b *testing.B) {
	text, _ := os.ReadFile("/tmp/walnut.yaml")
	for b.Loop() {
		d, found := deal.Read("house.yaml", text)
		if d == nil {
			b.Fatal(found)
		}
	}
}

func BenchmarkZEval(b *testing.B) {
	text, _ := os.ReadFile("/tmp/walnut.yaml")
	d, _ := deal.Read("house.yaml", text)
	b.Log(len(d.Model.Cells))
	for b.Loop() {
		exact.Evaluate(d.Model)
	}
}
