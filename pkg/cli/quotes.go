package cli

import (
	"fmt"
	"path/filepath"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// newBook is what the book that comes of quotes is called in places.
const newBook = "the new price book"

// quotes reads a table of quotes and writes a price book that holds them; own is the
// text of the book that they are added to, "" for none. Nothing is written where there
// is a mistake.
func (o *pricesOptions) quotes(book *pricebook.Book, own string) error {
	if o.from == "-" && o.book == "-" {
		return &usageError{fmt.Errorf("--from and --book are both standard input"), "name a file for one of them"}
	}
	name, table, err := o.text(o.from)
	if err != nil {
		return err
	}
	quotes, ignored, found, sources := readQuotes(name, table, book)
	if found.HasErrors() { // rows that were passed over say where else their amounts go
		if err := diag.Render(o.Err, found.Warnings(), sources); err != nil {
			return err
		}
		return o.mistakes(name, found, sources)
	}
	told := ""
	if o.from != "-" {
		told = filepath.Base(o.from)
	}
	text, changed, err := pricebook.LayQuotes(own, quotes, book, told)
	if err != nil {
		return err
	}
	if own == "" {
		text = heading(changed, o.output.file) + text
	}
	laid, wrong := deal.OwnBook(newBook, []byte(text))
	if laid == nil {
		return o.mistakes(newBook, wrong, map[string]string{newBook: text})
	}
	o.files = []string{o.from} // the book may be written over: it is in what is written
	if err := o.write(&o.common, text); err != nil {
		return err
	}
	if err := diag.Render(o.Err, append(found, wrong...), sources); err != nil {
		return err
	}
	if len(ignored) > 0 {
		tell(o.Err, "not read, as a price book has no such column: %s", strings.Join(ignored, ", "))
	}
	tell(o.Err, "%s read; %s of the price book changed", quantity.Counted(len(quotes), "quote"), quantity.Counted(changed, "entry"))
	for _, c := range pricebook.Changes(quotes, book, laid) {
		o.tellChange(c)
	}
	return nil
}

// readQuotes reads quotes out of a workbook or a CSV, with the texts that places are in.
func readQuotes(name string, table []byte, book *pricebook.Book) ([]pricebook.Quote, []string, diag.List, map[string]string) {
	if pricebook.IsWorkbook(name, table) {
		quotes, ignored, found := pricebook.ReadWorkbook(name, table, book)
		return quotes, ignored, found, nil
	}
	quotes, ignored, found := pricebook.ReadQuotes(name, string(table), book)
	return quotes, ignored, found, map[string]string{name: string(table)}
}

// tellChange says what one thing cost before and costs now, and what is odd about it.
func (o *pricesOptions) tellChange(c pricebook.Change) {
	say := func(indent, text string) { fmt.Fprint(o.Err, diag.Fold(indent, indent+"    ", text)) }
	for _, line := range c.Lines {
		say("  ", line)
	}
	if c.Far != "" {
		say("    ", "doubtful: "+c.Far)
	}
	switch n := len(c.Alike); {
	case n == 1:
		say("    ", "this is work; the product is "+c.Alike[0])
	case n > 1:
		say("    ", "this is work; products are "+strings.Join(c.Alike[:min(n, 3)], ", "))
	}
}

// heading is what stands above a new book of quotes, which is written to a file, or to - .
func heading(changed int, file string) string {
	if changed == 0 {
		return "# No quote differs from the price book.\n"
	}
	name := "mine.yaml"
	if file != "-" {
		name = plainYAML(filepath.Base(file))
	}
	return "# Prices laid over the starter book. A deal file names this file:   own book: " + name + "\n# What an entry does not say is taken from the starter book's entry of its name.\n"
}
