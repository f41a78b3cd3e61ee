package deal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// A saleNamed is a sale that some word names.
type saleNamed struct {
	number int
	word   string
	at     diag.Pos
}

// salesAsked are the sales to leave out and those to use whatever else speaks against
// them. What is asked beside the file goes before the file.
type salesAsked struct{ strike, add []saleNamed }

func holdsSale(all []saleNamed, number int) bool {
	return slices.ContainsFunc(all, func(s saleNamed) bool { return s.number == number })
}

func (a salesAsked) added() (out []int) {
	for _, s := range a.add {
		out = append(out, s.number)
	}
	return out
}

// askedSales finds the sales that are struck and added, by the file and beside it.
func (r *reader) askedSales(l *salesList) salesAsked {
	var file, beside salesAsked
	for key, to := range map[string][2]*[]saleNamed{"strike": {&file.strike, &beside.strike}, "add": {&file.add, &beside.add}} {
		if g := r.good("comps." + key); g != nil {
			for _, w := range g.words() {
				*to[0] = append(*to[0], r.salesNamed(l, key, w.text, w.at)...)
			}
		}
	}
	for _, name := range r.asked.Strike {
		beside.strike = append(beside.strike, r.salesNamed(l, "strike", name, diag.Pos{File: "--strike", Line: 1})...)
	}
	for _, name := range r.asked.Add {
		beside.add = append(beside.add, r.salesNamed(l, "add", name, diag.Pos{File: "--add", Line: 1})...)
	}
	r.bothWays(file)
	r.bothWays(beside)
	without := func(all, but []saleNamed) []saleNamed {
		return slices.DeleteFunc(slices.Clone(all), func(s saleNamed) bool { return holdsSale(but, s.number) })
	}
	return salesAsked{
		strike: append(without(file.strike, beside.add), beside.strike...),
		add:    append(without(file.add, beside.strike), beside.add...),
	}
}

// bothWays refuses sales that are struck and added in one place.
func (r *reader) bothWays(a salesAsked) {
	said := ""
	for _, s := range a.add {
		if holdsSale(a.strike, s.number) && said != s.word {
			r.say("struck-and-added", s.at, "%s is both struck and added", diag.Quote(s.word))("take it out of one of them; of two rows of one sale, strike the row by its line: line 7")
			said = s.word
		}
	}
}

// salesNamed are the sales that a word names: by address, or by line, with the file that it
// is of where several have such a line.
func (r *reader) salesNamed(l *salesList, key, name string, at diag.Pos) (out []saleNamed) {
	var labels []string
	line, file, _ := strings.Cut(strings.TrimPrefix(plainKey(name), "line "), " of ")
	as := map[string][]comps.Sold{}
	for _, s := range l.sales {
		p := l.at[s.Line]
		switch {
		case plainKey(s.Label) == plainKey(name):
			as["label"] = append(as["label"], s)
		case line == strconv.Itoa(p.Line) && (s.Label == "" || line != plainKey(name)) && (file == "" || plainKey(p.File) == file):
			as["line"] = append(as["line"], s)
		case comps.SameAddress(s.Label, name):
			as["address"] = append(as["address"], s)
		}
		labels = append(labels, s.Label)
	}
	found := append(as["label"], as["line"]...)
	if len(found) == 0 {
		found = as["address"]
	}
	another := func(s comps.Sold) bool {
		return s.Line != found[0].Line && (len(as["label"]) == 0 && len(as["line"]) > 0 || s.Label != found[0].Label && !comps.SameAddress(s.Label, found[0].Label))
	}
	if other := slices.IndexFunc(found, another); other >= 0 {
		r.say("ambiguous-sale", at, "%s names %s and %s", diag.Quote(name), l.with(found[0]), l.with(found[other]))("write which to %s: its address in full, or its line with the file, e.g.   line %d of %s", key, l.at[found[0].Line].Line, l.at[found[0].Line].File)
		return nil
	}
	for _, s := range found {
		out = append(out, saleNamed{s.Line, name, at})
	}
	if len(out) > 0 {
		return out
	}
	tell := r.say("unknown-sale", at, "there is no sale %s to %s", diag.Quote(name), key)
	if near, ok := diag.Nearest(name, labels); ok {
		tell("did you mean %q?", near)
	} else {
		tell("write its address as the list has it, or its line: line 7")
	}
	return nil
}

// with is a sale's name with the file and line that it stands in.
func (l *salesList) with(s comps.Sold) string {
	p := l.at[s.Line]
	return fmt.Sprintf("%s (line %d of %s)", s.Name(), p.Line, p.File)
}

// addedTooLate refuses to add sales that are not from before the day.
func (r *reader) addedTooLate(l *salesList, a salesAsked, day quantity.Date) {
	for _, s := range l.sales {
		i := slices.IndexFunc(a.add, func(n saleNamed) bool { return n.number == s.Line })
		if i >= 0 && s.Date.Compare(day) >= 0 {
			r.say("added-too-late", a.add[i].at, "%s cannot be added: it was sold on %s, and the value is for %s, by sales before that day", s.Name(), s.Date, day)("do not add it, or say   day: %s   under comps if that is the day of the value", s.Date.AddDays(1))
		}
	}
}

// notUsed are the sales that the value is not drawn from, with why: of a file, which may
// be a whole county's, those alone that are doubtful, passed over or struck.
func (l *salesList) notUsed(leftOut []comps.Passed, choice *comps.Choice, aside []comps.Sold, a salesAsked, day quantity.Date) []comps.Passed {
	var out []comps.Passed
	said := map[int]bool{}
	for _, s := range choice.Comps {
		said[s.Line] = true
	}
	say := func(s comps.Sold, why string) {
		if !said[s.Line] {
			out = append(out, comps.Passed{Sold: s, Why: why})
			said[s.Line] = true
		}
	}
	for _, p := range slices.Concat(leftOut, choice.Passed) {
		say(p.Sold, p.Why)
	}
	for _, s := range aside {
		say(s, s.Doubts())
	}
	for _, s := range l.sales {
		own := slices.Contains(l.own, s.Line)
		switch {
		case holdsSale(a.strike, s.Line):
			say(s, "struck")
		case own && s.Date.Compare(day) >= 0:
			say(s, "not before the day of the value")
		case own:
			say(s, "less like the house than those that are used")
		}
	}
	return out
}

// unstruck are the sales but those struck: of two rows of one sale, that which is left
// is no second one.
func (l *salesList) unstruck(a salesAsked) []comps.Sold {
	return slices.DeleteFunc(slices.Clone(l.sales), func(s comps.Sold) bool { return holdsSale(a.strike, s.Line) })
}
