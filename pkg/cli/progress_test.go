package cli

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestProgressShowsOnceItTakesLong(t *testing.T) {
	var wrong bytes.Buffer
	p := newProgress(Streams{Err: &wrong, ErrTerminal: true}, 1000)
	p.add(100)
	require.Empty(t, wrong.String(), "not at once")
	p.began = time.Now().Add(-2 * soon)
	p.add(150)
	require.Equal(t, "\r["+strings.Repeat("#", 10)+strings.Repeat(".", 30)+"]  25%", wrong.String())
	p.add(150)
	require.Equal(t, 1, strings.Count(wrong.String(), "\r"), "ten times a second at most")
	p.clear()
	require.True(t, strings.HasSuffix(wrong.String(), "\r"+strings.Repeat(" ", 47)+"\r"))
}

func TestNoProgressWithoutATerminal(t *testing.T) {
	var wrong bytes.Buffer
	p := newProgress(Streams{Err: &wrong}, 1000)
	p.began = time.Now().Add(-2 * soon)
	p.add(500)
	p.clear()
	require.Empty(t, wrong.String())
}
