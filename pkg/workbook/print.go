package workbook

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/quantity"
)

// Widths of paper, in the units of columns at full size, and the smallest scale that is
// still read.
const (
	upright, sideways = 100.0, 135.0
	smallest          = 0.5
	readable          = 0.8  // of a page that is read on paper: letters of 8 points
	sharper           = 1.25 // how much wider than upright paper a sheet may be that is printed so
)

// letter is the number of that paper size.
const letter = 1

// dress sets what a sheet has besides its cells.
func (b *book) dress(g *grid) error {
	if g.before != nil {
		if err := g.before(b.file, g); err != nil {
			return err
		}
	}
	for _, set := range []func(*grid) error{b.paper, b.broken, b.headed, b.repeated, b.locked, b.annotated, b.marked, func(g *grid) error { return b.allowed(b.file, g) }} {
		if err := set(g); err != nil {
			return err
		}
	}
	return nil
}

// paper lays a sheet on letter paper, one page wide; one so wide that nobody could read
// it so, on as few pages side by side as will do.
func (b *book) paper(g *grid) error {
	width := g.full()
	size, across, down := letter, 1, 0
	direction := "portrait"
	if g.across() {
		direction = "landscape"
		for width > sideways/smallest*float64(across) {
			across++
		}
	}
	switch {
	case g.once && !g.split(min(1, paperOf[direction].wide/width), paperOf[direction].tall):
		down = 1
	case g.once:
	case g.closed && across == 1:
		down = g.down(min(1, paperOf[direction].wide/width), paperOf[direction].tall)
	}
	if err := b.file.SetPageLayout(g.name, &excelize.PageLayoutOptions{Size: &size, Orientation: &direction, FitToWidth: &across, FitToHeight: &down}); err != nil {
		return err
	}
	side, top, edge := 0.45, 0.75, 0.35
	if err := b.file.SetPageMargins(g.name, &excelize.PageLayoutMarginsOptions{Left: &side, Right: &side, Top: &top, Bottom: &top, Header: &edge, Footer: &edge}); err != nil {
		return err
	}
	return b.file.SetSheetProps(g.name, &excelize.SheetPropsOptions{FitToPage: &yes, TabColorRGB: b.tab(g)})
}

// full is how wide a sheet is.
func (g *grid) full() (width float64) {
	for col := range g.columns() {
		width += g.width(col + 1)
	}
	return width
}

// across reports whether a sheet is printed on paper on its side.
func (g *grid) across() bool { return g.wide || g.full() > upright*sharper }

// Paper of either direction: how wide it is in units of columns and how tall in points,
// between the margins.
var paperOf = map[string]struct{ wide, tall float64 }{"portrait": {upright, 9.5 * 72}, "landscape": {sideways, 7 * 72}}

// What may run over the last page and is drawn in, and how far short of its foot a sheet may
// run over all the same, in parts of a page: what a program makes of heights differs a little.
const tail, short = 0.12, 0.05

// down is how many pages a sheet is to take where it would otherwise take one more for its
// last few lines; 0 where it may take as many as it does. Its scale is that of its width.
// Rows get the height that they are reckoned with.
func (g *grid) down(scale, page float64) int {
	heads, rest := 0.0, 0.0
	g.reckoned()
	for row := 1; row <= len(g.rows); row++ {
		if row <= g.heads {
			heads += g.high[row]
		} else {
			rest += g.high[row]
		}
	}
	pages := rest * scale / (page - heads*scale)
	down := math.Round(pages)
	if down < 1 || pages < down-short || pages > down+tail || scale*down/pages < smallest {
		return 0
	}
	return int(down)
}

// reckoned gives every row the height that it is reckoned with.
func (g *grid) reckoned() {
	for row := 1; row <= len(g.rows); row++ {
		if g.high[row] == 0 {
			g.height(row, lineHeight*g.letters(row))
		}
	}
}

// split lays a sheet that nobody could read on one page, at the scale of its width, on as many as it takes, each
// beginning with a heading; false where it is read on one.
func (g *grid) split(scale, page float64) bool {
	g.reckoned()
	all := 0.0
	for row := 1; row <= len(g.rows); row++ {
		all += g.high[row]
	}
	if page/all >= min(readable, scale) {
		return false
	}
	page *= (1 - short) / scale
	at, block, from := 0.0, 0.0, 0 // what the page holds down to the last heading, and what is below that
	for row := 1; row <= len(g.rows); row++ {
		if r := g.rows[row-1]; len(r) > 0 && r[0].look.role == heading {
			at, block, from = at+block, 0, row
		}
		block += g.high[row]
		switch {
		case at > 0 && from > 0 && at+block > page:
			g.breaks = append(g.breaks, from)
			at, from = 0, 0
		case block > page:
			at, block, from = 0, g.high[row], 0
		}
	}
	return true
}

// letters is the size of the largest letters of a row against the usual.
func (g *grid) letters(row int) float64 {
	most := 0.0
	for _, c := range g.rows[row-1] {
		most = max(most, c.look.scale())
	}
	return cmp.Or(most, 1)
}

// broken begins a new page at the rows that want one.
func (b *book) broken(g *grid) error {
	for _, row := range g.breaks {
		if err := b.file.InsertPageBreak(g.name, address(row, 1, false, false)); err != nil {
			return err
		}
	}
	return nil
}

// together begins a new page before a heading that would stand alone at the foot of one,
// on a sheet of full size.
func (g *grid) together() {
	const page = 9.5*72 - 2*lineHeight // points between the margins, with some room
	at := 0.0
	for row := 1; row < len(g.rows); row++ {
		if g.high[row] == 0 {
			g.height(row, lineHeight)
		}
		tall := g.high[row]
		if r := g.rows[row-1]; len(r) > 0 && r[0].look.role == heading && at+tall+max(lineHeight, g.high[row+1]) > page {
			g.breaks = append(g.breaks, row)
			at = 0
		}
		if at += tall; at > page {
			at = tall
		}
	}
}

// tab is the colour of a sheet's tab: pages, inputs and workings differ.
func (b *book) tab(g *grid) *string {
	colour := band
	for _, p := range b.pages {
		if p == g {
			colour = rule
		}
	}
	if g == b.inputs {
		colour = shade
	}
	return &colour
}

// width is how wide a column is.
func (g *grid) width(col int) float64 {
	const unset = 9.14
	if col <= len(g.widths) && g.widths[col-1] > 0 {
		return g.widths[col-1]
	}
	return unset
}

// headed prints the deal, the date and the page on every sheet.
func (b *book) headed(g *grid) error {
	const longest = 90 // of what may be 255 together
	plain := func(s string) string {
		if r := []rune(s); len(r) > longest {
			s = string(r[:longest])
		}
		return strings.ReplaceAll(s, "&", "&&")
	}
	date := ""
	if d := b.answer.Deal.PurchaseDate; !d.IsZero() {
		date = "purchase " + d.Long()
	}
	return b.file.SetHeaderFooter(g.name, &excelize.HeaderFooterOptions{
		OddHeader: "&L" + plain(b.answer.Deal.Name) + "&R" + date,
		OddFooter: "&L" + plain(g.name) + "&Rpage &P of &N",
	})
}

// repeated prints the heads of a sheet on each of its pages.
func (b *book) repeated(g *grid) error {
	var parts []string
	if g.left > 0 {
		last, _ := excelize.ColumnNumberToName(g.left) // columns are counted, so the number is sound
		parts = append(parts, sheetPrefix(g, nil)+"$A:$"+last)
	}
	if g.heads > 0 {
		parts = append(parts, fmt.Sprintf("%s$1:$%d", sheetPrefix(g, nil), g.heads))
	}
	if len(parts) == 0 {
		return nil
	}
	return b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: strings.Join(parts, ","), Scope: g.name})
}

// locked protects a sheet without a password; only inputs can be changed, and columns
// can be made wider.
func (b *book) locked(g *grid) error {
	return b.file.ProtectSheet(g.name, &excelize.SheetProtectionOptions{
		SelectLockedCells: true, SelectUnlockedCells: true, FormatColumns: true, FormatRows: true, EditScenarios: true,
	})
}

// annotated shows meanings as notes where the sheet is to have them.
func (b *book) annotated(g *grid) error {
	if !g.noted {
		return nil
	}
	for i, row := range g.rows {
		for j, c := range row {
			if c.note == "" {
				continue
			}
			const width, line, across = 260, 17, 34 // pixels, and units across
			n := excelize.Comment{Author: program, Cell: address(i+1, j+1, false, false), Text: c.note, Width: width, Height: uint(line * (linesOf(c.note, across) + 1))}
			if err := b.file.AddComment(g.name, n); err != nil {
				return err
			}
		}
	}
	return nil
}

// program is who made the file, in its properties.
const program = "ledgerboard"

// someDay stands in the properties where the deal names no day: no clock is asked.
var someDay = quantity.Date{Year: 2026, Month: 1, Day: 1}

func (b *book) properties() error {
	d := b.answer.Deal.PurchaseDate
	if d.IsZero() {
		d = someDay
	}
	at := d.String() + "T00:00:00Z"
	if err := b.file.SetDocProps(&excelize.DocProperties{
		Title: cmp.Or(b.answer.Deal.Name, "A deal"), Creator: program, LastModifiedBy: program, Created: at, Modified: at, Language: "en-US",
	}); err != nil {
		return err
	}
	return b.file.SetAppProps(&excelize.AppProperties{Application: program})
}
