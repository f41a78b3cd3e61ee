package workbook

import "ledgerboard/pkg/model"

// What is said of work that brings other work along: once its counts have changed, and where there is too
// much of it for a formula to see that.
const (
	alongAnew  = "Counts or parts of work have changed: how much comes along with it is that of the deal file as it was (Notes)."
	alongStays = "Where counts or parts of work are changed, how much comes along with it stays that of the deal file (Notes)."
)

// alongSame is the condition that work is done to as much of each room as in the deal file, wherever work
// brings other work along, or "" where none does: how much then comes along goes by where each lies, which no
// formula works out.
func (b *book) alongSame() string {
	var same []string
	for _, c := range b.howMuch() {
		if b.places[c.Index].grid == nil { // which nobody can type over
			continue
		}
		same = append(same, "ROUND("+b.cellRef(c)+",6)="+numeral(b.answer.Values.Of(c).Round(6), bindsAll))
	}
	if len(same) == 0 {
		return ""
	}
	return nested("AND(", same)
}

// alongSays is the formula that tells whether what comes along still fits, in words behind others or alone, and
// what it tells at first.
func (b *book) alongSays(fit, before string) (formula, first string) {
	same := b.alongSame()
	switch {
	case same == "":
		return "", ""
	case len(same) > longest/3: // for it stands there twice
		return quoted(before + alongStays), before + alongStays
	}
	return "IF(ISERROR(" + same + ")," + quoted(before+alongStays) + ",IF(" + same + "," + quoted(fit) + "," + quoted(before+alongAnew) + "))", fit
}

// howMuch are the inputs of how much work that the file names is done, its part and its count, in options
// where work brings other work along; and what it counts of, where something comes along by a part.
func (b *book) howMuch() (out []*model.Cell) {
	for _, room := range b.model.Root.In("room") {
		for _, option := range room.In("option") {
			byPart, any := b.brings(option)
			if !any {
				continue
			}
			for _, m := range option.In("item") {
				if w := b.answer.Deal.Work[m]; w == nil || w.By != "" {
					continue
				}
				out = append(out, b.model.Find(m, "part"))
				if v, counted := m.Given.Look("measure"); counted && v.Refers == "" {
					out = append(out, b.model.Find(m, "measure"))
					if byPart {
						out = append(out, b.model.Find(m, "measured"))
					}
				}
			}
		}
	}
	return out
}

// brings reports whether work of an option brings other work along, and whether some of that is done to a part.
func (b *book) brings(option *model.Member) (byPart, any bool) {
	for _, m := range option.In("item") {
		if w := b.answer.Deal.Work[m]; w == nil || w.By == "" {
			continue
		}
		any = true
		_, part := m.Given.Look("part")
		byPart = byPart || part
	}
	return byPart, any
}
