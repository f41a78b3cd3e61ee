package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Money for surprises beside the contingency is counted on top of it, as a sum or as a share.
func TestAContingencyIsNotCountedTwice(t *testing.T) {
	den := "  den: {size: 12' x 10', work: {paint walls: own hands}}\n"
	for renovation, want := range map[string]int{
		"{contingency: 20%, general: {contingency: $3,000}}":                                        1,
		"{contingency: 20%, general: {contingency reserve: $5000}}":                                 1,
		"{contingency: 20%, general: {contingency: 15%}}":                                           1,
		"{contingency: 20%, general: {reserve for surprises: $2k}}":                                 1,
		"{contingency: 20%, general: {buffer: 10%}}":                                                1,
		"{contingency: 20%, general: {cushion: $9,000}}":                                            1,
		"{contingency: 20%, general: {reserve: 10%}}":                                               1,
		"{contingency: 20%, general: {overrun: 10%}}":                                               1,
		"{contingency: 20%, general: {cost overruns: 10%}}":                                         1,
		"{contingency: 20%, general: {safety cushion for repairs: $4,000}}":                         1,
		"{contingency: 20%, lines: [{trade: general, work: buffer, amount: $2k}]}":                  1,
		"{contingency: 20%, general: {window seat cushions: $240}}":                                 0,
		"{contingency: 20%, general: {buffer rental: $90}}":                                         0,
		"{contingency: 20%, general: {reserve study: $400}}":                                        0,
		"{contingency: 20%, general: {lender's reserve: $400}}":                                     0,
		"{general: {contingency: $3,000}}":                                                          1,
		"{contingency: 20%, lines: [{trade: general, work: contingency, amount: $2k, apart: yes}]}": 1,
		"{contingency: 0%, general: {contingency: $3,000}}":                                         0,
		"{contingency: 20%, general: {contingency: $0}}":                                            0,
		"{contingency: 20%, general: {storage: $85/month}}":                                         0,
	} {
		require.Len(t, toldOf(t, "contingency-twice", den, "renovation: "+renovation+"\n"), want, renovation)
	}
}
