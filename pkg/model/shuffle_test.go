package model_test

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// blocks cuts the rows of the standard document into its sets, in order, and its
// lines with what is indented under them.
func blocks(t *testing.T) (sets string, lines []string) {
	block := regexp.MustCompile(`(?m)^[a-z_0-9]+ +\|.*\n(?:  .*\n)*`)
	rows := os.DirFS("document")
	files, err := fs.Glob(rows, "*.txt")
	require.NoError(t, err)
	for _, f := range files {
		text, err := fs.ReadFile(rows, f)
		require.NoError(t, err)
		for _, s := range regexp.MustCompile(`(?m)^(?:still )?set .*\n`).FindAllString(string(text), -1) {
			sets += s
		}
		lines = append(lines, block.FindAllString(string(text), -1)...)
	}
	return sets, lines
}

// every is the worth of every cell, by its name, in order of names.
func every(t *testing.T, doc *model.Document, d *model.Member) map[string]string {
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	out := map[string]string{}
	for _, c := range m.Cells {
		name := fmt.Sprintf("%s %s", c.Name(), c.Line.ID())
		if c.Line.Monthly {
			out[name] = fmt.Sprint(v.ByMonth(c))
		} else {
			out[name] = v.Of(c).String()
		}
	}
	return out
}

func TestShuffledRowsChangeNoValue(t *testing.T) {
	sets, lines := blocks(t)
	doc, err := model.Standard()
	require.NoError(t, err)
	require.Len(t, lines, len(doc.Lines), "every line is found")
	for seed := range uint64(4) {
		r := rand.New(rand.NewPCG(seed, 0))
		r.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
		text := sets
		for _, l := range lines {
			text += l
		}
		shuffled, err := model.Parse(model.Source{Name: "shuffled", Text: text})
		require.NoError(t, err)
		for _, w := range worked(t) {
			require.Equal(t, every(t, doc, w.Deal.Member()), every(t, shuffled, w.Deal.Member()), "seed %d: %s", seed, w.About)
		}
	}
}
