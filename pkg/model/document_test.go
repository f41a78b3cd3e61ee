package model

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestStandardDocumentIsSound(t *testing.T) {
	_, err := Parse(standardSources()...)
	require.NoError(t, err)
}

func BenchmarkReadStandardDocument(b *testing.B) {
	for b.Loop() {
		Parse(standardSources()...)
	}
}
