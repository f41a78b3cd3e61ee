package pricebook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"
)

// What of a workbook is read at most. A form for the largest house has a few hundred rows
// of thirteen cells; beyond these limits it is some other file.
const (
	mostWorkbook = 4 << 20  // bytes of the file
	mostUnzipped = 24 << 20 // bytes of its parts together
	mostParts    = 400
	mostElements = 600_000 // of XML in all parts
	mostRows     = 3000
	mostColumns  = 100
)

// A refusal is why a workbook is not read, and what would do.
type refusal struct{ why, instead string }

func (r *refusal) Error() string { return r.why }

func refuse(instead, format string, args ...any) error {
	return &refusal{fmt.Sprintf(format, args...), instead}
}

const (
	plainCopy = "copy the table of quotes alone into a new workbook and save it as .xlsx"
	asXLSX    = "save it as .xlsx, without a password"
	anewXLSX  = "save it again as .xlsx"
	namedXLSX = "open it in a spreadsheet program and save it as .xlsx; its name alone does not make it one"
)

// IsWorkbook reports whether a file is a spreadsheet file rather than text, or means to be
// by its name: a zip archive, or the older kind, which is also how one with a password is
// kept.
func IsWorkbook(name string, data []byte) bool {
	return strings.EqualFold(path.Ext(name), ".xlsx") || bytes.HasPrefix(data, []byte("PK\x03\x04")) || bytes.HasPrefix(data, ole)
}

var ole = []byte{0xD0, 0xCF, 0x11, 0xE0}

// gate refuses a workbook that would take long or much memory to read, or brings programs
// along, before anything takes it apart. It looks at what is there, not at what the file
// says about itself. What comes back is the workbook without the empty rows and cells far
// out that some programs write.
func gate(data []byte) ([]byte, error) {
	switch {
	case len(data) > mostWorkbook:
		return nil, refuse(plainCopy, "the workbook has more than the %d MB that are read", mostWorkbook>>20)
	case bytes.HasPrefix(data, ole):
		return nil, refuse(asXLSX, "it is a workbook of the older kind, or one with a password")
	case len(data) == 0:
		return nil, refuse(anewXLSX, "it is no .xlsx file: it is empty")
	case !bytes.HasPrefix(data, []byte("PK")): // as every archive does
		return nil, refuse(namedXLSX, "it is no .xlsx file, whatever its name says")
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, refuse(anewXLSX, "it is no sound workbook: the file is cut off or damaged")
	}
	if len(z.File) > mostParts {
		return nil, refuse(plainCopy, "the workbook has %d parts, more than the %d that are read", len(z.File), mostParts)
	}
	seen := map[string]bool{}
	spare := map[string][]span{}
	left, elements := int64(mostUnzipped), mostElements
	texts := &sharedTexts{}
	for _, f := range z.File {
		name := strings.ToLower(strings.ReplaceAll(f.Name, `\`, "/"))
		switch {
		case seen[name]:
			return nil, refuse(plainCopy, "the workbook has two parts of the name %q", f.Name)
		case strings.Contains(name, "vbaproject") || strings.Contains(name, "macrosheets/") || strings.Contains(name, "dialogsheets/") || strings.HasSuffix(name, ".bin") && strings.Contains(name, "vba"):
			return nil, refuse("save it as .xlsx, which has no macros", "the workbook holds macros, which are not read")
		}
		seen[name] = true
		cuts, err := gatePart(f, &left, &elements, texts)
		if err != nil {
			return nil, err
		}
		if len(cuts) > 0 {
			spare[f.Name] = cuts
		}
	}
	if !seen["[content_types].xml"] || !seen["xl/workbook.xml"] {
		return nil, refuse(asXLSX, "it is an archive, but no workbook")
	}
	if err := texts.sound(); err != nil {
		return nil, err
	}
	return without(z, data, spare)
}

func gatePart(f *zip.File, left *int64, elements *int, texts *sharedTexts) (cuts []span, err error) {
	damaged := refuse(anewXLSX, "it is no sound workbook: its part %q is damaged", f.Name)
	r, err := f.Open()
	if err != nil {
		return nil, damaged
	}
	defer r.Close()
	limited := &io.LimitedReader{R: r, N: *left + 1}
	if name := strings.ToLower(f.Name); strings.HasSuffix(name, ".xml") || strings.HasSuffix(name, ".rels") {
		cuts, err = gateXML(strings.ReplaceAll(name, `\`, "/"), limited, elements, texts)
	}
	if err == nil {
		_, err = io.Copy(io.Discard, limited)
	}
	*left -= *left + 1 - limited.N
	var no *refusal
	switch {
	case *left < 0:
		return nil, refuse(plainCopy, "the workbook unpacks to more than the %d MB that are read", mostUnzipped>>20)
	case errors.As(err, &no):
		return nil, err
	case err != nil:
		return nil, damaged
	}
	return cuts, nil
}

// gateXML goes through a part without keeping it, and finds what is empty far out.
func gateXML(part string, r io.Reader, elements *int, texts *sharedTexts) (cuts []span, err error) {
	d := xml.NewDecoder(r)
	depth := 0
	out := farOut{}
	for {
		from := d.InputOffset()
		token, err := d.RawToken()
		if errors.Is(err, io.EOF) && depth > 0 {
			return nil, io.ErrUnexpectedEOF
		}
		if errors.Is(err, io.EOF) {
			return out.cuts, nil
		}
		if err != nil {
			return nil, err
		}
		switch t := token.(type) {
		case xml.Directive:
			return nil, refuse(plainCopy, "the workbook brings definitions of its own along, which are not read")
		case xml.EndElement:
			out.end(depth, d.InputOffset())
			depth--
			if err := texts.end(); err != nil {
				return nil, err
			}
		case xml.CharData:
			texts.text(t)
		case xml.StartElement:
			if depth++; depth > 200 {
				return nil, refuse(plainCopy, "the workbook is nested deeper than is read")
			}
			if *elements--; *elements < 0 {
				return nil, refuse(plainCopy, "the workbook has more cells than are read")
			}
			if err := out.begin(t, depth, from); err != nil {
				return nil, err
			}
			if err := texts.begin(part, t, depth); err != nil {
				return nil, err
			}
			if hasMacros(t) {
				return nil, refuse("save it as .xlsx, which has no macros", "the workbook is of the kind with macros, which are not read")
			}
		}
	}
}

// hasMacros reports whether an element says that the workbook is of the kind with macros.
func hasMacros(t xml.StartElement) bool {
	return t.Name.Local == "Override" && slices.ContainsFunc(t.Attr, func(a xml.Attr) bool {
		return a.Name.Local == "ContentType" && strings.Contains(strings.ToLower(a.Value), "macroenabled")
	})
}
