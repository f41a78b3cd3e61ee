package deal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtInstead doubts work of one option that makes more than all of one thing: a laminate
// counter and one of stone, a new tub and the old one reglazed, one item under two names, a
// floor of tile and carpet on a part of it; and companions that come whole beside what is
// done in their place to a part, or with a patch.
func (r *reader) doubtInstead() {
	r.doubtHouseBoth()
	r.doubtComesNew()
	for _, p := range r.plans {
		var things []string
		of := map[string][]*work{}
		for _, w := range p.works {
			thing := r.oneThing(p.room, w.item)
			if _, known := r.partOf(w); thing == "" || w.by != "" || !known {
				continue
			}
			if of[thing] == nil {
				things = append(things, thing)
			}
			of[thing] = append(of[thing], w)
		}
		for _, thing := range things {
			r.doubtMoreThanAll(p, r.withoutBrought(of[thing]))
		}
		r.doubtBoth(p)
		r.doubtTakenOut(p)
		r.doubtFramed(p)
		r.doubtNotOpened(p)
		r.doubtOldOnes(p)
		r.doubtWhole(p)
		for _, x := range p.beside {
			r.say("part-instead", x[1].at, "%s is done to a part of %s, so %s comes along whole", diag.Quote(x[1].label), p.room.Label, diag.Quote(x[0].label))("leave that out with   without: [%s]   or write it as work of its own, with its   count:", x[0].item.Name)
		}
	}
}

// doubtWhole doubts what comes along whole with work that is done to a small part.
func (r *reader) doubtWhole(p *plan) {
	of := map[*work][]string{}
	for _, x := range p.whole {
		of[x.by] = append(of[x.by], x.Item)
	}
	for _, w := range p.works {
		if names := strings.Join(of[w], ", "); names != "" {
			part := "a small part"
			if all := r.allThereIs(p, w.item.Measure); w.item.Unit == "each" && all.IsPositive() {
				done, _ := r.worked(w.member, "quantity")
				part = fmt.Sprintf("%s of %s %s", quantity.FormatCount(done, 0), quantity.FormatCount(all, 0), w.item.Measure)
			}
			r.say("part-brings-whole", w.at, "%s is done to %s of %s, and brings along for all of it: %s", diag.Quote(w.label), part, p.room.Label, names)("where the patch takes less, write   without: [%s]   or write that as work of its own, with its   count:", names)
		}
	}
}

// withoutBrought are some works but for those that others of them would bring along, as the coats that a floor
// gets once it is sanded.
func (r *reader) withoutBrought(works []*work) []*work {
	return slices.DeleteFunc(slices.Clone(works), func(w *work) bool {
		return slices.ContainsFunc(works, func(by *work) bool { return by.item != w.item && r.bringsInEnd(by.item, w.item) })
	})
}

// oneThing is what of a place an item does that is done once: what it makes, or, measured by
// the place, the item itself; "" for what there may be two of. The walls of a shower over a tub
// are those of the tub.
func (r *reader) oneThing(room *model.Member, it *pricebook.Item) string {
	if it.Thing() == "shower walls" {
		if own, known := r.worked(room, "shower_walls"); known && !slices.ContainsFunc(room.In("fitting"), r.hasShowerWalls) && own.IsPositive() {
			return "tub walls"
		}
	}
	m := pricebook.MeasureNamed(it.Measure)
	if it.Thing() == "" && m != nil && m.Of != "" && m.Unit != "month" {
		return "item " + it.Name
	}
	return it.Thing()
}

// hasShowerWalls reports whether a fixed part is a shower with a surround of its own.
func (r *reader) hasShowerWalls(f *model.Member) bool {
	wet, known := r.worked(f, "wet_of_shower")
	return known && wet.IsPositive()
}

// doubtMoreThanAll doubts work that together is more than all of one thing, or of all the
// layers that it takes up.
func (r *reader) doubtMoreThanAll(p *plan, works []*work) {
	if layers := r.layersOf(p.room, works[0].item); layers > 1 {
		r.doubtMoreThanLayers(p, works, layers)
		return
	}
	if slices.ContainsFunc(works, r.foundUsed) { // and is done up
		works = slices.DeleteFunc(slices.Clone(works), func(w *work) bool { return slices.Contains(onOldOnes, w.item.Name) })
	}
	const hint = "keep one of them, or say how much each is for, with   part: 50%%   or   count:"
	var first *work // that is done to all
	var names []string
	var sum decimal.Decimal
	told := false
	for _, w := range works {
		part, _ := r.partOf(w)
		sum, names = sum.Add(part), append(names, diag.Quote(w.label))
		switch {
		case !r.allOf(w):
		case first == nil:
			first = w
		case w.item.Thing() == "":
			told = true
			r.say("done-twice", w.at, "%s and %s are both %s, all of it, in %s", diag.Quote(first.label), diag.Quote(w.label), w.item.Name, p.room.Label)(hint)
		default:
			told = true
			r.say("done-twice", w.at, "%s and %s both make all of the %s of %s", diag.Quote(first.label), diag.Quote(w.label), w.item.Thing(), p.room.Label)(hint)
		}
	}
	if last := works[len(works)-1]; !told && len(works) > 1 && sum.GreaterThan(one) {
		r.say("done-twice", last.at, "%s are together %s of the %s of %s", strings.Join(names, ", "), quantity.FormatPercent(sum, 1), cmp.Or(last.item.Thing(), last.item.Name), p.room.Label)("the parts of one thing add up to 100%%: beside   part: 30%%   write   part: 70%%   for the rest; all are paid as they stand")
	}
}

// foundUsed reports whether what work puts in is a find that was used before.
func (r *reader) foundUsed(w *work) bool {
	return w.allowed() && !slices.Contains(onOldOnes, w.item.Name) && secondHand().MatchString(r.text(w, "note"))
}

// doubtMoreThanLayers doubts work that takes up more layers than there are.
func (r *reader) doubtMoreThanLayers(p *plan, works []*work, layers int) {
	var names []string
	var sum decimal.Decimal
	for _, w := range works {
		part, _ := r.partOf(w)
		sum, names = sum.Add(part), append(names, diag.Quote(w.label))
	}
	if last := works[len(works)-1]; len(works) > 1 && sum.GreaterThan(decimal.NewFromInt(int64(layers))) {
		r.say("done-twice", last.at, "%s are together %s of the %s of %s, which has %d layers of it", strings.Join(names, ", "), quantity.FormatPercent(sum, 1), pricebook.MeasureNamed(last.item.Measure).Name, p.room.Label, layers)("name it once for each layer at most; all are paid as they stand")
	}
}

// doubtBoth doubts work of one option beside work that is in place of it or has it in it: the
// old base set back and a new one, casing and door casing.
func (r *reader) doubtBoth(p *plan) {
	told := map[*work]bool{}
	for _, w := range p.works {
		for _, x := range p.works {
			if told[x] || !slices.Contains(w.item.InsteadOf, x.item.Name) || w.by != "" && x.by != "" {
				continue
			}
			how, whole := "both are done to all of it", r.allOf(w) && r.allOf(x)
			if !whole {
				a, known := r.partOf(w)
				b, both := r.partOf(x)
				if !known || !both || w.by != "" || x.by != "" || !a.Add(b).GreaterThan(one) {
					continue
				}
				how = "they are done to " + quantity.FormatPercent(a.Add(b), 1) + " together"
			}
			told[x] = true
			at, leave := x.at, "leave "+x.item.Name+" out"
			if x.by != "" {
				at, leave = w.at, "leave it out with   without: ["+x.item.Name+"]  "
			}
			r.say("done-twice", at, "%s is in place of %s in %s, and %s", diag.Quote(w.label), diag.Quote(x.label), p.room.Label, how)("%s, or say how much each is for, with   part: 50%%   or   count:", leave)
		}
	}
}

// partOf is what part of its measure work is done to; it is not known of what is counted.
func (r *reader) partOf(w *work) (decimal.Decimal, bool) {
	if w.by != "" && w.member.Given.Of("measure").Refers == "" || r.good(w.scope.path+"count") != nil {
		return decimal.Zero, false
	}
	if part, said := w.member.Given.Look("part"); said {
		return part.Number, true
	}
	return one, true
}

// allOf reports whether work is done to all of its measure.
func (r *reader) allOf(w *work) bool {
	part, known := r.partOf(w)
	return known && part.GreaterThanOrEqual(one)
}
