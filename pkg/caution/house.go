package caution

import (
	"time"

	"github.com/shopspring/decimal"
)

// House holds the facts the cautions are chosen by. A zero or absent value
// means unknown, and the careful reading is taken.
type House struct {
	// YearBuilt is the calendar year; 0 or less is unknown.
	YearBuilt int
	// Bought is the purchase closing, OfferAccepted the day all parties have
	// signed the buyer's contract, SaleClosing the sale closing. Only the
	// calendar day is read.
	Bought, OfferAccepted, SaleClosing time.Time
	// HoldMonths is the time from purchase closing to sale closing; a month is
	// 365/12 days.
	HoldMonths decimal.Decimal
	// PurchasePrice and SalePrice are in dollars, the purchase price alone
	// without repairs or closing costs.
	PurchasePrice, SalePrice decimal.Decimal
	// OwnHours is the own labor planned, in hours.
	OwnHours decimal.Decimal
	// Trades are the trade names in the plan, in any case: "electrical",
	// "roof repair". An empty list is unknown.
	Trades []string
	// NoPermit and NoLicence are those of the trades whose work in the plan is of a
	// kind for which no permit, or no licensed trade, is usual.
	NoPermit, NoLicence []string
	// NoWindow are those whose work in the plan puts no window in: a trade of doors and windows
	// re-keys locks.
	NoWindow []string
	// OwnGas, OwnWiring, OwnStructure and OwnHeight name the work by own hands on or near gas, on wiring, on what
	// carries loads, and outside at height; OwnTrades the trades of lines with own hours.
	OwnGas, OwnWiring, OwnStructure, OwnHeight, OwnTrades []string
	// HasInsuranceLine is any insurance in the plan, HasVacantInsurance a
	// vacant-house or builder's-risk line, HasPermitLine a permit line.
	HasInsuranceLine, HasVacantInsurance, HasPermitLine bool
	// ContingencyShare is the contingency as a share of the base cost, 0.10
	// for 10%. Zero is a plan without one.
	ContingencyShare decimal.Decimal
	// NoWork is true when the plan spends nothing on work.
	NoWork bool
	// UtilitiesOff is true when water, power or gas were off at the inspection.
	UtilitiesOff bool
	// HasInterestReserve is true when a loan pays its own interest from a reserve.
	HasInterestReserve bool
	// Assignment is true when the house is bought by assignment of a contract.
	Assignment bool
	// Units is the number of dwelling units; 0 is unknown.
	Units int
}

// Caution is one caution that applies to a house.
type Caution struct {
	// ID is stable: lower-case words joined by hyphens.
	ID string
	// Title says it in a few words, for lists.
	Title string
	// Text is one or two plain sentences; the last says whom to ask.
	Text string
	// Told is the text without what it tells the owner alone to do, for whoever else
	// reads it.
	Told string
	// Source names what the text rests on, with the section, and says "from
	// memory" or "common practice, no source" where that is so.
	Source string
}

// For returns the cautions that apply to h, the most important first. The order
// is that of the table and the same for the same facts.
func For(h House) []Caution {
	w := words(h)
	var out []Caution
	for _, r := range rows() {
		if r.applies(h) {
			out = append(out, r.caution(w.Replace))
		}
	}
	return out
}
