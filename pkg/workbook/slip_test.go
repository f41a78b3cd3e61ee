package workbook

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// A typed is an input that is typed over, with the flaw that the sheet is to say of it: one of the
// member that is called so; without a label one of the deal, or the first of its set, as section.length.
type typed struct {
	label, line string
	value       any
	says        string
}

// typeAll types inputs over, and returns what is to be said of them, by place.
func (b *book) typeAll(t *testing.T, inputs ...typed) map[string]string {
	says := map[string]string{}
	for _, x := range inputs {
		switch {
		case x.label == "" && strings.Contains(x.line, "."):
			says[b.typeIn(t, x.line, x.value)] = x.says
		case x.label == "":
			says[b.typeOf(t, b.model.Root.Label, x.line, x.value)] = x.says
		default:
			says[b.typeOf(t, x.label, x.line, x.value)] = x.says
		}
	}
	return says
}

// typedOver are workbooks with inputs typed over.
type typedOver struct {
	paths []string // in the order in which they were added
	says  map[string]map[string]string
}

// add adds a workbook under a name of its own, and types inputs over in it.
func (o *typedOver) add(t *testing.T, name string, b *book, inputs ...typed) {
	if o.says == nil {
		o.says = map[string]map[string]string{}
	}
	path := filepath.Join(t.TempDir(), name+".xlsx")
	o.says[path] = b.typeAll(t, inputs...)
	saved(t, path, b)
	o.paths = append(o.paths, path)
}

// recomputed are the workbooks worked out anew, by path, in which the flaws are as they are to be.
func (o *typedOver) recomputed(t *testing.T) map[string]*excelize.File {
	files := recomputed(t, o.paths...)
	for path, f := range files {
		for place, want := range o.says[path] {
			require.Equal(t, want, flawAt(t, f, place), "%s: %s", path, place)
		}
	}
	return files
}
