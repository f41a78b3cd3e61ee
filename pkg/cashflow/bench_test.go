package cashflow_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/cashflow"
)

// oneChange is a purchase, months of costs, and a sale: the usual deal.
func oneChange(months int) []decimal.Decimal {
	flows := []decimal.Decimal{decimal.New(-9578531, -2)}
	for k := 1; k < months-1; k++ {
		flows = append(flows, decimal.New(-54321-int64(k*k*7919%50000), -2))
	}
	return append(flows, decimal.New(18139244, -2))
}

// manyChanges has draws of a loan coming in every other month.
func manyChanges(months int) []decimal.Decimal {
	flows := oneChange(months)
	for k := 2; k < months-1; k += 2 {
		flows[k] = decimal.New(61234, -2)
	}
	return flows
}

func BenchmarkIRR(b *testing.B) {
	for _, c := range []struct {
		name  string
		flows []decimal.Decimal
	}{
		{"12 flows, one change", oneChange(12)},
		{"60 flows, one change", oneChange(60)},
		{"12 flows, many changes", manyChanges(12)},
		{"60 flows, many changes", manyChanges(60)},
		{"a double root", numbers(b, "-100", "120", "-1", "99", "-121")},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := cashflow.IRR(c.flows); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkAPR(b *testing.B) {
	for _, months := range []int{12, 240} {
		lend := []cashflow.Flow{{Amount: decimal.New(20_000_000, -2)}}
		pay := []cashflow.Flow{{Amount: decimal.New(20_500_000, -2), Whole: months, Part: decimal.New(40625, -5)}}
		for m := 1; m <= months; m++ {
			pay = append(pay, cashflow.Flow{Amount: decimal.New(183_333, -2), Whole: m})
		}
		b.Run(decimal.NewFromInt(int64(months)).String()+" months and a part", func(b *testing.B) {
			for b.Loop() {
				if _, err := cashflow.APR(lend, pay, decimal.New(12, 0)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLevelPayment(b *testing.B) {
	principal, rate := decimal.New(162_000, 0), number(b, "0.03875/12")
	for b.Loop() {
		if _, err := cashflow.LevelPayment(principal, rate, 360); err != nil {
			b.Fatal(err)
		}
	}
}
