package workbook

import (
	"strings"

	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/model"
)

// A role is what a cell is for; it decides colour and whether it is locked.
type role int

const (
	result   role = iota
	input         // given by the deal: shaded, unlocked
	fallback      // an input at its default: framed, unlocked
	label
	heading
	title
	total // a result with a line above it
	strong
	small // explanations
	blank // to be filled in by hand: framed, unlocked
	alarm // a check that speaks up
	found // a result of a search: it does not follow the inputs
	foundStrong
	foundTotal // with a line above it
	lead       // what is read first
)

// A look is all that a style is made of.
type look struct {
	role   role
	format string // number format
	wrap   bool
	right  bool
	center bool
	size   float64 // of its letters in points, 0 for the role's
	off    bool    // a step away from its neighbour on the left
}

// Number formats. A flag is 1 or 0 and shows as a word.
const (
	dollars  = `$#,##0.00;-$#,##0.00;$0.00`
	rounded  = `$#,##0;-$#,##0;$0`
	percent  = `0.00%`
	plain    = `General` // #.## would leave a point behind whole numbers
	whole    = `#,##0`
	twoPlace = `#,##0.00`
	yesNo    = `"yes";"yes";"no"`
	tenths   = `#,##0.0`
	notKnown = `"not known"` // in place of a number that stands in for one
	portions = `#,##0.00##`  // of goods: small ones still show
	day      = `mmmm d, yyyy`
	limited  = `[>=900000000000]"no limit";$#,##0.00` // a stand-in for no limit is larger than any deal
)

// formatFor is the number format of a line of the model.
func formatFor(l *model.Line) string {
	if l.Unit == "$" && (l.ID() == "loan.room" || l.ID() == "loan.closing_room" || strings.Contains(l.Rule(), noLimit)) {
		return limited
	}
	return formatOf(l.Unit)
}

// noLimit is what the lines take for no limit.
const noLimit = "1000000000000"

// formatOf is the number format of a unit of the model.
func formatOf(unit string) string {
	switch unit {
	case "$":
		return dollars
	case "share", "share/year":
		return percent
	case "flag":
		return yesNo
	case "choice":
		return ""
	case "month", "hour", "week", "ft", "sqft", "cuft", "lb", "unit":
		return twoPlace
	case "good":
		return portions
	case "$/hour", "$/month", "$/year", "$/quarter", "$/sqft", "$/unit", "$/good", "$/pack":
		return dollars
	}
	return plain
}

// unitWords is a unit of the model for people, each word for itself.
func unitWords(unit string) string {
	return strings.NewReplacer("sqft", "sq ft", "cuft", "cu ft").Replace(unit)
}

// face is the font of all cells.
const face = "Liberation Sans"

const (
	ink    = "1F2A30"
	shade  = "FFF4CC" // of inputs
	band   = "DDE6E4" // of headings
	rule   = "8FA3A0"
	muted  = "56656B"
	warned = "8A1C1C"
)

// style makes the style of a look known to the file, once.
func (b *book) style(l look) error {
	if _, known := b.styles[l]; known {
		return nil
	}
	s := &excelize.Style{
		Font:       &excelize.Font{Family: face, Size: 10, Color: ink},
		Alignment:  &excelize.Alignment{Vertical: "top", WrapText: l.wrap},
		Protection: &excelize.Protection{Locked: true},
	}
	if format := l.format; format != "" { // a copy, for a look whose own text is pointed at would cost each call an allocation
		s.CustomNumFmt = &format
	}
	switch {
	case l.right:
		s.Alignment.Horizontal = "right"
	case l.center:
		s.Alignment.Horizontal = "center"
	}
	if l.off {
		s.Alignment.Horizontal, s.Alignment.Indent = "left", 1
	}
	frame := func(sides ...string) {
		for _, side := range sides {
			s.Border = append(s.Border, excelize.Border{Type: side, Color: rule, Style: 1})
		}
	}
	fill := func(c string) { s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{c}} }
	switch l.role {
	case input:
		fill(shade)
		frame("left", "right", "top", "bottom")
		s.Protection.Locked = false
	case fallback, blank:
		frame("left", "right", "top", "bottom")
		s.Protection.Locked = false
	case heading:
		fill(band)
		s.Font.Bold = true
		frame("bottom")
	case title:
		s.Font.Bold, s.Font.Size = true, 15
	case total:
		s.Font.Bold = true
		frame("top")
	case strong:
		s.Font.Bold = true
	case small:
		s.Font.Color = muted
	case found:
		s.Font.Italic, s.Font.Color = true, muted
	case foundStrong:
		s.Font.Italic, s.Font.Bold = true, true
	case foundTotal:
		s.Font.Italic, s.Font.Bold = true, true
		frame("top")
	case lead:
		s.Font.Bold, s.Font.Size = true, 12
	case alarm:
		s.Font.Bold, s.Font.Color = true, warned
	}
	if l.size > 0 {
		s.Font.Size = l.size
	}
	id, err := b.file.NewStyle(s)
	b.styles[l] = id
	return err
}
