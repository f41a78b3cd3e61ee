package deal

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
)

// storeys is the fact, and the key, of how many storeys a house has, for which lists may have its style.
const storeys = "storeys"

// mostStoreys is how many a house has at most (common practice, no source).
const mostStoreys = 5

// styles are the words of sales for their style, as ranch, where most say that in place of how many
// storeys they have, the most frequent first.
func (c *Comparables) styles() []string {
	if !c.most(func(s *comps.Row) bool { return s.Storeys != "" && !comps.StoreysOf(s.Storeys).Known }) {
		return nil
	}
	n := map[string]int{}
	for i := range c.Value.Rows {
		if said := c.Value.Rows[i].Storeys; said != "" && !comps.StoreysOf(said).Known {
			n[said]++
		}
	}
	return slices.SortedFunc(maps.Keys(n), func(a, b string) int { return cmp.Or(n[b]-n[a], strings.Compare(a, b)) })
}

// someStyles names the first of them in brackets.
func (c *Comparables) someStyles() string {
	return " (" + firstOf(c.styles()) + ")"
}

// styleWritten is how the house says such a style.
func (c *Comparables) styleWritten() string {
	word := c.styles()[0]
	if strings.ContainsAny(word, ":#,[]{}&*!|>'\"%@`") {
		word = diag.Quote(word)
	}
	return storeys + ": " + word
}

// doubtStoreys warns of a house whose storeys are hardly as many, or that says how many there are where
// the sales say a style, or a style where they say how many: neither can be compared.
func (r *reader) doubtStoreys(c *Comparables) {
	g := cmp.Or(r.good("house."+storeys), r.good("house.levels"))
	ours := comps.StoreysOf(c.Subject.Storeys)
	if g == nil || c.Subject.Storeys == "" {
		return
	}
	counted := func(s *comps.Row) bool { return comps.StoreysOf(s.Storeys).Known }
	some := func(so func(*comps.Row) bool) bool {
		return slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return so(&s) })
	}
	switch written := diag.Quote(g.field.Key() + ": " + g.node.text); {
	case ours.Known && g.field.Key() == storeys && (ours.Value < 1 || ours.Value > mostStoreys) && !some(func(s *comps.Row) bool { return comps.StoreysOf(s.Storeys).Value > mostStoreys }):
		r.say("doubtful-cell", g.at(), "%s is hardly how many storeys a house has", diag.Quote(g.node.text))("write how many there are, e.g. 1, 1.5 or 2")
	case ours.Known && len(c.styles()) > 0 && !some(counted):
		r.say("comps-not-told", g.at(), "the house says %s, and the sales their style%s and not how many storeys they have, so that is not compared", written, c.someStyles())("write under house its style in a word that they use, e.g.   %s", c.styleWritten())
	case !ours.Known && c.most(counted) && !some(func(s *comps.Row) bool { return s.Storeys != "" && !counted(s) }):
		r.say("comps-not-told", g.at(), "the house says %s, and the sales how many storeys they have, so that is not compared", written)("write how many it has, e.g.   storeys: 1.5")
	}
}
