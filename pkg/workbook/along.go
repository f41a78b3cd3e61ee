package workbook

import (
	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
)

// What is said of work that brings other work along: once its counts have changed, and where there is too
// much of it for a formula to see that.
const (
	alongAnew  = "Counts or parts of work have changed: how much comes along with it is that of the deal file as it was (Notes)."
	alongStays = "Where counts or parts of work are changed, how much comes along with it stays that of the deal file (Notes)."
)

// alongSame is the condition that work which brings other work along is done to as much of a room as in
// the deal file, or "" where none does: how much then comes along goes by where each lies, which no
// formula works out.
func (b *book) alongSame() string {
	var same []string
	for _, c := range b.bringing() {
		same = append(same, "ROUND("+b.cellRef(c)+",6)="+numeral(b.answer.Values.Of(c).Round(6), bindsAll))
	}
	if len(same) == 0 {
		return ""
	}
	return nested("AND(", same)
}

// alongSays is the formula that tells whether what comes along still fits, in words behind others or alone.
func (b *book) alongSays(fit, before string) string {
	same := b.alongSame()
	switch {
	case same == "":
		return ""
	case len(same) > longest/3:
		return quoted(before + alongStays)
	}
	return "IF(ISERROR(" + same + ")," + quoted(before+alongStays) + ",IF(" + same + "," + quoted(fit) + "," + quoted(before+alongAnew) + "))"
}

// bringing are the inputs of how much work is done that brings along what goes by a measure: its part,
// its count, and what it counts of where something comes along by a part.
func (b *book) bringing() (out []*model.Cell) {
	for _, room := range b.model.Root.In("room") {
		for _, option := range room.In("option") {
			items := option.In("item")
			for _, m := range items {
				byPart, any := alongWith(b.answer, items, m)
				if !any {
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

// alongWith reports whether a piece of work that the file names brings along what goes by a measure, and
// whether some of that is done to a part.
func alongWith(a *answer.Answer, items []*model.Member, by *model.Member) (byPart, any bool) {
	if w := a.Deal.Work[by]; w == nil || w.By != "" {
		return false, false
	}
	for _, m := range items {
		if w := a.Deal.Work[m]; w == nil || w.By != a.Deal.Work[by].Item.Name || w.Item.Measure == "one" {
			continue
		}
		any = true
		_, part := m.Given.Look("part")
		byPart = byPart || part
	}
	return byPart, any
}
