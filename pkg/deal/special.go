package deal

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// shareOrMoney reads 1%, 1% of commitment or $750 into one of two lines; a third
// line takes what the share is of.
func (r *reader) shareOrMoney(s scope, f *Field, g *reading) {
	text, lines := g.node.span, f.feeds()
	if i := lastWord(text.text, " of "); i >= 0 && len(lines) > 2 {
		of := text.cut(i+len(" of "), len(text.text))
		word := strings.TrimPrefix(plainKey(of.text), "the ")
		if word != "balance" && word != "commitment" {
			r.say("unknown-base", of.at, "%s cannot be a share of %s", f.Key(), diag.Quote(of.text))("it can be of balance (what is paid off) or of commitment (the whole loan)")
			return
		}
		s.member.Give(lines[2], model.Value{Choice: word, Text: g.node.text, Key: f.Key(), Pos: of.at})
		text = text.cut(0, i)
	}
	c, ok := r.charge(f.Key(), text, "a percentage or dollars, e.g. "+f.Example+" or $900")
	if !ok {
		return
	}
	v := model.Value{Number: c.x, Text: c.text, Key: f.Key(), Pos: c.at}
	switch _, of := s.member.Given.Look(lines[len(lines)-1]); {
	case c.form == share && r.within(Percent, f.Key(), f.accepts(), f.example(), c.span, c.x):
		s.member.Give(lines[0], v)
	case c.form == share:
		return
	case c.form == fixed && len(lines) > 2 && of:
		r.say("base-unused", c.at, "%s is dollars, so it is of nothing", f.Key())("leave out what stands behind the amount, or write a percentage")
		return
	case c.form == fixed:
		s.member.Give(lines[1], v)
	default:
		r.say("bad-charge", c.at, "%s is %s, which is neither a percentage nor dollars", f.Key(), diag.Quote(c.text))("write it like   %s", f.example())
		return
	}
	g.number, g.ok = c.x, true
}

const mostStages = 120

// spending reads a curve, or the amounts of the months.
func (r *reader) spending(s scope, f *Field, g *reading) {
	switch g.node.shape {
	case mapping:
		r.say("want-value", g.key.at, "spending is a group of keys, not a word or a list")("write a word (%s) or amounts: spending: [$10k, $20k, $5k]", strings.Join(f.Choices, ", "))
	case scalar:
		v := model.Value{Text: g.node.text, Pos: g.node.at}
		if r.choice(s, f, g, &v) {
			g.ok = true
			s.member.Give("curve", v)
		}
	case list:
		r.stages(s, f, g)
	}
}

func (r *reader) stages(s scope, f *Field, g *reading) {
	if n := len(g.node.items); n > mostStages {
		r.say("too-many", g.key.at, "%d months of spending, more than the %d that are read", n, mostStages)("join the small ones")
		return
	}
	g.ok = true
	month := &Field{Path: "month", Kind: Money, Example: "$10k", item: true}
	for i, item := range g.node.items {
		month.Path = fmt.Sprintf("month %d of spending", i+1)
		one := &reading{field: month, key: span{text: month.Path, at: item.at}, node: item}
		v := model.Value{Text: item.text, Pos: item.at}
		switch {
		case item.shape == refused:
			g.ok = false
		case item.shape == nothing:
			r.say("missing-value", item.at, "%s has no amount", month.Path)("write $0 for a month without spending")
			g.ok = false
		case item.several:
			r.say("comma-in-list", item.at, "%s could be one number or several", diag.Quote(item.text))("write $ before each amount, or 10k for 10,000, and a space after each comma of the list")
			g.ok = false
		case !r.wants(month, one, scalar) || !r.number(month, one, &v):
			g.ok = false
		default:
			m := s.member.Add("stage", "", month.Path)
			m.Pos = item.at
			m.Give("amount", v)
		}
	}
	s.member.Give("curve", model.Value{Choice: "stated", Text: quantity.Counted(len(g.node.items), "month") + " stated", Pos: g.key.at})
}

// deposits reads amounts that come back; in prorations a credit is received first.
func (r *reader) deposits(s scope, f *Field, g *reading) {
	if !r.wants(f, g, mapping) {
		return
	}
	if n := len(g.node.entries); n > mostFees {
		r.say("too-many", g.key.at, "%d amounts, more than the %d that are read", n, mostFees)("join the small ones")
		return
	}
	g.ok = true
	row := &Field{Path: "amount", Kind: Money, Example: "$300"}
	for i := range g.node.entries {
		e := &g.node.entries[i]
		one := &reading{field: row, key: e.key, node: e.value}
		if e.value.shape == refused || r.stray(e) {
			continue
		}
		row.Path = strings.ReplaceAll(e.key.text, ".", " ")
		if e.value.shape == nothing {
			r.say("missing-value", e.key.at, "%s has no amount", diag.Quote(e.key.text))("write one, e.g. $300")
			continue
		}
		if !r.wants(row, one, scalar) {
			continue
		}
		text, credit := e.value.span, false
		if j := endsIn(text.text, " credit"); j >= 0 {
			text, credit = text.cut(0, j), true
		}
		if f.Kind == Prorations && !credit && strings.HasPrefix(text.text, "-") {
			r.say("below-zero", text.at, "%s is %s, below zero", e.key.text, diag.Quote(text.text))("if you receive it, write   %s: %s credit   ; if you pay it, leave the sign out", e.key.text, strings.TrimLeft(text.text, "- "))
			continue
		}
		if credit && f.Kind == Deposits {
			r.say("credit-not-here", e.value.at, "%s is a deposit, which is paid and not received", diag.Quote(e.key.text))("put it under prorations if it is received at the purchase and paid back at the sale")
			continue
		}
		v := model.Value{Text: text.text, Pos: text.at}
		one.node = &node{shape: scalar, span: text}
		if !r.number(row, one, &v) {
			continue
		}
		m := s.member.Add("deposit", "", e.key.text)
		m.Pos = e.key.at
		m.Give("amount", v)
		if f.Kind == Prorations {
			m.Give("credit", model.Value{Number: flag(credit), Text: e.value.text, Pos: e.value.at})
			m.Give("at_the_table", model.Value{Number: flag(true), Text: e.key.text, Pos: e.key.at})
		}
	}
}

// facts fills in what the deal keeps beside the model.
func (r *reader) facts() {
	d := r.deal
	text := func(path string, to *string) {
		if g := r.good(path); g != nil && g.choice != "" {
			*to = g.choice
		}
	}
	count := func(path string) int {
		if g := r.good(path); g != nil {
			return int(g.number.IntPart())
		}
		return 0
	}
	text("deal", &d.Name)
	text("notes", &d.Notes)
	text("house.address", &d.Address)
	d.Root.Label = d.Name
	d.YearBuilt, d.Units = count("house.year built"), count("house.units")
	if g := r.good("house.utilities"); g != nil {
		d.UtilitiesOff = g.number.IsZero()
	}
	if g := r.good("purchase.date"); g != nil {
		d.PurchaseDate = g.date
	}
	if g := r.good("purchase.earnest deposit.refundable until"); g != nil {
		d.DepositRefundableUntil = g.date
	}
	for _, t := range targetLines {
		if r.good(t.key) != nil {
			d.Targets = append(d.Targets, t.spare)
		}
	}
	d.HasCash = r.good("cash.available") != nil
	r.named()
}

// targetLines are the keys of targets with the lines that must then not be below zero.
var targetLines = []struct{ key, spare string }{
	{"targets.profit", "profit_to_spare"},
	{"targets.margin", "margin_to_spare"},
	{"targets.roi", "roi_to_spare"},
	{"cash.available", "cash_to_spare"},
}

// TargetsBeside are the targets that the file states or that some inputs are of, in the order
// of Targets.
func (d *Deal) TargetsBeside(inputs ...Input) (out []string) {
	for _, t := range targetLines {
		if slices.Contains(d.Targets, t.spare) || slices.ContainsFunc(inputs, func(i Input) bool { return i.key == t.key }) {
			out = append(out, t.spare)
		}
	}
	return out
}

// named finds out what the names of the lines tell.
func (r *reader) named() {
	d := r.deal
	for _, m := range d.Root.Children {
		label := strings.ToLower(m.Label)
		if m.Set == "fee" {
			d.VacantInsured = d.VacantInsured || insuresVacant(label)
			d.Insured = d.Insured || insures(m)
		}
		if m.Kind == "general_fee" || m.Set == "cost" {
			d.Permitted = d.Permitted || holdsAny(label, "permit")
		}
	}
	for path := range r.got { // none but insurance has a premium, whatever its line is called
		d.Insured = d.Insured || strings.HasSuffix(path, ".premium paid ahead") && r.good(path) != nil
	}
	for _, l := range r.lines() {
		if g := r.good(l.path + "trade"); g != nil {
			d.trade(g.choice, true, true, true)
			if own := r.good(l.path + "own hours"); own != nil && own.number.IsPositive() && !slices.Contains(d.OwnTrades, g.choice) {
				d.OwnTrades = append(d.OwnTrades, g.choice)
			}
		}
	}
}

func holdsAny(s string, words ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(s, w) })
}
