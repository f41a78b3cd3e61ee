package deal

import (
	"maps"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// A Deal is a deal file, read.
type Deal struct {
	Name, Notes, Address string
	YearBuilt, Units     int           // 0 if unknown
	UtilitiesOff         bool          // at the visit
	PurchaseDate         quantity.Date // zero if unknown
	// DepositRefundableUntil is the last day on which the earnest deposit comes
	// back; zero if unknown.
	DepositRefundableUntil quantity.Date
	// Insured, VacantInsured and Permitted say whether a line names insurance,
	// cover for a vacant house or one under work, and a permit.
	Insured, VacantInsured, Permitted bool
	Trades                            []string // of the renovation lines, each once, in order
	Permits, Licences, Windows        []string // of them, those with work for which a permit or a licensed trade is usual, or that puts windows in
	OwnTrades                         []string // of the renovation lines with own hours
	Root                              *model.Member
	Model                             *model.Model // Root bound to the standard document
	Known                             *walk.Known  // what of the model was worked out to read the file
	// Targets are the lines that must not be below zero: profit_to_spare,
	// margin_to_spare, roi_to_spare, cash_to_spare, in this order, as far as the
	// file states the target. Empty if it states none.
	Targets []string
	HasCash bool // the file says what cash there is
	// Options are the names that options of rooms have, each once, in the order of the
	// file; not that of doing nothing, which every room has.
	Options []string
	// Following are the values that a choice of other options moves by what these add,
	// though the model has them as given.
	Following []string
	// StatedValues are the keys of the values that the file states, such as low.
	StatedValues []string
	Mixed        bool                // the scope takes different options in different rooms
	Firsts       []*model.Member     // options taken as the first of their rooms, which the scope does not name
	OnlyCounted  bool                // there are options, all of them of rooms that are only counted
	Sized        map[string][]string // the rooms by how sure their sizes are: measured, paced, guessed
	Unlisted     []string            // how many rooms of which kind the house has beyond those that the file lists: 1 bedroom
	Unlayered    []string            // the rooms that get a new floor and name nothing that lies on the old one
	Kerf         *decimal.Decimal    // what a saw cut takes, in feet; nil if the file does not say
	Cuts         []CutList           // of the products bought in sticks
	// Work and Products are what the price book says of the model's items and products.
	Work     map[*model.Member]*Work
	Products map[*model.Member]*pricebook.Product
	Comps    *Comparables // what sold houses say of the value; nil where the file names none
	Ranges   []Range      // how far inputs may come out from the plan, in the order of the file
	Steady   []Input      // inputs of which the file says that they come out as planned
	Ties     []Tie        // which of them go together
	TiesSaid bool         // the file says which, be it none
	BadDays  []BadDay     // what goes wrong together, in the order of the file
	// Sources are the texts of the file and of the sets, for diag.Render.
	Sources map[string]string

	reader *reader // which knows what the file's keys are of the model
}

// Set is a value that stands in for one of the file's, as in purchase.price and
// $205k. The path is the keys joined by dots, with the number of a list's item between
// them (loans.1.rate), or its name where only one has it (first loan.rate); its last
// parts are enough where they fit only one key. The value is written as in the file.
type Set struct{ Path, Value string }

// Read reads a deal file. The list holds every mistake and doubt, sorted; the deal
// is nil exactly if it holds a mistake.
func Read(name string, text []byte, sets ...Set) (*Deal, diag.List) {
	return ReadWith(Options{}, name, text, sets...)
}

// ReadWith is Read with a say in how the file is read.
func ReadWith(how Options, name string, text []byte, sets ...Set) (*Deal, diag.List) {
	d, found := readOnce(how, name, text, sets)
	if d == nil && len(sets) > 0 {
		blameSets(how, name, text, sets, found)
	}
	return d, found
}

// readOnce reads a deal file; a mistake that a set makes of the file is told in the file.
func readOnce(how Options, name string, text []byte, sets []Set) (*Deal, diag.List) {
	r := newReader(name)
	r.allOptions, r.asked, r.open = how.AllOptions, how.Comps, how.Open
	if bad := unreadable(name, text); bad != nil {
		return nil, diag.List{*bad}
	}
	src := newSource(name, string(text))
	r.src = src
	root := grow(src, &r.diags)
	switch {
	case root == nil && len(r.diags) > 0: // not YAML
	case root == nil || root.shape == nothing:
		if len(sets) == 0 {
			r.say("file-empty", src.pos(1, 0, 0), "the file says nothing")("begin with   purchase: {price: $212,500}")
			break
		}
		root = &node{shape: mapping, span: span{at: src.pos(1, 1, 1)}}
		fallthrough
	case root.shape == mapping:
		if own := root.find("scope"); own != nil {
			r.ownPicks = picksOf(own.value)
		}
		root.listLoan()
		r.apply(root, sets)
		r.ownBook(root, how.Open)
		r.quick(root)
		r.read(root)
	case root.shape != refused:
		r.say("not-a-deal", root.at, "the file is %s, not keys with values", root.shape.words())("begin with   purchase: {price: $212,500}")
	}
	r.deal.Sources = Sources(name, text, sets...)
	maps.Copy(r.deal.Sources, r.books)
	r.diags.Sort()
	r.diags = slices.Compact(r.diags) // each option of a room may tell the same of it
	if r.diags.HasErrors() {
		return nil, r.diags
	}
	r.deal.reader = r
	return r.deal, r.diags
}

// Sources returns the texts that the places of Read's diagnostics are in, by name,
// for diag.Render.
func Sources(name string, text []byte, sets ...Set) map[string]string {
	out := map[string]string{name: string(text)}
	if len(sets) > 0 {
		lines := make([]string, len(sets))
		for i, s := range sets {
			lines[i] = s.line()
		}
		out[setsSource] = strings.Join(lines, "\n")
	}
	return out
}

// InSet reports whether a place is in the sets, not in the file.
func InSet(at diag.Pos) bool { return at.File == setsSource }

// line is the set as one line of its source.
func (s Set) line() string {
	return strings.NewReplacer("\n", " ", "\r", " ").Replace(s.Path + "=" + s.Value)
}
