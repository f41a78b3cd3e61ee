package deal

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// intoModel makes members of the sales that are used.
func (r *reader) intoModel(c *Comparables) {
	root, v := r.deal.Root, c.Value
	from := r.needed("comps")
	say := func(m *model.Member, line string, x decimal.Decimal, text string, at diag.Pos) {
		m.Give(line, model.Value{Number: x, Text: text, Pos: at})
	}
	for _, row := range adjusted {
		if rate, ok := v.Linear[row.line]; ok && rate.From == "pairs" {
			say(root, row.rate, decimal.NewFromFloat(rate.Worth), "by pairs of sales", from)
		}
		if row.figure != nil {
			if f := row.figure(&c.Subject.House); f.Known {
				text, at := r.written("house.", row.ours), r.stands("house.", row.ours)
				if c := r.finished; row.line == comps.Condition && c.key.text != "" {
					text, at = c.value.text+", for the option "+c.key.text, c.value.at
				}
				say(root, row.ours, decimalOf(f), text, at)
			}
		}
	}
	by := "by the scatter of the sales"
	if v.Carried >= 0.0005 { // from what is shown as 0.1% on
		by += fmt.Sprintf(", and %.1f%% for how far off the market's trend may be over the months to the day", 100*v.Carried)
	}
	say(root, "comps_low_share", v.LowShare, by, from)
	say(root, "comps_high_share", v.HighShare, by, from)
	switch adds := r.addsInComps(); {
	case adds.IsZero():
	case !r.allOptions && adds.Equal(r.takenAdds()): // it follows what is taken
		root.Give("options_in_comps", model.Value{Refers: "value_added", Text: "what the planned options add", Pos: from})
	default:
		say(root, "options_in_comps", adds, "what the planned options add", from)
	}
	extras := map[string]*model.Member{}
	for _, x := range r.extras {
		m := root.Add("extra", "", x.Name)
		m.Pos = x.at
		say(m, "extra_worth", x.Worth, x.text, x.at)
		say(m, "subject_has_it", flag(slices.Contains(c.Subject.Has, x.Name)), "has", x.at)
		extras[x.Name] = m
	}
	for i := range v.Rows {
		c.Members = append(c.Members, r.comparable(c, &v.Rows[i], extras))
	}
}

// comparable makes a member of a sale.
func (r *reader) comparable(c *Comparables, row *comps.Row, extras map[string]*model.Member) *model.Member {
	m := r.deal.Root.Add("comp", "", row.Name())
	m.Pos = c.Place(&row.Sold)
	path := r.pathOf(row.Line)
	say := func(line string, x decimal.Decimal, text string) {
		m.Give(line, model.Value{Number: x, Text: text, Pos: r.stands(path, line, m.Pos)})
	}
	say("sold_price", row.Price, r.written(path, "sold_price", "as recorded"))
	if !row.Concessions.IsZero() {
		say("concessions", row.Concessions, r.written(path, "concessions", "as recorded"))
	}
	say("months_before", comps.MonthsBefore(row.Date, c.Day), "sold on "+row.Date.String())
	say("weight", decimal.NewFromFloat(row.Weight), "by its likeness to the house, less where it lies apart from the others")
	if row.NotBest != "" {
		say("may_be_best", decimal.Zero, row.NotBest)
	}
	amounts := map[comps.Line]decimal.Decimal{}
	for _, l := range row.Lines {
		amounts[l.Line] = l.Amount
	}
	for _, a := range adjusted {
		_, byUnits := c.Value.Linear[a.line]
		if a.figure != nil {
			byUnits = byUnits && a.figure(&row.House).Known && a.figure(&c.Subject.House).Known
			if f := a.figure(&row.House); f.Known && a.figure(&c.Subject.House).Known {
				say(a.theirs, decimalOf(f), r.written(path, a.theirs, "as recorded"))
			}
		}
		if !byUnits && a.amount != "" && !amounts[a.line].IsZero() {
			say(a.amount, amounts[a.line], fmt.Sprintf("by regression on %d sales", c.Usable))
		}
	}
	for _, x := range r.extras {
		mark := m.Add("mark", "", x.Name)
		mark.Pos = m.Pos
		mark.Link(extras[x.Name])
		mark.Give("has_it", model.Value{Number: flag(slices.Contains(row.Has, x.Name)), Text: "has", Pos: m.Pos})
	}
	return m
}

// pathOf is the path of a sale that the deal file writes out, or "".
func (r *reader) pathOf(number int) string {
	if i := number - fromRecord; i >= 0 && i < len(r.items["<comp>"]) {
		return r.items["<comp>"][i].path
	}
	return ""
}

// written is the text of the key that feeds a line in a group, or other words.
func (r *reader) written(path, line string, other ...string) string {
	if g := r.feeding(path, line); g != nil {
		return g.node.text
	}
	return append(other, "")[0]
}

// stands is the place of that text, or another.
func (r *reader) stands(path, line string, other ...diag.Pos) diag.Pos {
	if g := r.feeding(path, line); g != nil {
		return g.at()
	}
	return append(other, r.needed("house"))[0]
}

func (r *reader) feeding(path, line string) *reading {
	if path == "" {
		return nil
	}
	if line == "subject_built" {
		return r.good("house.year built")
	}
	for f := range rows() {
		if f.Line == line && f.Kind == Record {
			return r.good(path + f.Key())
		}
	}
	return nil
}
