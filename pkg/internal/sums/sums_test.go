package sums_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/internal/sums"
)

func TestNamesOfSums(t *testing.T) {
	for name, want := range map[string]bool{
		"Avg. of 3": true, "High": true, "Low / Median / High": true, "Average sale price": true, "Median:": true, "Mean of all comps": true,
		"TOTAL:": true, "Total labour and materials": true, "Subtotal": true, "Grand total": true, "Weighted avg": true, "Adjusted average": true, "Std Dev": true, "The price": false,
		"High St": false, "Low Rd 4": false, "12 Average Ave": false, "Sumac Ct": false, "Count Basie Way": false, "": false, "total gut of the bath": false,
	} {
		require.Equal(t, want, sums.Named(name), name)
	}
}

func TestBeginsOfSums(t *testing.T) {
	for name, want := range map[string]bool{"Subtotal paint": true, "Sum total of my bid, all in": true, "TOTAL: paint": true, "paint total": false, "": false, "totally new roof": false} {
		require.Equal(t, want, sums.Begins(name), name)
	}
}

func TestSumsThatMayBeOne(t *testing.T) {
	for name, want := range map[string]bool{"412 Grand": true, "18 High": true, "7 Max.": true, "High": true, "low:": true, "Average": false, "3 average": false, "3 sales, high": false, "Low / High": false, "Grand total": false, "": false} {
		require.Equal(t, want, sums.MayBeOne(name), name)
	}
}
