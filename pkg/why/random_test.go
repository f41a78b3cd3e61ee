package why_test

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/why"
)

func TestEveryFigureOfRandomDealsFollowsFromItsTerms(t *testing.T) {
	modeltest.Check(t, 200, func(t *rapid.T) {
		m, v := evaluate(t, modeltest.Random(t).Deal)
		require.NoError(t, why.CheckAll(m, v))
	})
}

func TestRandomDealsPrintWithinTheWidth(t *testing.T) {
	modeltest.Check(t, 100, func(t *rapid.T) {
		m, v := evaluate(t, modeltest.Random(t).Deal)
		c := rapid.SampledFrom(m.Cells).Draw(t, "cell")
		var b bytes.Buffer
		x := why.Explain(m, v, c, rapid.IntRange(0, v.Months()).Draw(t, "month"))
		require.NoError(t, x.Write(&b, why.Options{Depth: 3}))
		for line := range strings.SplitSeq(b.String(), "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(line), 80, "%s\n%s", line, b.String())
		}
	})
}
