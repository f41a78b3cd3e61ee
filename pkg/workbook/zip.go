package workbook

import (
	"archive/zip"
	"bytes"
	"io"
	"io/fs"
	"maps"
	"regexp"
	"slices"

	"github.com/xuri/excelize/v2"
)

// A steadyZip writes its parts in the order of their names. The library hands sheets over
// in any order, and the same deal is to give the same file.
type steadyZip struct {
	zip   *zip.Writer
	parts map[string]*bytes.Buffer
}

func newSteadyZip(w io.Writer) excelize.ZipWriter {
	return &steadyZip{zip.NewWriter(w), map[string]*bytes.Buffer{}}
}

// Create starts a part.
func (z *steadyZip) Create(name string) (io.Writer, error) {
	part := &bytes.Buffer{}
	z.parts[name] = part
	return part, nil
}

// AddFS adds files, as the library may ask.
func (z *steadyZip) AddFS(f fs.FS) error { return z.zip.AddFS(f) }

// Close writes all parts.
func (z *steadyZip) Close() error {
	for _, name := range slices.Sorted(maps.Keys(z.parts)) {
		content := z.parts[name].Bytes()
		if name == contentTypes {
			content = inOrder(content)
		}
		w, err := z.zip.Create(name)
		if err != nil {
			return err
		}
		if _, err := w.Write(content); err != nil {
			return err
		}
	}
	return z.zip.Close()
}

// contentTypes is the part that lists the kinds of all others.
const contentTypes = "[Content_Types].xml"

var defaultKind = regexp.MustCompile(`<Default [^>]*></Default>`)

// inOrder sorts the kinds by file name extension, which come in any order too.
func inOrder(text []byte) []byte {
	sorted := defaultKind.FindAll(text, -1)
	slices.SortFunc(sorted, bytes.Compare)
	i := -1
	return defaultKind.ReplaceAllFunc(text, func([]byte) []byte {
		i++
		return sorted[i]
	})
}
