package workbook

import (
	"slices"

	"ledgerboard/pkg/model"
)

// A shelf is a sheet on which the members of some sets stand, each set in a table.
type shelf struct {
	sheet string
	sets  []string
	said  string // above its tables
}

// shelves are the sheets with the members of sets. Loans and sold houses are few and have
// many lines, so each is a column there.
var shelves = []shelf{
	{"Loans", []string{"loan"}, ""},
	{"Sold houses", []string{"comp", "extra", "mark"}, ""},
	{"Charges", []string{"fee", "table", "bracket", "deposit"}, ""},
	{"Lines of work", []string{"cost", "stage"}, ""},
	{"Rooms", []string{"room", "section", "leg", "opening", "fitting", "plane", "option", "trade", "check"}, ""},
	{"Pieces of work", []string{"item", "caller", "bringer", "renewal"},
		"Who: own or hired moves the hours and the labour of that piece alone. What comes along with it, such as tools or protection, stays as it was: choosing anew takes the program."},
	{"What it takes", []string{"use", "drop", "rental"}, ""},
	{"What is bought", []string{"product"}, ""},
	{"Sticks", []string{"stock"}, ""},
}

// inPlace are the sets whose inputs stand in their tables; the others' stand on the
// sheet of inputs.
var inPlace = []string{"item", "caller", "renewal", "use", "drop", "rental", "product", "stock", "comp", "extra", "mark"}

// A table is the members of one kind with their lines.
type table struct {
	grid    *grid
	title   string
	lines   []*model.Line
	members []*model.Member
	cells   map[*model.Member]map[*model.Line]*model.Cell
	head    int // the row of the names of the lines
	across  bool
}

// lay finds a place for every cell and returns the tables to fill.
func (b *book) lay() []*table {
	tables := b.tables()
	b.inputs = b.sheet(&grid{name: "Inputs", widths: []float64{34, 18, 11, 46, 60}, heads: 3})
	b.layInputs()
	b.layDeal()
	for _, s := range shelves {
		g, n := &grid{name: s.sheet, heads: 1, left: 2}, 0
		if s.said != "" && len(b.model.Root.In("room")) > 0 {
			g.set(1, 1, text(s.said, look{role: small}))
			g.heads = 3
		}
		for _, t := range tables {
			if slices.Contains(s.sets, t.members[0].Set) {
				t.grid = g
				b.layTable(t)
				if len(t.lines) > 0 {
					n++
				}
			}
		}
		if n > 1 {
			g.heads = 0 // the heads of one table would stand over the rows of another
		}
		if len(g.rows) > 1 {
			b.sheet(g)
		}
	}
	b.layMonths()
	return tables
}

// tables are the members of the deal by set and kind, in the order of the document.
func (b *book) tables() []*table {
	byKind := map[string]*table{}
	var all []*table
	for _, c := range b.model.Cells {
		m := c.Member
		if m.Set == model.Deal || c.Line.Monthly {
			continue
		}
		t := byKind[m.Set+m.Kind]
		if t == nil {
			t = &table{title: m.Set, cells: map[*model.Member]map[*model.Line]*model.Cell{}, across: m.Set == "loan" || m.Set == "comp"}
			if m.Kind != "" {
				t.title = m.Kind
			}
			byKind[m.Set+m.Kind] = t
			all = append(all, t)
		}
		if t.cells[m] == nil {
			t.cells[m] = map[*model.Line]*model.Cell{}
			t.members = append(t.members, m)
		}
		t.cells[m][c.Line] = c
		if !slices.Contains(t.lines, c.Line) {
			t.lines = append(t.lines, c.Line)
		}
	}
	return all
}
