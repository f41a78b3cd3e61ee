package workbook

import (
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
)

// Options say what a workbook is for.
type Options struct {
	For      Reader
	Uncached bool            // formulas without their values, to be worked out anew
	Columns  []answer.Column // other deals to set beside this one; none for no such page
	Stress   *Stressed       // how bad the deal can get, for the owner alone; nil for no such page
	// Trade makes it a form for that trade to fill in: what it is to do and how much of
	// it, without a price. BlankPrices makes it such a form of the whole job.
	Trade       string
	BlankPrices bool
}

// A Reader is whom a workbook is for.
type Reader int

// The owner sees all; a lender sees nothing of her targets, offers, own wage and tax.
const (
	Owner Reader = iota
	Lender
)

// A book is a workbook while it is made.
type book struct {
	answer *answer.Answer
	model  *model.Model
	how    Options
	file   *excelize.File
	styles map[look]int
	err    error

	last      int // the last month that there is room for
	places    []place
	fixedness []fixedness
	pages     []*grid // in front
	grids     []*grid // behind them
	inputs    *grid
	months    *grid
	workings  map[reading]place
	read      []bool                     // the cells that some formula reads, by their index
	named     map[string][]*model.Member // by what they are called, in the order of the sheets

	hiddenNames map[string]bool

	workingGrid *grid
	soundAt     string // the condition that inputs can be so
	stood       string // the condition that no input has changed
	drawnAt     string // the condition that the weights of comparables rest on what they did
	conditions  []condition
	usableAt    string
	flaws       *flawList
	sums        map[string]string    // where the sums that quotes are held against stand, by what is added up
	red         *int                 // the look of what cannot be so, once there is some
	besides     map[int][]besideRule // by the index of the input
}

// more is how many months there is room for beyond the sale.
const more = 12

// Write writes the workbook of a deal that is answered. Nothing is written if there is
// an error.
func Write(w io.Writer, a *answer.Answer, how Options) error {
	b, err := made(a, how)
	if err != nil {
		return err
	}
	defer b.file.Close()
	if err := b.stream(); err != nil {
		return fmt.Errorf("workbook: %w", err)
	}
	_, err = b.file.WriteTo(w)
	return err
}

// made is the workbook of a deal with all its sheets, before it is written.
func made(a *answer.Answer, how Options) (*book, error) {
	if err := a.Values.Work(a.Model.Cells...); err != nil {
		return nil, err
	}
	b := newBook(a, how)
	if err := b.file.SetDefaultFont(face); err != nil { // columns are measured by it
		return nil, err
	}
	if how.Trade != "" || how.BlankPrices {
		if err := b.bidForm(); err != nil {
			b.file.Close()
			return nil, err
		}
	} else {
		b.fill(b.lay())
		b.front()
		b.idle()
	}
	for _, g := range b.all() {
		g.fit()
		g.rise()
	}
	return b, b.err
}

func newBook(a *answer.Answer, how Options) *book {
	return &book{
		answer: a, model: a.Model, how: how, file: excelize.NewFile(), styles: map[look]int{}, last: a.Values.Months() + more,
		places: make([]place, len(a.Model.Cells)), fixedness: make([]fixedness, len(a.Model.Cells)), workings: map[reading]place{}, besides: map[int][]besideRule{}, read: make([]bool, len(a.Model.Cells)), named: map[string][]*model.Member{}, sums: map[string]string{},
	}
}

// all are the sheets in their order.
func (b *book) all() []*grid { return append(b.pages[:len(b.pages):len(b.pages)], b.grids...) }

// page adds a page in front, behind those there are.
func (b *book) page(g *grid) *grid {
	b.pages = append(b.pages, g)
	return g
}

// sheet adds a sheet at the end.
func (b *book) sheet(g *grid) *grid {
	b.grids = append(b.grids, g)
	return g
}
