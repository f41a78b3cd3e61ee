package deal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// doubtOwnUntold warns of own lines that the house has and that sales of some weight, by likeness too,
// do not speak of: they count as without, and are moved by the whole of what it is worth.
func (r *reader) doubtOwnUntold(c *Comparables) {
	var none []string
	worth, say := decimal.Zero, ""
	for _, x := range r.extras {
		if x.Worth.IsZero() || !slices.Contains(c.Subject.Has, x.Name) {
			continue
		}
		written, listed := false, false
		names, weight, much := c.silent(func(row *comps.Row) bool {
			if slices.Contains(row.Told, x.Name) || slices.Contains(row.Has, x.Name) {
				return false
			}
			written, listed = written || row.Origin == comps.Written, listed || row.Origin != comps.Written
			return true
		})
		switch n := len(names); {
		case n == len(c.Value.Rows):
			none, worth, say = append(none, x.Name), worth.Add(x.Worth), cmp.Or(say, sayOwn(c, x.Name, written, listed))
		case much:
			does, all := "do not say whether they do, so they count as without", "each of them"
			if n == 1 {
				does, all = "does not say whether it does, so it counts as without", "it"
			}
			r.say("comps-not-told", r.ownAt(), "the house has %s, and %d of %s, with %.0f%% of the weight, %s, and %s: %s", diag.Quote(x.Name), n, quantity.Counted(len(c.Value.Rows), "sale"), 100*weight, does, movedBy(x.Worth, all), firstOf(names))("%s", sayOwn(c, x.Name, written, listed))
		}
	}
	if len(none) > 0 {
		r.say("comps-not-told", r.ownAt(), "the house has %s, and none of the sales says whether it does, so all count as without, and %s", quotedAll(none), movedBy(worth, "each"))("%s", say)
	}
}

// doubtOwnOfAll warns of an own line that all sales have and of which the house says nothing, nor what
// else it has: all are moved by the whole of what it is worth. Of fewer than the usual sales each is
// likely looked at by itself.
func (r *reader) doubtOwnOfAll(c *Comparables) {
	if r.got["house.has"] != nil || len(c.Value.Rows) < usualSales {
		return
	}
	for _, x := range r.extras {
		if x.Worth.IsZero() || slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return !slices.Contains(s.Has, x.Name) }) {
			continue
		}
		r.say("comps-not-compared", r.ownAt(), "all %d sales have %s, and the house does not say whether it does, so it counts as without, and %s", len(c.Value.Rows), diag.Quote(x.Name), movedBy(x.Worth.Neg(), "each sale"))("add under house   has: [%s]   if it does, and   has: []   if it does not", x.Name)
	}
}

func (r *reader) ownAt() diag.Pos { return r.needed("house.has", "house", "comps") }

// movedBy says by how much sales are raised or lowered.
func movedBy(worth decimal.Decimal, which string) string {
	if worth.IsNegative() {
		return fmt.Sprintf("%s is taken off %s", quantity.FormatDollars(worth.Neg()), which)
	}
	return fmt.Sprintf("%s is added to %s", quantity.FormatDollars(worth), which)
}

// sayOwn is how sales that are written out, or listed, can say whether they have what an own line prices.
func sayOwn(c *Comparables, name string, written, listed bool) string {
	if i := slices.IndexFunc(c.Unread, func(h string) bool { return strings.Contains(plainKey(h), name) }); i >= 0 && listed {
		return fmt.Sprintf("look whether a column that is not read tells it, and say so, e.g.   columns: {%s: %s}", name, diag.Quote(c.Unread[i]))
	}
	typed := fmt.Sprintf("   has: [%s]   to the sales that do, or   has: []   to one that does not", name)
	column := fmt.Sprintf("   a column   %s   with yes or no", name)
	switch {
	case !listed:
		return "add" + typed
	case !written:
		return "add to the table" + column
	}
	return "add" + typed + ", and to the table" + column
}
