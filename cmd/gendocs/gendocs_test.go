package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

const root = "../.."

func TestDocsAreAsGenerated(t *testing.T) {
	all, err := pages(root)
	require.NoError(t, err)
	again, err := pages(root)
	require.NoError(t, err)
	require.Equal(t, all, again, "the same sources give the same bytes")
	here, err := filepath.Abs(root)
	require.NoError(t, err)
	for _, p := range all {
		have, err := os.ReadFile(filepath.Join(root, "docs", p.name))
		require.NoError(t, err)
		if string(have) != p.text {
			t.Errorf("docs/%s is not what is generated; run make docs and read the diff", p.name)
		}
		require.NotContains(t, p.text, here, "no path of the machine")
	}
}

func TestExcerptShowsALineUnderItsKeys(t *testing.T) {
	const text = "deal: a\nloans:\n  - name: one\n    rate: 5\n    points: 1 %\nvalue:\n  low: x\n"
	require.Equal(t, "loans:\n  - name: one\n    …\n    points: 1 %\n", excerpt(text, []int{5}))
	require.Equal(t, "deal: a\n…\nvalue:\n  low: x\n", excerpt(text, []int{1, 7}))
	require.Empty(t, excerpt(text, []int{0, 99}))
	require.Equal(t, "a\ufffdb\n", excerpt("a\x00b", []int{1}))
}

func TestExamplesAreFoundByTheirCode(t *testing.T) {
	dir := t.TempDir()
	errors := filepath.Join(dir, "testdata", "errors")
	require.NoError(t, os.MkdirAll(errors, 0o755))
	for name, text := range map[string]string{
		"bad-money-of-words.yaml": "a: 1\n", "bad-money-of-words.txt": "not the plainest\n",
		"bad-money.yaml": "purchase:\n  price: lots\n", "bad-money.txt": "bad-money.yaml:2:10: error: x\n",
		"sale-short.yaml": "b: 1\n", "sale-short.txt": "three\n",
		"several-at-once.yaml": "b: 1\n", "several-at-once.txt": "four\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(errors, name), []byte(text), 0o644))
	}
	text, err := errorsPage(dir)
	require.NoError(t, err)
	require.Contains(t, text, "## bad-money\n\nNot an amount of dollars.\n\n```yaml\npurchase:\n  price: lots\n```\n\n```text\nbad-money.yaml:2:10: error: x\n```\n\n## ")
	require.NotContains(t, text, "not the plainest")
	require.Contains(t, text, "# Doubts that only the results show\n\n## sale-short\n\n```text\nthree\n```\n\n# Several at once\n\n## several-at-once\n")
	require.NoError(t, os.Remove(filepath.Join(errors, "sale-short.yaml")))
	_, err = errorsPage(dir)
	require.ErrorIs(t, err, os.ErrNotExist)
}

func TestTheKeysNeedTheirMarkers(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "docs"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "docs", "deal-file.md"), []byte("nothing"), 0o644))
	_, err := dealFilePage(dir)
	require.ErrorIs(t, err, errNoMarkers)
}
