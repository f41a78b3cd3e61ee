package workbook

import (
	"slices"
	"strings"
)

// An attachment is a paper that a lender asks for, with what it is for.
type attachment struct{ paper, about string }

// attachmentsPage lists the papers that go with the breakdown, with boxes to tick and a
// place to sign.
func (b *book) attachmentsPage(d *breakdown) {
	if d == nil || len(b.answer.Loans()) == 0 {
		return
	}
	g := b.page(&grid{name: "Attachments", heads: 3, widths: []float64{6, 30, 56, 12}})
	g.set(1, 1, text("Attachments", look{role: title}))
	g.height(1, titleHeight)
	g.set(2, 1, text("What goes with the request. Put an x in the box of what is attached.", look{role: small}))
	for i, h := range []string{"box", "paper", "for", "day"} {
		g.set(3, i+1, text(h, look{role: heading, off: i == 1}))
	}
	for _, a := range d.attachments() {
		row := g.next()
		g.set(row, 1, cell{look: look{role: blank, center: true}})
		g.set(row, 2, text(a.paper, look{wrap: true, off: true}))
		g.set(row, 3, text(a.about, look{wrap: true}))
		g.set(row, 4, cell{look: look{role: blank}})
	}
	row := g.next() + 1
	for _, s := range []string{"owner, name", "signature", "day"} {
		g.set(row, 2, text(s, look{right: true}))
		g.set(row, 3, cell{look: look{role: blank}})
		row += 2
	}
	g.set(row, 1, text("The lender's own list goes before this one.", look{role: small}))
}

// attachments are the papers by what the lines of the breakdown are.
func (d *breakdown) attachments() []attachment {
	var quotes, unseen, licences, permits, rooms []string
	add := func(to *[]string, s string) {
		if !slices.Contains(*to, s) {
			*to = append(*to, s)
		}
	}
	limit := d.answer.Line("lump_limit")
	for _, r := range d.rows {
		l := r.line
		if l.unseen {
			add(&unseen, r.number+" "+inShort(l))
			continue
		}
		if l.dated != "" || l.oneSum && l.category != "" && d.exactly(r.row, colTotal).GreaterThan(limit) {
			add(&quotes, r.number+" "+inShort(l))
		}
		if trade, _, needed := strings.Cut(l.who, "; licence"); needed {
			add(&licences, trade)
		}
		if l.permit == "yes" {
			add(&permits, r.number)
		}
		if l.room != "" {
			add(&rooms, l.room)
		}
	}
	all := []attachment{
		{"purchase contract, signed", "with every addendum and the day by which it closes"},
		{"value after repair", "sales of comparable houses, or an appraisal subject to the work"},
	}
	if d.model.Find(d.model.Root, "as_is_value").Given != nil {
		all = append(all, attachment{"value as it is", "the appraisal or opinion that it rests on"})
	}
	if d.partnered() {
		all = append(all, attachment{"agreement with the partner", "who pays what, and who is paid what at the sale"})
	}
	for _, q := range quotes {
		all = append(all, attachment{"quote, signed, with its day", q})
	}
	if len(quotes) == 0 {
		all = append(all, attachment{"quotes, signed, with their day", "lines that trades do"})
	}
	for _, u := range unseen {
		all = append(all, attachment{"inspection's report", u})
	}
	for _, l := range licences {
		all = append(all, attachment{"licence", l})
	}
	if len(licences) == 0 {
		all = append(all, attachment{"licences", "trades that need one here"})
	}
	all = append(all,
		attachment{"insurance naming the lender", "the house, vacant and under work (builder's risk)"},
		attachment{"certificates of liability insurance", "each trade on the house"},
		attachment{"permits", listed(permits, "lines ", "as far as the building department asks for them")},
		attachment{"plans", "walls that move, and whatever needs a permit"},
		attachment{"photos before work starts", listed(rooms, "", "each room, each side of the house, the roof")},
		attachment{"proof of cash", "statement not older than the lender asks for"},
		attachment{"cost breakdown, signed", "this workbook's"},
	)
	return all
}

// listed is a list in words, or what stands for it if it is empty.
func listed(all []string, before, none string) string {
	if len(all) == 0 {
		return none
	}
	return before + strings.Join(all, ", ")
}
