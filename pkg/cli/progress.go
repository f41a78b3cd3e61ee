package cli

import (
	"fmt"
	"strings"
	"time"
)

// soon is how long nothing is said of how far a command has come.
const soon = time.Second

// A progress says on a terminal how far a command has come, once it takes long.
type progress struct {
	Streams
	done, all int
	began     time.Time
	said      time.Time
}

func newProgress(s Streams, all int) *progress {
	return &progress{Streams: s, all: all, began: time.Now()}
}

// add counts what is done.
func (p *progress) add(n int) {
	p.done += n
	now := time.Now()
	if !p.ErrTerminal || now.Sub(p.began) < soon || now.Sub(p.said) < soon/10 {
		return
	}
	p.said = now
	fmt.Fprintf(p.Err, "\r%s", bar(p.done, p.all))
}

// clear takes the bar away.
func (p *progress) clear() {
	if !p.said.IsZero() {
		fmt.Fprintf(p.Err, "\r%s\r", strings.Repeat(" ", len(bar(p.all, p.all))))
	}
}

const barWidth = 40

// bar is a bar of what is done.
func bar(done, all int) string {
	n := min(barWidth, done*barWidth/max(1, all))
	return fmt.Sprintf("[%s%s] %3d%%", strings.Repeat("#", n), strings.Repeat(".", barWidth-n), min(100, done*100/max(1, all)))
}
