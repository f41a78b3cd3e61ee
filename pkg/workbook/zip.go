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

	"ledgerboard/pkg/internal/together"
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

// Close writes all parts. Each is packed as an archive of its own first, side by side with
// the others.
func (z *steadyZip) Close() error {
	names := slices.Sorted(maps.Keys(z.parts))
	packed := make([]bytes.Buffer, len(names))
	var packing []func() error
	for i, name := range names {
		packing = append(packing, func() error {
			content := z.parts[name].Bytes()
			if name == contentTypes {
				content = inOrder(content)
			}
			return packPart(&packed[i], name, content)
		})
	}
	if err := together.Run(packing...); err != nil {
		return err
	}
	for i := range packed {
		alone, err := zip.NewReader(bytes.NewReader(packed[i].Bytes()), int64(packed[i].Len()))
		if err != nil {
			return err
		}
		if err := z.zip.Copy(alone.File[0]); err != nil {
			return err
		}
	}
	return z.zip.Close()
}

func packPart(to io.Writer, name string, content []byte) error {
	alone := zip.NewWriter(to)
	alone.RegisterCompressor(zip.Deflate, quickly)
	w, err := alone.Create(name)
	if err != nil {
		return err
	}
	if _, err := w.Write(content); err != nil {
		return err
	}
	return alone.Close()
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
