package workbook

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/stress"
)

func stressedOf(t *testing.T, a *answer.Answer) *Stressed {
	across, ok := a.Plan.UsualAcross(stress.LateWorks)
	require.True(t, ok)
	study, err := a.Plan.Study(across, a.Plan.UsualDown())
	require.NoError(t, err)
	o, err := chance.Ask(context.Background(), a.Deal, chance.Options{Trials: 2000, Seed: 7, Confidence: 0.8})
	require.NoError(t, err)
	return &Stressed{study, o}
}

func (g *grid) rowOf(t *testing.T, label string) int {
	for i, row := range g.rows {
		if s, is := row0(row).(string); is && strings.HasPrefix(s, label) {
			return i
		}
	}
	t.Fatalf("no row of %q", label)
	return 0
}

func row0(row []cell) any {
	if len(row) == 0 {
		return nil
	}
	return row[0].value
}

// The page shows what was found, as values that say so, with the day and the seed.
func TestStressPage(t *testing.T) {
	a := answered(t, sentinels)
	s := stressedOf(t, a)
	b, err := made(a, Options{Stress: s})
	require.NoError(t, err)
	g := sheetOf(b, "Stress")
	for _, row := range g.rows {
		for _, c := range row {
			require.Empty(t, c.formula, "it does not recalculate")
		}
	}
	said := strings.Join(texts(g), "\n")
	require.Contains(t, said, "they do not recalculate")
	require.Contains(t, said, "2,000 trials with seed 7")
	require.Contains(t, said, "contingency is used up")
	first := g.rowOf(t, "Your profit") + 2
	for i, row := range s.Grid.Cells {
		for k, c := range row {
			require.Equal(t, near(c.Profit), g.rows[first+i][k+1].value)
		}
	}
	for _, o := range s.Days {
		r := g.rows[g.rowOf(t, o.Title)]
		require.Equal(t, near(o.Profit), r[1].value)
		require.Equal(t, stress.Words(o.Misses), r[6].value)
		require.Equal(t, o.Remedy, r[7].value)
	}
	require.Equal(t, near(s.Ranking[0].Size()), g.rows[g.rowOf(t, "What matters most")+1][5].value)
	require.True(t, g.rows[g.rowOf(t, "What matters most")][0].look.wrap, "heads stand beside it")
	require.Equal(t, near(s.Odds.Safe.Price), g.rows[g.rowOf(t, "safe offer")][1].value)

	var w bytes.Buffer
	require.NoError(t, Write(&w, a, Options{Stress: s}))
	f, err := excelize.OpenReader(&w)
	require.NoError(t, err)
	defer f.Close()
	scales, err := f.GetConditionalFormats("Stress")
	require.NoError(t, err)
	require.Len(t, scales, 4, "each figure is coloured")
}

// A lender sees none of it, whatever the command hands over.
func TestALenderSeesNoStress(t *testing.T) {
	a := answered(t, sentinels)
	b, err := made(a, Options{For: Lender, Stress: stressedOf(t, a)})
	require.NoError(t, err)
	require.Nil(t, sheetOf(b, "Stress"))
}

// A bad day says what it changes.
func TestBadDaysSayWhatTheyChange(t *testing.T) {
	text := twoLoans + "bad days: {soft market: {lead-in: +2 months, sale price: -6%}}\n"
	a := answered(t, text)
	across, _ := a.Plan.UsualAcross(stress.LateWorks)
	study, err := a.Plan.Study(across, a.Plan.UsualDown())
	require.NoError(t, err)
	b, err := made(a, Options{Stress: &Stressed{Study: study}})
	require.NoError(t, err)
	all := strings.Join(texts(sheetOf(b, "Stress")), "\n")
	require.Regexp(t, `soft market: .*lead-in \+2 months.*sale price -6%`, all)
}
