package why_test

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/conform"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/why"
)

// Every figure of a deal follows from its terms.
func TestConforms(t *testing.T) {
	conform.Run(t, conform.Effort{Random: 200, Houses: 20, Times: 1}, func(t *rapid.T, d conform.Deal) {
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		require.NoError(t, why.CheckAll(d.Model, v))
	}, nil)
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
