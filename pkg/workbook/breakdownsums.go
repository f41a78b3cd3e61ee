package workbook

import "slices"

// sumsTooLarge speaks up where a line in one sum is more than a tenth of all together: by name of
// those that are half of that as the file stands, and of all others together.
func (d *breakdown) sumsTooLarge() {
	limit := d.model.Find(d.model.Root, "lump_limit")
	at := numeral(d.answer.Values.Of(limit), bindsNothing)
	if p := d.places[limit.Index]; p.grid != nil {
		at = p.from(d.g, 0)
	}
	var large []lineRow
	others := slices.Clone(d.asleep)
	for _, r := range d.rows {
		half := d.exactly(r.row, colTotal).Add(d.exactly(r.row, colTotal))
		switch {
		case !r.line.oneSum || r.line.category == "":
		case half.LessThan(d.answer.Values.Of(limit)):
			others = append(others, r.row)
		default:
			large = append(large, r)
		}
	}
	if len(large)+len(others) == 0 {
		return
	}
	d.g.set(d.g.next()+1, 1, text("Lines in one sum, of a twentieth of all together or more as the file stood", look{role: strong, size: tableSize}))
	for _, r := range large {
		row := d.g.next()
		d.g.set(row, colNumber, text(r.number, look{size: tableSize}))
		d.g.set(row, colRoom, text(inShort(r.line), look{size: tableSize}))
		ask := "have it split into materials and labour, or attach the quote"
		if r.line.unseen {
			ask = "have it inspected, and attach the report"
		}
		c := d.says(address(r.row, colTotal, false, false)+">"+at, d.exactly(r.row, colTotal).GreaterThan(d.answer.Values.Of(limit)),
			"OVER A TENTH OF ALL TOGETHER IN ONE SUM: "+ask, "under a tenth of all together")
		c.look.role = label
		d.g.set(row, colWho, c)
	}
	if len(others) > 0 {
		row := d.g.next()
		d.g.set(row, colRoom, text("all others in one sum", look{size: tableSize}))
		c := d.says(largestOf(others, colTotal)+">"+at, false, "ONE OF THEM HAS GROWN OVER A TENTH OF ALL TOGETHER: have it split, or attach the quote or an inspection's report", "under a tenth of all together")
		c.look.role = label
		d.g.set(row, colWho, c)
	}
}

// largestOf is the formula of the largest of some cells of a column, those of neighbouring rows
// as one range.
func largestOf(rows []int, col int) string {
	slices.Sort(rows)
	var spans []string
	for first := 0; first < len(rows); {
		last := first
		for last+1 < len(rows) && rows[last+1] == rows[last]+1 {
			last++
		}
		span := address(rows[first], col, false, false)
		if last > first {
			span += ":" + address(rows[last], col, false, false)
		}
		spans, first = append(spans, span), last+1
	}
	return nested("MAX(", spans)
}
