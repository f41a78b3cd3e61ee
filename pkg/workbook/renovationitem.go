package workbook

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// A column is one of the renovation's.
type column int

const (
	workCol column = iota
	quantityCol
	unitCol
	packsCol
	packCol
	eachCol
	materialsCol
	labourCol
	cashCol
	tradeCol
	ownCol
	hiredCol
	whoCol
)

// added are the columns with sums.
var added = []column{materialsCol, labourCol, cashCol, tradeCol, ownCol, hiredCol}

// workColumns are the columns in their order. Those of rooms alone are left out where
// there are none; own hours are not for a lender, who could work her wage out from them.
var workColumns = []struct {
	head         string
	width        float64
	inRoom, hers bool
	words        bool
}{
	workCol: {head: "work", width: 33, words: true}, quantityCol: {head: "quantity", width: 9, inRoom: true}, unitCol: {head: "unit", width: 6, inRoom: true, words: true},
	packsCol: {head: "packs", width: 6, inRoom: true}, packCol: {head: "of", width: 31, inRoom: true, words: true}, eachCol: {head: "cash for each unit", width: 10, inRoom: true},
	materialsCol: {head: "materials", width: 11}, labourCol: {head: "labour, quotes", width: 11}, cashCol: {head: "cash", width: 12}, tradeCol: {head: "finished by trades", width: 12},
	ownCol: {head: "own hours", width: 7, hers: true}, hiredCol: {head: "hired hours", width: 7, inRoom: true}, whoCol: {head: "who", width: 7, inRoom: true},
}

// format is how the figures of a column are written.
func (id column) format() string {
	if id == ownCol || id == hiredCol {
		return tenths
	}
	return dollars
}

// idle reports whether a piece of work was brought along and can have nothing here to be
// done to.
func (w *works) idle(item *model.Member) bool {
	for _, line := range []string{"quantity", "cash_cost", "trade_price"} {
		if c := w.model.Find(item, line); !w.answer.Values.Of(c).IsZero() || !w.stays(c) {
			return false
		}
	}
	return true
}

// item is the row of a piece of work.
func (w *works) item(m *model.Member) {
	about := w.answer.Deal.Work[m]
	mark := "  "
	if about.By != "" {
		mark = "+ "
	}
	w.label(w.row, w.place[workCol], mark+m.Label, look{})
	amount := w.of(m, "quantity").as(twoPlace)
	amount.note = ""
	if about.Item.Unit == "each" {
		amount.look.format = plain
	}
	w.put(w.row, quantityCol, amount)
	w.put(w.row, unitCol, text(string(about.Item.Unit), look{role: small}))
	w.packs(m)
	for id, line := range map[column]string{materialsCol: "materials", labourCol: "labour", cashCol: "cash_cost", tradeCol: "trade_price", ownCol: "own_hours", hiredCol: "crew_hours"} {
		w.figureOf(id, m, line)
	}
	each, done := decimal.Zero, w.answer.Of(m, "quantity")
	if !done.IsZero() {
		each = formula.Divide(w.answer.Of(m, "cash_cost"), done)
	}
	quantity := w.at(w.row, quantityCol)
	w.put(w.row, eachCol, worked(each, "IF("+quantity+"=0,0,"+w.at(w.row, cashCol)+"/"+quantity+")", look{format: dollars}))
	w.put(w.row, whoCol, w.who(m))
	w.row++
}

// packs says how many packs of its first product a piece of work takes.
func (w *works) packs(m *model.Member) {
	uses := m.In("use")
	if len(uses) == 0 {
		return
	}
	of := uses[0].Links[0]
	sold := w.answer.Deal.Products[of]
	if sold == nil || len(sold.Sticks) > 0 || sold.Roll != nil || sold.Pack.Word == string(sold.Pack.Unit) {
		return
	}
	bought, holds := w.model.Find(uses[0], "bought"), w.model.Find(of, "holds")
	packs := formula.Divide(w.answer.Values.Of(bought), w.answer.Values.Of(holds))
	w.put(w.row, packsCol, worked(packs, w.cellRef(bought)+"/"+w.cellRef(holds), look{format: twoPlace}))
	w.label(w.row, w.place[packCol], of.Label+", "+sold.Pack.String(), look{role: small})
}

// cellRef is how a formula of a page refers to a cell of the model.
func (b *book) cellRef(c *model.Cell) string {
	if at := b.places[c.Index]; at.grid != nil {
		return at.from(nil, 0)
	}
	return numeral(b.answer.Values.Of(c), bindsAll)
}

// who does a piece of work: own hands, a trade, or whoever quoted for it.
func (w *works) who(m *model.Member) cell {
	if !w.answer.Of(m, "quote").IsZero() {
		return text("quote", look{right: true})
	}
	c := w.of(m, "who")
	c.note = ""
	return c
}
