package deal

import "strings"

// A place is where in the file a charge stands, and what it may be there.
type place struct {
	kind   string // the kind of the model's member
	path   string // where in the file
	total  string // the line that adds its charges up
	words  string
	base   string // the line a share is of if the charge does not say
	during string // the phase of a charge by time if it does not say
	timed  bool   // charges by time make sense
	atSale bool   // rates are those of the day of the sale
	bases  string // the groups of bases it may name
}

// places are the kinds of charge. A charge of the purchase cannot be a share of a
// loan, because the loan is cut to what there is to pay at the closing.
var places = []place{
	{kind: "before_fee", path: "purchase.paid before closing", total: "before_cost", words: "a charge paid before the closing", base: "price", bases: "deal works"},
	{kind: "purchase_fee", path: "purchase.closing", total: "closing_cost", words: "a charge of the purchase", base: "price", bases: "deal works"},
	{kind: "general_fee", path: "renovation.general", total: "general_cost", words: "a general line of the renovation", base: "works cost", during: "renovation", timed: true, bases: "lines"},
	{kind: "loan_fee", path: "loans[].fees", total: "loan_fees", words: "a loan's charge", base: "commitment", bases: "deal works loan"},
	{kind: "holding_fee", path: "holding", total: "holding_cost", words: "a holding cost", base: "price", timed: true, bases: "deal works"},
	{kind: "selling_fee", path: "selling", total: "selling_cost", words: "a charge of the sale", base: "sale price", atSale: true, bases: "deal works"},
}

func placeOf(kind string) *place {
	for i := range places {
		if places[i].kind == kind {
			return &places[i]
		}
	}
	return nil
}

// onlyFor names the places of a detail.
func onlyFor(kinds string) string {
	var out []string
	for _, k := range strings.Fields(kinds) {
		out = append(out, placeOf(k).words)
	}
	return strings.Join(out, " or ")
}

// A base is a line that a charge may be a share of.
type base struct {
	name  string // as written behind "of"
	line  string // of the model
	group string
	other string // another name
}

var bases = []base{
	{"price", "price", "deal", "purchase price"},
	{"all-in price", "all_in_price", "deal", ""},
	{"sale price", "sale_price", "deal", "sales price"},
	{"after-repair value", "after_repair_value", "deal", "arv"},
	{"works cost", "works_cost", "works lines", "works"},
	{"works at trade price", "works_at_trade_price", "works lines", ""},
	{"base cost", "base_cost", "works", ""},
	{"budget", "budget", "works", "renovation budget"},
	{"loan at closing", "loan_at_closing", "loan", ""},
	{"holdback", "holdback", "loan", ""},
	{"commitment", "commitment", "loan", "loan"},
}

func baseNamed(name string) *base {
	name = strings.TrimPrefix(plainKey(name), "the ")
	for i, b := range bases {
		if name == plainKey(b.name) || b.other != "" && name == b.other {
			return &bases[i]
		}
	}
	return nil
}

// takes reports whether a charge in the place may be a share of the base.
func (p *place) takes(b *base) bool {
	for _, g := range strings.Fields(b.group) {
		if strings.Contains(" "+p.bases+" ", " "+g+" ") {
			return true
		}
	}
	return false
}

// baseNames are the bases of a place, in words.
func (p *place) baseNames() []string {
	var out []string
	for i := range bases {
		if p.takes(&bases[i]) {
			out = append(out, bases[i].name)
		}
	}
	return out
}
