package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// An Input is something of a deal that may come out otherwise than planned.
type Input struct {
	Path   string // as --set and ranges name it
	Kind   Kind   // how its values are written
	Member *model.Member
	Line   string
	per    string // how the values of a charge are written behind the amount, as in /year
	reads  *Field // how its values are read; nil for a charge
	key    string // what it is read from, such as loans[1].rate; "" for one that a plan has no key for
	form   charge // that of a charge
}

// A Range is how far an input may come out from the plan, as the file says it.
type Range struct {
	Input
	Low, Likely, High decimal.Decimal // Likely is the plan's where the file says none
	Means, Spread     string          // the words of the file or their defaults
	Cases             []Case          // instead of low, likely and high
	Pos               diag.Pos
	Moved             decimal.Decimal // in dollars, with the value, for another scope than the file's; 0 for none
	title             string          // what a figure of it is called, if not by its key
	sign              string          // what stands before a figure of it, such as the + of what is added
}

// A Case is one of a few values that an input may have, and how much it weighs.
type Case struct{ Value, Weight decimal.Decimal }

// A Tie is the rank correlation of two inputs.
type Tie struct {
	A, B Input
	Rho  decimal.Decimal
	Pos  diag.Pos
}

// Is reports whether both are the same input.
func (i Input) Is(o Input) bool { return i.Member == o.Member && i.Line == o.Line }

// Limits are the least and the most that the file would take for the input, nil for none.
func (i Input) Limits() (least, most *decimal.Decimal) {
	accepts := kindRanges[i.Kind]
	if i.reads != nil {
		accepts = i.reads.accepts()
	}
	for _, l := range limits(i.Kind, accepts) {
		if l.least {
			least = &l.edge
		} else {
			most = &l.edge
		}
	}
	if least == nil {
		least = &decimal.Zero
	}
	return least, most
}

// smallDollars is under what an amount is written with its cents.
var smallDollars = decimal.NewFromInt(100)

// Says writes a value of the input as the file would, of dollars the cents where they are few.
func (i Input) Says(x decimal.Decimal) string {
	if i.inDollars() && x.Abs().LessThan(smallDollars) {
		return i.SaysCents(x)
	}
	return i.says(x)
}

// NoneAtZero reports whether a plan with 0 of the input has none of it: a cap, a term, a limit.
func (i Input) NoneAtZero() bool {
	return i.reads != nil && i.reads.refusesNothing()
}

// SaysCents is Says with the cents of any amount.
func (i Input) SaysCents(x decimal.Decimal) string {
	cents := x.Round(9).Round(2)
	if !i.inDollars() || cents.IsInteger() {
		return i.says(x)
	}
	said := quantity.FormatMoney(cents)
	if i.Kind == HourRate {
		said += "/hour"
	}
	return said + i.per
}

func (i Input) inDollars() bool { return i.Kind == Money || i.Kind == HourRate }

func (i Input) says(x decimal.Decimal) string {
	if x.IsZero() && i.NoneAtZero() {
		return "none"
	}
	if i.Kind == Duration || i.Kind == Hours {
		return timeInWords(x, i.Kind)
	}
	return numberInWords(x, i.Kind) + i.per
}

func timeInWords(x decimal.Decimal, k Kind) string {
	switch {
	case k == Hours:
		return quantity.FormatHours(x, 1)
	case x.IsZero():
		return "none"
	}
	return quantity.FormatMonths(x, 1)
}

// InputNamed is an input of the deal itself by its key or the name that ranges have for it,
// such as overrun.
func (d *Deal) InputNamed(path string) (Input, bool) {
	f := besides(path)
	for row := range rows() {
		if row.Path == path {
			f = row
		}
	}
	if f == nil || len(f.feeds()) != 1 {
		return Input{}, false
	}
	return Input{Path: f.Path, Kind: f.Kind, Member: d.Root, Line: f.Line, reads: f}, true
}

// besideRows are inputs that a plan has no key for, since what it says of them is that
// nothing goes wrong. Never written to.
var besideRows = []Field{
	{Path: "overrun", Kind: Percent, Line: "overrun", Range: "at least -50%, at most 300%", Example: "15%"},
	{Path: "extra work", Kind: Money, Line: "extra_work", Example: "$8,000"},
	{Path: "late sale", Kind: Duration, Line: "late_sale", Example: "2 months"},
	{Path: "sale price", Kind: Money, Line: "sale_price", Range: "at least $1,000, at most $1,000 million", Example: "$352k"},
}

// besideFigures are examples of figures to look at beside each other.
var besideFigures = map[string]string{"overrun": "15%, 30%", "extra work": "$0, $8,000", "late sale": "1 month, 3 months", "sale price": "$340k, $352k"}

func besides(name string) *Field {
	for i := range besideRows {
		if besideRows[i].Path == name {
			return &besideRows[i]
		}
	}
	return nil
}

// Key is what the input is called where it stands: rate, property tax.
func (i Input) Key() string { return i.Path[strings.LastIndexByte(i.Path, '.')+1:] }
