package cli

import (
	"fmt"
	"path/filepath"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/pricebook"
)

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
	quotes, ignored, found := pricebook.ReadQuotes(name, string(table), book)
	if found.HasErrors() {
		return o.mistakes(name, found, map[string]string{name: string(table)})
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
		text = heading(changed) + text
	}
	if laid, found := deal.OwnBook("the new price book", []byte(text)); laid == nil {
		return o.mistakes("the new price book", found, map[string]string{"the new price book": text})
	}
	if err := o.write(text); err != nil {
		return err
	}
	if len(ignored) > 0 {
		tell(o.Err, "not read, as a price book has no such column: %s", strings.Join(ignored, ", "))
	}
	tell(o.Err, "%s read; %s of the price book changed", count(len(quotes), "quote"), entries(changed))
	return nil
}

// heading is what stands above a new book of quotes.
func heading(changed int) string {
	if changed == 0 {
		return "# No quote differs from the price book.\n"
	}
	return "# Prices laid over the starter book. A deal file names this file:   own book: mine.yaml\n# What an entry does not say is taken from the starter book's entry of its name.\n"
}

func entries(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return fmt.Sprintf("%d entries", n)
}
