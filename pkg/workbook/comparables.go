package workbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// adjusts is the format of an adjustment: with its sign, and nothing for none.
const adjusts = `+$#,##0;-$#,##0;""`

// perBlock is how many sales stand beside each other on the page.
const perBlock = 6

// A soldPage is the page of the comparables while it is made.
type soldPage struct {
	*book
	*grid
	sold *deal.Comparables
}

// comparables is the page of the sold houses that the value is drawn from: the grid of
// adjustments, live, and the value by their weights.
func (b *book) comparables() {
	c := b.answer.Deal.Comps
	if c == nil || c.Value == nil {
		return
	}
	g := b.page(&grid{name: "Comparables", widths: []float64{30, 14}, left: 2, wide: true, once: len(c.Members) <= perBlock, noted: true})
	n := min(len(c.Members), perBlock)
	for range max(n, 4) {
		g.widths = append(g.widths, 15)
	}
	p := &soldPage{b, g, c}
	last := len(g.widths)
	row := g.title(last, "Comparables", fmt.Sprintf("What houses sold before %s say of the value, each adjusted to this one. Figures, amounts and prices follow the inputs; weights, and amounts that a regression or pairs of sales gave, are those of the deal file as it was.", c.Day))
	row = g.paragraph(row, 1, last, comps.NotAppraisal, look{role: strong}) + 1
	row = p.value(row)
	for first := 0; first < len(c.Members); first += perBlock {
		row = p.block(row, first, min(first+perBlock, len(c.Members))) + 1
	}
	p.notes(row, last)
}

// value writes what the sales say and what the deal goes by.
func (p *soldPage) value(row int) int {
	list := []entry{p.line("what they say the house sells for", "value_by_comps")}
	list[0].cell = list[0].cell.as(rounded).strongly()
	if p.how.For == Owner {
		low, high := p.figure("comps_low").as(rounded), p.figure("comps_high").as(rounded)
		list = append(list, entry{"one such house in ten sells below", low}, entry{"one in ten sells above", high})
	}
	list = append(list,
		entry{"what the deal goes by", p.figure("after_repair_value").as(rounded)},
		entry{"the dearest of them sold for", p.figure("best_comp_price").as(rounded)},
		entry{"price and work come to", p.figure("house_and_work").as(rounded)},
		entry{"all is as the weights were drawn", p.unchanged()},
	)
	p.heading(row, 1, 2, "the value")
	return p.list(row+1, 1, list) + 1
}

// drawn is the condition that what the weights rest on is as it was: all that is compared, what
// a unit of it is worth, the days and the market; nothing where no input moves them. The ends
// of the range rest on them.
func (b *book) drawn() string {
	if b.drawnAt == "" {
		b.drawnAt = b.sameAll("whether house, sales and amounts are as they stood", func(c *model.Cell) bool {
			return c.Given != nil && c.Line.Section == "Comparables" && !strings.HasPrefix(c.Line.Name, "comps_") && c.Line.Name != "options_in_comps"
		})
	}
	return b.drawnAt
}

// fromComps are the lines by which the value of the deal comes from what sold houses say.
var fromComps = []string{"value_before_work", "after_repair_value"}

// byComps reports whether the value that the deal goes by is what sold houses say.
func (b *book) byComps() bool {
	c := b.answer.Deal.Comps
	return c != nil && c.Value != nil && !slices.ContainsFunc(fromComps, func(line string) bool { return b.model.Find(b.model.Root, line).Given != nil })
}

// stillByComps is the condition that no value is typed over that comes from what they say.
func (b *book) stillByComps() string {
	var all []string
	for _, line := range fromComps {
		c := b.model.Find(b.model.Root, line)
		p := &printer{book: b, of: c.Member, month: -1}
		all = append(all, "ABS("+b.cellRef(c)+"-"+p.number(c.Expr, bindsProduct)+")<0.005")
	}
	return nested("AND(", all)
}

// weights says below a headline whether the value still is what the sales say.
func (b *book) weights(g *grid, row int) int {
	if !b.byComps() || b.drawn() == "" {
		return row
	}
	fit, typed := "The value is what the comparables say.", "The value is typed in, and no longer what the comparables say."
	anew := "The comparables have changed: run the program for the value that they say now. This one is by their weights, and by what they told of amounts, in the deal file as it was (Comparables)."
	return g.spoken(row, lastColumn, anew, cell{value: fit, formula: "IF(ISERROR(" + b.stillByComps() + ")," + quoted(typed) + ",IF(" + b.drawn() + ",IF(" + b.stillByComps() + "," + quoted(fit) + "," + quoted(typed) + ")," + quoted(anew) + "))"})
}

// unchanged says whether they are.
func (p *soldPage) unchanged() cell {
	same := p.drawn()
	const ok, no = "yes", "NO: run the program for new weights"
	if same == "" {
		return said(ok)
	}
	return cell{value: ok, formula: "IF(" + same + `,"` + ok + `","` + no + `")`, look: look{role: strong, right: true}}
}

// block writes some sales beside each other and returns the row below.
func (p *soldPage) block(row, first, last int) int {
	p.set(row, 1, text("", look{role: heading}))
	p.set(row, 2, text("this house", look{role: heading, right: true}))
	tall := 1.0
	for i := first; i < last; i++ {
		name := p.sold.ID(&p.sold.Value.Rows[i].Sold)
		p.set(row, 3+i-first, text(name, look{role: heading, right: true, wrap: true}))
		tall = max(tall, float64(linesOf(name, p.widths[2]/1.1)))
	}
	p.height(row, tall*lineHeight+3)
	row++
	each := func(label string, house cell, of func(i int) cell) {
		p.label(row, 1, label, look{role: house.look.role})
		p.set(row, 2, house)
		for i := first; i < last; i++ {
			p.set(row, 3+i-first, of(i))
		}
		row++
	}
	sale := func(i int) *comps.Row { return &p.sold.Value.Rows[i] }
	line := func(name, format string, r role) func(int) cell {
		return func(i int) cell { return p.of(p.sold.Members[i], name).as(format).like(r) }
	}
	each("sold", said(p.sold.Day.String()), func(i int) cell { return said(sale(i).Date.String()) })
	if p.some(func(r *comps.Row) bool { return r.Distance.Known }) {
		each("miles off", cell{}, func(i int) cell {
			if d := sale(i).Distance; d.Known {
				return cell{value: d.Value / comps.Mile, look: look{format: twoPlace}}
			}
			return cell{}
		})
	}
	each("sold for", cell{}, line("sold_price", rounded, result))
	if p.some(func(r *comps.Row) bool { return !r.Concessions.IsZero() }) {
		each("  its seller gave back", cell{}, line("concessions", `-$#,##0;-$#,##0;""`, result))
	}
	p.adjustment(each, comps.Time, "  the market since")
	p.adjustment(each, comps.Location, "  where it stands")
	for _, f := range deal.Compared() {
		known := func(h *comps.House) bool { return f.Figure(h).Known }
		if p.some(func(r *comps.Row) bool { return known(&r.House) }) {
			house := cell{}
			if known(&p.sold.Subject.House) {
				house = p.figure(f.Ours).as(figureFormat(f.Line))
			}
			each(figureWords[f.Line], house, func(i int) cell {
				if r := sale(i); known(&r.House) && known(&p.sold.Subject.House) {
					return p.of(p.sold.Members[i], f.Theirs).as(figureFormat(f.Line))
				} else if known(&r.House) {
					return cell{value: f.Figure(&r.House).Value, look: look{format: figureFormat(f.Line)}}
				}
				return said("not known")
			})
		}
		p.adjustment(each, f.Line, "  adjusted by")
	}
	p.adjustment(each, comps.Style, "  type and style")
	if len(p.model.Root.In("extra")) > 0 {
		each("  own lines", cell{}, line("extras_adjustment", adjusts, result))
	}
	each("net, of its price", cell{}, line("net_share", percent, result))
	each("gross, of its price", cell{}, line("gross_share", percent, result))
	each("adjusted price", p.figure("value_by_comps").as(rounded).like(total), line("adjusted_price", rounded, total))
	each("weight", cell{}, line("weight", percent, result))
	each("the others miss it by", cell{}, line("left_out", percent, result))
	return row
}

// adjustment writes a row of the grid if any sale has something in it.
func (p *soldPage) adjustment(each func(string, cell, func(int) cell), l comps.Line, label string) {
	name := deal.AdjustmentOf(l)
	for _, m := range p.sold.Members {
		if c := p.model.Find(m, name); !p.answer.Values.Of(c).IsZero() || !p.stays(c) {
			each(label, cell{}, func(i int) cell { return p.of(p.sold.Members[i], name).as(adjusts) })
			return
		}
	}
}

func (p *soldPage) some(is func(*comps.Row) bool) bool {
	for i := range p.sold.Value.Rows {
		if is(&p.sold.Value.Rows[i]) {
			return true
		}
	}
	return false
}

// figureWords are the labels of what is compared.
var figureWords = map[comps.Line]string{
	comps.Size: "living area, sq ft", comps.Lot: "lot, sq ft", comps.Rooms: "bedrooms", comps.Baths: "baths", comps.Age: "built",
	comps.Condition: "condition, 1 poor to 5 excellent", comps.Garage: "garage, cars",
}

func figureFormat(l comps.Line) string {
	switch l {
	case comps.Size, comps.Lot:
		return whole
	}
	return plain
}

// notes say what stands behind the figures.
func (p *soldPage) notes(row, last int) {
	var from []string
	for _, r := range append([]comps.Rate{p.sold.Value.Trend}, p.sold.Value.Rates...) {
		worth := quantity.FormatMoney(decimal.NewFromFloat(r.Worth))
		if r.Line == comps.Time {
			worth = decimal.NewFromFloat(r.Worth*100).StringFixed(2) + "%"
		}
		if r.Told() {
			from = append(from, fmt.Sprintf("%s %s (%s)", r.Thing(), worth, r.HowTold()))
		}
	}
	if len(from) > 0 {
		row = p.paragraph(row, 1, last, "As the file stood, a unit was worth: "+strings.Join(from, ", ")+".", look{role: small})
	}
	for _, s := range []string{
		"Each line is how much more the house has of a thing than the sale, times what a unit of it was worth: added where it is worth more for that, taken off where less. Net is the sum of what was adjusted, gross the same without signs; over 15% and 25% is beyond a former guideline that was withdrawn in 2014, and no more than a reason to look again.",
		"A sale weighs more the more it is like the house, and less where it lies apart from the others; the weights sum to one.",
	} {
		row = p.paragraph(row, 1, last, s, look{role: small})
	}
}
