package cli

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/report"
)

// pricesOptions are the options of prices.
type pricesOptions struct {
	common
	output
	book, from string
	csv, list  bool
}

func newPrices(s Streams) *cobra.Command {
	o := &pricesOptions{common: common{Streams: s}}
	cmd := &cobra.Command{
		Use:   "prices [WORDS...]",
		Short: "the price book: search it, show an entry, take quotes in",
		Long: `Example:

  ledgerboard prices                     trades and aisles, and how to search
  ledgerboard prices tile floor          what has both words in it
  ledgerboard prices porcelain floor tile
  ledgerboard prices --csv -o prices.csv
  ledgerboard prices --from quotes.csv -o mine.yaml

Searches the items of work and the products of the price book: all words, or
other common names of the same things, must occur in the name, the line of work,
the trade or the aisle. Where the words are the name of one, or fit one alone,
it is shown whole, with the source of each figure and how to override it.

--csv writes all prices as a table for a spreadsheet. --from reads a table of
quotes, with the columns name and price and, if wanted, pack, dated and source,
and writes a price book of your own that lays them over the starter book; name
it in the deal file (own book: mine.yaml). With --book, they are added to that
book. A workbook (.xlsx) with such a table, or a form for bids that came back
filled in, is read the same way.

--json writes one object: schema, items and products, with decimals as strings.`,
		RunE: func(_ *cobra.Command, args []string) error { return runPrices(o, strings.Join(args, " ")) },
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			b := pricebook.Starter()
			return append(b.Items(), b.Products()...), cobra.ShellCompDirectiveNoFileComp
		},
	}
	o.looks(cmd)
	cmd.Flags().StringVar(&o.book, "book", "", "a price book of your own, `file`, laid over the starter book")
	cmd.Flags().BoolVar(&o.list, "list", false, "list what has the words, also where they are a name")
	cmd.Flags().BoolVar(&o.csv, "csv", false, "write all prices as CSV")
	cmd.Flags().StringVar(&o.from, "from", "", "read quotes from a `file`, CSV or .xlsx, into an own book")
	o.output.flags(cmd, "-", "write to a `file` instead of standard output")
	return cmd
}

func runPrices(o *pricesOptions, words string) error {
	if err := o.together(words); err != nil {
		return err
	}
	style, err := o.style()
	if err != nil {
		return err
	}
	book, own, err := o.laid()
	if err != nil {
		return err
	}
	var out bytes.Buffer
	switch {
	case o.from != "":
		return o.quotes(book, own)
	case o.csv:
		err = pricebook.WriteTable(&out, book)
	default:
		err = o.page(&out, book, words, style)
	}
	if err != nil {
		return err
	}
	return o.write(&o.common, out.String())
}

// together refuses options that say two things.
func (o *pricesOptions) together(words string) error {
	asked := 0
	for _, x := range []bool{o.csv, o.from != "", o.json} {
		if x {
			asked++
		}
	}
	switch {
	case asked > 1:
		return &usageError{errors.New("--csv, --from and --json each write something else"), "give one of them"}
	case words != "" && (o.csv || o.from != ""):
		return &usageError{fmt.Errorf("--csv and --from take no words, but %q is given", words), "leave the words out"}
	case o.force && o.file == "-":
		return &usageError{errors.New("--force is for a file"), "name it with   -o mine.yaml"}
	}
	return nil
}

// laid is the starter book, or the owner's over it with its text.
func (o *pricesOptions) laid() (*pricebook.Book, string, error) {
	if o.book == "" {
		return pricebook.Starter(), "", nil
	}
	name, text, err := o.text(o.book)
	if err != nil {
		return nil, "", err
	}
	book, found := deal.OwnBook(name, text)
	if book == nil {
		return nil, "", o.mistakes(name, found, map[string]string{name: string(text)})
	}
	return book, string(text), nil
}

// page writes what the words find, or what there is.
func (o *pricesOptions) page(out *bytes.Buffer, book *pricebook.Book, words string, style report.Style) error {
	if words == "" && !o.json && !o.list {
		return report.Prices(out, book, style)
	}
	products, items := book.Search(words)
	if product, item := book.Named(words); !o.list && (product != nil || item != nil) {
		products, items = nil, nil
		if product != nil {
			products = []string{product.Name}
		}
		if item != nil {
			items = []string{item.Name}
		}
	}
	switch {
	case len(products)+len(items) == 0:
		return nothingFound(book, words)
	case o.json:
		return report.PricesJSON(out, book, products, items)
	case o.list || len(products)+len(items) > 1:
		return report.Found(out, book, products, items, style)
	case len(items) == 1:
		return report.ItemPage(out, book, book.Item(items[0]), style)
	}
	return report.ProductPage(out, book, book.Product(products[0]), style)
}

func nothingFound(book *pricebook.Book, words string) error {
	e := &usageError{fmt.Errorf("nothing in the price book has %q", words), "ledgerboard prices   lists the trades and aisles"}
	if near := book.Near(words); len(near) > 0 {
		e.hint = "the nearest names: " + strings.Join(near, ", ")
	}
	return e
}
