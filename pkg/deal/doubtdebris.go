package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// hauled takes the debris of work out of the containers where the file says that it is taken away.
func (r *reader) hauled(w *work) {
	g := r.good(w.scope.path + "hauls")
	if w.scope.path == "" || g == nil || !g.number.IsPositive() {
		return
	}
	for _, line := range []string{"debris_each", "weight_each"} {
		w.member.Give(line, model.Value{Text: "taken away: hauls, " + g.node.text, Pos: g.at(), Key: g.field.Key()})
	}
}

// doubtDebris doubts that the debris of work with a quote for all of it goes to containers besides, where
// it fills half of one by itself and takes at least one more: the trade may well take it away.
func (r *reader) doubtDebris(w *work, given model.Value) {
	if w.scope.path == "" || !w.quotedAll() || r.of(w.scope, "hauls") != nil {
		return
	}
	in := func(m *model.Member, line string) decimal.Decimal {
		x, _ := r.worked(m, line)
		return x
	}
	root := r.deal.Root
	debris, weight := in(w.member, "debris"), in(w.member, "weight")
	holds, limit, price := in(root, "container_holds"), in(root, "container_limit"), in(root, "container_price")
	if !holds.IsPositive() || !limit.IsPositive() {
		return
	}
	filled := func(debris, weight decimal.Decimal) decimal.Decimal {
		return decimal.Max(debris.DivRound(holds, 6), weight.DivRound(limit, 6))
	}
	without := filled(in(root, "all_debris").Sub(debris), in(root, "all_weight").Sub(weight)).Ceil()
	more := in(root, "containers").Sub(without)
	if filled(debris, weight).LessThan(half) || !more.Mul(price).IsPositive() {
		return
	}
	much := quantity.FormatCount(debris, 0) + " cu ft, " + quantity.FormatCount(weight, 0) + " lb"
	r.say("debris-besides", given.Pos, "%s: the quote of %s is for its work, and its debris (%s) goes to containers besides: %s, %s", w.label, diag.Quote(given.Text), much, quantity.Counted(int(more.IntPart()), "container"), quantity.FormatMoney(more.Mul(price)))("ask who takes it away; if the trade does, say   hauls: yes   beside the quote; if you do, say   hauls: no")
}

// doubtIdleHaul doubts that the debris of work is said to be taken away of which there is none but that of
// what comes along with it.
func (r *reader) doubtIdleHaul(w *work) {
	g := r.good(w.scope.path + "hauls")
	if g == nil || !g.number.IsPositive() || w.quotedAll() || leavesDebris(w) {
		return
	}
	for _, x := range r.chosenWorks() {
		if x.by != "" && x.broughtBy(w) && leavesDebris(x) {
			r.say("quote-detail", g.at(), "%s: hauls, %s, is not used: its own work leaves no debris, that of %s goes to containers", w.label, g.node.text, x.label)("write it there, e.g.   %s: {by: %s, hauls: yes}", x.item.Name, x.doer())
			return
		}
	}
}

func leavesDebris(w *work) bool { return w.item.Debris.IsPositive() || w.item.Weight.IsPositive() }
