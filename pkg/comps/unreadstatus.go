package comps

import (
	"cmp"
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// offersIn is a column that is not read and of which all cells so far tell where a sale stands, as
// lists write it.
type offersIn struct {
	head     diag.Pos
	at, rows int    // the column, and how many sales it says were only offered
	first    string // of them
}

// lookForStatus begins to watch the columns that are not read for words of where a sale stands: one
// that was only offered must not count in silence.
func (r *reader) lookForStatus() {
	for at, h := range r.headers {
		if strings.TrimSpace(h) != "" && !slices.ContainsFunc(r.columns, func(c column) bool { return c.at == at }) {
			r.offers = append(r.offers, offersIn{head: r.header(at), at: at})
		}
	}
}

// seeStatus looks at the row in hand, and gives up a column that says anything else.
func (r *reader) seeStatus() {
	kept := r.offers[:0]
	for _, o := range r.offers {
		cell := ""
		if o.at < len(r.record) {
			cell = strings.TrimSpace(r.record[o.at])
		}
		switch said := evenedOut(cell); {
		case isOffered(said):
			o.rows, o.first = o.rows+1, cmp.Or(o.first, cell)
		case said != "" && !slices.Contains(closedWords, said):
			continue
		}
		kept = append(kept, o)
	}
	r.offers = kept
}

func isOffered(said string) bool { return shortlyOffered(said) || termsFlag(said).Has(NotSold) }

// tellStatus doubts columns that are not read and say of sales that they were only offered.
func (r *reader) tellStatus() {
	for _, o := range r.offers {
		if o.rows == 0 {
			continue
		}
		name := strings.TrimSpace(r.headers[o.at])
		says := map[bool]string{true: "says", false: "say"}[o.rows == 1]
		r.found.Add(diag.Warnf(o.head, "columns-unread", "%s is not read, and %s in it %s where a sale stands that may not have closed, as %s: all count as sold", diag.Quote(name), quantity.Counted(o.rows, "row"), says, diag.Quote(o.first)).
			WithHint("if that is so, say   columns: {status: %s}", diag.Quote(name)))
	}
}
