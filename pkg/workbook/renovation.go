package workbook

import (
	"cmp"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// A works is the page of the renovation while it is made.
type works struct {
	*book
	*grid
	row    int
	place  map[column]int             // in the sheet; a column that is left out has none
	sums   map[column]decimal.Decimal // of the part under way
	all    map[column]decimal.Decimal // of the whole
	totals []int                      // rows that the budget adds up
}

// renovation is the page of the work by room and item, down to the budget.
func (b *book) renovation() {
	g := b.page(&grid{name: "Renovation", left: 1, wide: true, noted: true})
	w := &works{book: b, grid: g, place: map[column]int{}, all: map[column]decimal.Decimal{}}
	rooms := len(b.model.Root.In("room")) > 0
	for id, c := range workColumns {
		if c.inRoom && !rooms || c.hers && b.how.For == Lender {
			continue
		}
		g.widths = append(g.widths, c.width)
		w.place[column(id)] = len(g.widths)
	}
	about := "What the work takes and costs."
	if rooms {
		about = "What is done to each room, what it takes and costs. Packs are those of the first product, in parts where other work shares them; whole packs are on the sheet What is bought. Work with + is brought along by other work. A quote stands in one sum under labour and quotes, also where it brings the materials."
	}
	g.heads = g.title(len(g.widths), "Renovation", about)
	for id, c := range workColumns {
		w.put(g.heads, column(id), text(c.head, look{role: heading, wrap: true, right: !c.words}))
	}
	g.height(g.heads, 2*lineHeight+2)
	w.row = g.heads + 1
	for _, room := range b.model.Root.In("room") {
		w.room(room)
	}
	w.besides()
	w.budget()
}

// put sets a cell in a column, if there is one.
func (w *works) put(row int, id column, c cell) {
	if col := w.place[id]; col > 0 {
		w.set(row, col, c)
	}
}

// at is where the column of a row is.
func (w *works) at(row int, id column) string { return address(row, w.place[id], false, false) }

// room lists the work of a room with its sum.
func (w *works) room(room *model.Member) {
	first := w.begin(room.Label)
	for _, option := range room.In("option") {
		for _, item := range option.In("item") {
			if !w.idle(item) {
				w.item(item)
			}
		}
	}
	w.end(first, room.Label)
}

// begin starts a part of the page and returns its first row.
func (w *works) begin(name string) int {
	w.label(w.row, w.place[workCol], name, look{role: strong})
	w.row++
	w.sums = map[column]decimal.Decimal{}
	return w.row
}

// end sums a part up; one without rows is taken back.
func (w *works) end(first int, name string) {
	if w.row == first {
		w.row--
		w.put(w.row, workCol, cell{})
		return
	}
	w.line(w.row)
	w.label(w.row, w.place[workCol], name+", in all", look{role: total})
	for _, id := range added {
		w.put(w.row, id, worked(w.sums[id], sumOf(w.place[id], first, w.row-1), look{role: total, format: id.format()}))
		w.all[id] = w.all[id].Add(w.sums[id])
	}
	w.totals = append(w.totals, w.row)
	w.row += 2
}

// line draws the line above a sum.
func (w *works) line(row int) {
	for col := range w.widths {
		w.set(row, col+1, text("", look{role: total}))
	}
}

// figureOf shows a line of a member in a column and adds it to the sums.
func (w *works) figureOf(id column, m *model.Member, line string) {
	c := w.of(m, line).as(id.format())
	c.note = ""
	w.put(w.row, id, c)
	w.sums[id] = w.sums[id].Add(w.answer.Of(m, line))
}

// besides are the lines that are no room's: containers, what was not seen, lines of the
// deal file, general lines.
func (w *works) besides() {
	name, rooms := "Work and charges", w.place[quantityCol] > 0
	if rooms {
		name = "Besides the rooms"
	}
	first := w.begin(name)
	if rooms && !w.nothing("disposal") {
		w.put(w.row, quantityCol, w.figure("containers").as(whole))
		w.priced("containers, brought and taken away", w.model.Root, "disposal", "disposal")
	}
	if names := w.answer.Rented(); len(names) > 0 {
		w.put(w.row, quantityCol, w.figure("months_of_work").as(whole))
		w.priced("rented, months: "+strings.Join(names, ", "), w.model.Root, "rents", "rents")
	}
	for _, m := range w.model.Root.In("check") {
		w.check(m)
	}
	for _, m := range w.model.Root.In("cost") {
		w.figureOf(materialsCol, m, "materials")
		w.figureOf(labourCol, m, "labour")
		w.figureOf(ownCol, m, "own_hours")
		w.priced(m.Label, m, "cash_cost", "trade_price")
	}
	for _, m := range w.model.Root.In("general_fee") {
		w.priced(m.Label, m, "amount", "amount")
	}
	w.end(first, strings.ToLower(name[:1])+name[1:])
}

// check is a part that may hide a repair, with what is set aside for it. What was seen of
// it is an input, so a part that is seen keeps its row and says so; where it is none, a
// part without an amount has no row, unless work makes it new.
func (w *works) check(m *model.Member) {
	seen, amount := w.model.Find(m, "seen"), w.model.Find(m, "set_aside")
	if w.stays(amount) && w.answer.Values.Of(amount).IsZero() && !(w.answer.Of(m, "made_new").IsPositive() && w.choice(seen) == "not seen") {
		return
	}
	words, formula := w.seenWords(m, seen)
	w.priced(words+": "+m.Label, m, "set_aside", "set_aside")
	if formula != "" {
		w.rows[w.row-2][w.place[workCol]-1].formula = `"  "&` + formula + "&" + quoted(": "+m.Label)
	}
}

// seenWords say what is known of a part, and what says so as inputs move; "" where none moves it.
func (w *works) seenWords(m *model.Member, seen *model.Cell) (words, formula string) {
	made := w.model.Find(m, "made_new")
	if words = "not seen"; !w.answer.Values.Of(made).IsZero() {
		words = "made new"
	}
	if !w.stays(made) {
		formula = "IF(" + w.cellRef(made) + `,"made new","not seen")`
	}
	if w.places[seen.Index].grid != nil {
		formula = "IF(" + w.cellRef(seen) + `="not seen",` + cmp.Or(formula, quoted(words)) + `,"seen, "&` + w.cellRef(seen) + ")"
	}
	if said := w.choice(seen); said != "not seen" {
		words = "seen, " + said
	}
	return words, formula
}

// priced is a line with what it costs in cash and finished by trades.
func (w *works) priced(label string, m *model.Member, cash, trade string) {
	w.label(w.row, w.place[workCol], "  "+label, look{})
	w.figureOf(cashCol, m, cash)
	w.figureOf(tradeCol, m, trade)
	w.row++
}

// budget adds the contingency and comes to what the model's budget is.
func (w *works) budget() {
	w.put(w.row, workCol, text("contingency", look{}))
	w.put(w.row, materialsCol, w.figure("contingency_share"))
	for _, id := range []column{cashCol, tradeCol} {
		w.put(w.row, id, w.figure("contingency"))
		w.all[id] = w.all[id].Add(w.answer.Line("contingency"))
	}
	w.row++
	w.line(w.row)
	w.put(w.row, workCol, text("renovation budget", look{role: total}))
	for _, id := range added {
		sum := "0"
		for _, row := range w.totals {
			sum += "+" + w.at(row, id)
		}
		if id == cashCol || id == tradeCol {
			sum += "+" + w.at(w.row-1, id)
		}
		w.put(w.row, id, worked(w.all[id], strings.TrimPrefix(sum, "0+"), look{role: total, format: id.format()}))
	}
	w.put(w.row+1, workCol, text("the same as the budget of the model", look{role: small}))
	w.put(w.row+1, cashCol, w.agree(w.at(w.row, cashCol), w.ref("budget", 0)))
}
