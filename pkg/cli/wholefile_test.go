package cli

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// A file is written over through a link: what it leads to changes, and the link stays one.
func TestOverwriteFollowsALink(t *testing.T) {
	dir := t.TempDir()
	to, link := filepath.Join(dir, "to.xlsx"), filepath.Join(dir, "link.xlsx")
	require.NoError(t, os.WriteFile(to, []byte("old"), 0o600))
	if err := os.Symlink(to, link); err != nil {
		t.Skip(err)
	}
	require.NoError(t, overwrite(link, "new"))
	text, err := os.ReadFile(to)
	require.NoError(t, err)
	require.Equal(t, "new", string(text))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&os.ModeSymlink)
}

// A place where no file can be made is not said to lack one.
func TestNoFileCanBeWrittenThere(t *testing.T) {
	if missing("/proc/self") {
		t.Skip("there is no such place")
	}
	require.ErrorContains(t, writeNew("/proc/x.xlsx", "x"), "no file can be written there")
	require.ErrorContains(t, overwrite("/proc/x.xlsx", "x"), "no file can be written there")
}

// Devices that swallow or refuse all are no terminals.
func TestDevicesAreNoTerminals(t *testing.T) {
	for _, name := range []string{os.DevNull, "/dev/full"} {
		if missing(name) {
			continue
		}
		f, err := os.OpenFile(name, os.O_WRONLY, 0)
		require.NoError(t, err)
		require.False(t, terminal(f), name)
		require.NoError(t, f.Close())
	}
}
