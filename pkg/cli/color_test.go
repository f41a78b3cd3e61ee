package cli_test

import (
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
)

// Colour adds its codes to a page and changes nothing else, on every page that knows it.
func TestColourOnlyColours(t *testing.T) {
	codes, blanks := regexp.MustCompile("\x1b\\[[0-9]*m"), regexp.MustCompile(" +\n")
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	for _, file := range files {
		for _, verb := range []string{"bid", "cash", "stress", "odds", "scope", "compare", "buy", "comps"} {
			plain, wrong, code := run(t, "", verb, file, "--color", "never")
			if code != 0 { // such as comps of a deal without sales
				require.NotEmpty(t, wrong)
				continue
			}
			coloured, _, _ := run(t, "", verb, file, "--color", "always")
			require.Regexp(t, codes, coloured, verb)
			require.Equal(t, plain, blanks.ReplaceAllString(codes.ReplaceAllString(coloured, ""), "\n"), "%s %s", verb, file)
		}
	}
}
