package deal

import (
	"slices"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// fromParts are the keys from which measures follow that no key states. Never written to.
var fromParts = map[string]string{
	"doors": "doors: 1", "windows": "windows: 2", "cased openings": "cased openings: 1", "casing run": "doors: 1",
	"closets": "closets: 6' x 2'", "closet rod run": "closets: 6' x 2'",
	"tubs": `fixed: {tub: 5' x 2'6"}`, "showers": "fixed: {shower: 3' x 3'}", "wet walls": `fixed: {tub: 5' x 2'6"}`,
	"tub walls": `fixed: {tub: 5' x 2'6"}`, "shower walls": `fixed: {shower: 3' x 3'}`,
	"vanities": `fixed: {vanity: 2'6" x 1'9"}`, "toilets": "fixed: {toilet: 1}", "sinks": "fixed: {sink: 1}",
	"cabinet run": "fixed: {base cabinets: 12' x 2'}", "wall cabinet run": "fixed: {wall cabinets: 9' x 1'}",
	"island run": "fixed: {island: 5' x 3'}",
	"counter":    "fixed: {base cabinets: 12' x 2'}", "backsplash": "fixed: {base cabinets: 12' x 2'}", "stair area": "stairs: {treads: 13}",
	"roof": "roof: [{size: 40' x 28', pitch: 6/12}]", "siding": "around: 136 ft", "outside doors": "doors: 2", "outside windows": "windows: 11",
	"house perimeter": "outside: {around: 136 ft}", "house outside doors": "outside: {doors: 2}",
}

// givenBy is what a room or the outside would say so that there is some of a measure, or
// "" where that is not one key.
func givenBy(measure string) string {
	if from := fromParts[measure]; from != "" {
		return from
	}
	m := pricebook.MeasureNamed(measure)
	if m == nil || m.Of == "house" {
		return ""
	}
	for f := range rows() {
		switch {
		case !slices.Contains(f.feeds(), m.Line):
		case f.group() == "<room>.stairs":
			return "stairs: {" + f.Key() + ": " + f.Example + "}"
		case f.group() == "<room>" || f.group() == "outside":
			return f.Key() + ": " + f.Example
		}
	}
	return ""
}

// counted is a piece of work as it would be written with a count, done as it is now.
func (w *work) counted() string {
	n := map[quantity.Unit]string{"sq ft": "40 sq ft", "ft": "12 ft", "month": "4 months"}[w.item.Unit]
	switch {
	case n == "":
		n = "1"
	case w.item.Measure == "roof" && w.item.Unit == "sq ft":
		n = "1,200 sq ft"
	case w.item.Measure == "siding" && w.item.Unit == "sq ft":
		n = "1,500 sq ft"
	}
	how := "by: hired"
	if q, quoted := w.member.Given.Look("quote"); quoted {
		how = "quote: " + q.Text
	} else if w.byOwnHands() {
		how = "by: own hands"
	}
	return w.label + ": {" + how + ", count: " + n + "}"
}
