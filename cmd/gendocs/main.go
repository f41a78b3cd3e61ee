// Gendocs writes what is generated in docs: the lines of the model, the keys of
// the deal file and its schema, the cautions, the errors, the commands, and the
// tables of the price book and of measuring. It writes no dates and no paths, so the
// same sources give the same bytes.
//
//	go run ./cmd/gendocs
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	root := flag.String("root", ".", "the directory that holds docs and testdata")
	flag.Parse()
	if err := write(*root); err != nil {
		fmt.Fprintln(os.Stderr, "gendocs: error:", err)
		os.Exit(1)
	}
}

// A page is a generated file, by its name in docs.
type page struct {
	name string
	text string
}

// pages makes all of them. The hand-written part of a page is read from root.
func pages(root string) ([]page, error) {
	var out []page
	for _, make := range []struct {
		name string
		text func(root string) (string, error)
	}{
		{"lines.md", linesPage},
		{"deal-file.md", dealFilePage},
		{"deal.schema.json", schemaPage},
		{"cautions.md", cautionsPage},
		{"errors.md", errorsPage},
		{"commands.md", commandsPage},
		{"price-book.md", priceBookPage},
		{"measuring.md", measuringPage},
	} {
		text, err := make.text(root)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", make.name, err)
		}
		out = append(out, page{make.name, text})
	}
	return out, nil
}

func write(root string) error {
	all, err := pages(root)
	if err != nil {
		return err
	}
	for _, p := range all {
		if err := os.WriteFile(filepath.Join(root, "docs", p.name), []byte(p.text), 0o644); err != nil {
			return err
		}
	}
	return nil
}
