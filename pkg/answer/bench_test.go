package answer

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

func BenchmarkAnswer(b *testing.B) {
	const path = "../../scenarios/juniper-lane.yaml"
	text, err := os.ReadFile(path)
	require.NoError(b, err)
	for b.Loop() {
		d, found := deal.Read(path, text)
		require.NotNil(b, d)
		_, err := Of(d, found)
		require.NoError(b, err)
	}
}
