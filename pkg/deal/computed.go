package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// before works out the lines of rooms and of products bought in sticks, which are
// needed before the deal is whole.
func (r *reader) before() (*walk.Values[decimal.Decimal], bool) {
	var want []int
	add := func(m *model.Member, lines ...string) { want = append(want, r.deal.ownLines(m, lines...)...) }
	for _, room := range r.deal.Root.In("room") {
		add(room, "open_floor", "walls_less_all", "base_run", "siding", "walls_less_openings", "highest_ceiling", "perimeter", "closet_rod_run", "casing_run")
	}
	want = append(want, model.Indexes(r.deal.CutCells())...)
	for _, w := range r.eachWork() {
		add(w.member, "measure")
	}
	if len(want) == 0 {
		return nil, false
	}
	if err := r.deal.Known.Work(want...); err != nil {
		return nil, false
	}
	return r.deal.Known.Values, true
}

// ownLines are the cells of those of some lines that a member has itself.
func (d *Deal) ownLines(m *model.Member, lines ...string) (out []int) {
	for _, line := range lines {
		if c := d.Model.Find(m, line); c != nil && c.Member == m {
			out = append(out, c.Index)
		}
	}
	return out
}

// worked is what a line of a member comes to, and whether there is such a line.
func (r *reader) worked(m *model.Member, line string) (decimal.Decimal, bool) {
	c := r.deal.Model.Find(m, line)
	if c == nil {
		return decimal.Zero, false
	}
	return r.comesTo(c)
}

// comesTo is what a cell comes to, and whether it could be worked out.
func (r *reader) comesTo(c *model.Cell) (decimal.Decimal, bool) {
	if r.deal.Known.Work(c.Index) != nil {
		return decimal.Zero, false
	}
	return r.deal.Known.Values.Scalar[c.Index], true
}

// compute works out what comes from a named algorithm and not from a line, and refuses
// rooms that cannot be.
func (r *reader) compute() {
	v, ok := r.before()
	if !ok {
		return
	}
	r.fits(v)
	if r.diags.HasErrors() {
		return
	}
	r.workOfNothing(v)
	r.rollsTooShort()
	r.rollsOfWalks()
	if r.diags.HasErrors() {
		return
	}
	if g := r.good("local prices.kerf"); g != nil {
		r.deal.Kerf = &g.number
	}
	var err error
	if r.deal.Cuts, err = r.deal.CutLists(func(c *model.Cell) decimal.Decimal { return v.Scalar[c.Index] }); err != nil {
		r.say("no-cut-list", r.needed("rooms"), "%v", err)("check the sizes of the rooms and the lengths of the sticks")
		return
	}
	for _, list := range r.deal.Cuts {
		for cell, n := range list.Counts {
			r.deal.Model.Give(cell, model.Value{Number: n, Text: "by the cut list", Pos: list.Product.Pos})
		}
	}
}

// workOfNothing refuses work that the file names and of whose measure there is nothing:
// it would cost nothing without a word.
func (r *reader) workOfNothing(v *walk.Values[decimal.Decimal]) {
	for p, w := range r.eachWork() {
		if w.by == "" && w.scope.path != "" && !r.someOf(w, v) {
			tell := r.say("work-of-nothing", w.at, "%s: there is nothing to do it to, for %s of %s is 0", w.label, w.item.Measure, p.room.Label)
			if w.item.Measure == "doors" && hasDoorway(p.room) {
				tell("the door of a doorway is named, and this done, in the other room or outside; or say how much, e.g.   %s", w.counted())
				continue
			}
			if from := givenBy(w.item.Measure); from != "" {
				tell("say what there is:   %s   , or how much, e.g.   %s", from, w.counted())
				continue
			}
			tell("say how much, e.g.   %s", w.counted())
		}
	}
}

// hasDoorway reports whether a room has an opening of which another names the door.
func hasDoorway(room *model.Member) bool {
	return slices.ContainsFunc(room.In("opening"), func(o *model.Member) bool { return o.Given.Of("kind").Choice == "doorway" })
}

// someOf reports whether there is anything to do the work to.
func (r *reader) someOf(w *work, v *walk.Values[decimal.Decimal]) bool {
	c := r.deal.Model.Find(w.member, "measure")
	return c == nil || c.Member != w.member || v.Scalar[c.Index].IsPositive()
}

// rollsOfWalks refuses roll goods in a room of which only the walls are known: how they
// would lie depends on its rectangles, and they would cost nothing without a word.
func (r *reader) rollsOfWalks() {
	for p, w := range r.eachWork() {
		if len(p.room.In("leg")) > 0 && w.member.Given.Of("measure").Refers == "carpet_run" {
			r.say("rolls-of-walk", w.at, "%s: a walk around the walls of %s does not say how roll goods lie in it", w.label, p.room.Label)(rectanglesForWalls)
			continue
		}
		for _, use := range w.member.In("use") {
			if len(p.room.In("leg")) > 0 && use.Given.Of("along").Refers == "carpet_run" {
				r.say("rolls-of-walk", w.at, "%s: a walk around the walls of %s does not say how %s lies in it", w.label, p.room.Label, use.Label)(rectanglesForWalls)
			}
		}
	}
}

// rollsTooShort refuses wallpaper of whose roll not one drop can be cut, or of a half-drop pattern not
// one that is begun half of the repeat later.
func (r *reader) rollsTooShort() {
	for p, w := range r.eachWork() {
		for _, use := range w.member.In("use") {
			for _, d := range use.In("drop") {
				if r.unfit(d, "roll_long") {
					long, _ := r.worked(d, "drop_length")
					later := ""
					if a, _ := r.worked(d, "drops_a_roll"); a.IsPositive() {
						later = " that begins half of the repeat later"
					}
					r.say("roll-too-short", w.at, "a roll of %s is shorter than one drop%s in %s, %s ft", d.Label, later, p.room.Label, short(long))("take another paper, or give the roll its length in your own price book: roll: 20.5 in x 33 ft")
				}
			}
		}
	}
}

// fits refuses rooms whose openings and fixed parts take more than there is.
func (r *reader) fits(v *walk.Values[decimal.Decimal]) {
	for _, room := range r.deal.Root.In("inside") {
		for _, check := range []struct{ line, code, says, hint string }{
			{"open_floor", "fixed-over-floor", "the fixed parts take more than the floor", "check the size of the room and of what stands in it"},
			{"walls_less_all", "opening-over-wall", "the openings and surrounds take more than the walls", "check the sizes of doors and windows, and the height of the ceiling"},
			{"base_run", "opening-over-run", "doors, cabinets and tubs take more than the walls are long", "check the widths of doors and what stands along the walls"},
		} {
			c := r.deal.Model.Find(room, check.line)
			if x := v.Scalar[c.Index]; x.Round(9).IsNegative() {
				over := short(x.Neg()) + " sq ft"
				if c.Line.Unit == "ft" {
					over = lengthText(x.Neg(), sideOf(room))
				}
				r.say(check.code, room.Pos, "%s: %s by %s", room.Label, check.says, over)("%s", check.hint)
			}
		}
		r.openingsFit(v, room)
	}
	for _, out := range r.deal.Root.In("outside") {
		x, g := v.Scalar[r.deal.Model.Find(out, "walls_less_openings").Index], r.good("outside.around")
		if g != nil && x.Round(9).IsNegative() {
			r.say("opening-over-wall", g.at(), "the doors and windows outside take more than the walls of a house %s around, by %s sq ft", g.node.text, short(x.Neg()))("check around, and the sizes of doors and windows")
		}
	}
}

func short(x decimal.Decimal) string { return x.Round(2).String() }

// openingsFit refuses a single opening higher than the room or wider than its walls.
func (r *reader) openingsFit(v *walk.Values[decimal.Decimal], room *model.Member) {
	ceiling := v.Scalar[r.deal.Model.Find(room, "highest_ceiling").Index]
	longest, across, corner := r.come(r.deal.longestOf(room)), r.come(r.deal.acrossOf(room)), r.come(r.deal.cornerOf(room))
	for _, f := range room.In("fitting") {
		if l := f.Given.Of("fitting_length"); slices.Contains(oneWall, f.Given.Of("sort").Choice) && r.unfit(f, "fitting_length") {
			r.say("fixed-over-wall", l.Pos, "%s is %s long, longer than any wall of %s (%s ft)", f.Label, diag.Quote(l.Text), room.Label, short(longest))("check the length; write its length along the wall first")
		}
	}
	for _, f := range room.In("fitting") {
		if l := f.Given.Of("fitting_length"); unknownSort(f) && r.unfit(f, "fitting_length") {
			r.say("fixed-over-wall", l.Pos, "%s is %s long, longer than %s is along two walls (%s ft)", f.Label, diag.Quote(l.Text), room.Label, short(corner))("check its size, for feet and inches that have slipped; write its length along the wall first")
		}
		if l := longerOf(f.Given.Of("fitting_length"), f.Given.Of("fitting_depth")); f.Given.Of("sort").Choice == "island" && (r.unfit(f, "fitting_length") || r.unfit(f, "fitting_depth")) {
			r.say("fixed-over-wall", l.Pos, "%s is %s long, and %s is %s ft across at most", f.Label, diag.Quote(l.Text), room.Label, short(across))("check its size, for feet and inches that have slipped")
		}
	}
	high := func(m *model.Member, line, says string) {
		if v := m.Given.Of(line); v.Key != "" && r.unfit(m, line) {
			r.say("opening-over-ceiling", v.Pos, "%s goes up to %s, and %s is %s ft high", says, v.Text, room.Label, short(ceiling))("write how high it goes, at most the ceiling; or give the room its ceiling")
		}
	}
	high(room, "backsplash_height", "the backsplash")
	for _, f := range room.In("fitting") {
		high(f, "surround", "the surround of "+f.Label)
	}
	for _, o := range room.In("opening") {
		r.openingFits(room, o, longest, ceiling)
	}
}

// unfit reports whether something cannot be beside the room that it is in.
func (r *reader) unfit(m *model.Member, line string) bool {
	return slices.ContainsFunc(r.deal.Unfit(r.deal.Model.Find(m, line)), r.breaks)
}

// unknownSort reports whether a fixed part is none of those that are known.
func unknownSort(f *model.Member) bool {
	sort := f.Given.Of("sort").Choice
	return sort == "" || sort == "other"
}

// layered names what lies on a floor, as far as it is taken up when the floor is
// replaced. Never written to.
var layered = map[string]string{
	"carpet": "strip carpet", "vinyl": "strip sheet vinyl", "tile": "strip floor tile", "wood": "strip nailed wood floor", "laminate": "strip floating floor",
}

// harder is what takes up the like of a layer in place of its usual work. Never written to.
var harder = map[string]string{"strip floor tile": "strip mortar bed floor tile"}

// peelLeaves reports whether what is left out would take up a layer for a new floor.
func (r *reader) peelLeaves(p *plan, name string) bool {
	return slices.Contains(r.peels(p), name)
}

// peels are the names of what takes up the layers of a room for a new floor of a plan.
func (r *reader) peels(p *plan) (names []string) {
	g := r.good(r.roomPaths[p.room] + "layers")
	if g == nil || !slices.ContainsFunc(p.works, func(w *work) bool { return w.item.NewFloor }) {
		return nil
	}
	for _, s := range g.words() {
		names = append(names, layered[plainKey(s.text)])
	}
	return names
}

// peel lets a new floor take up what lies on the old one, layer by layer.
func (r *reader) peel(p *plan) {
	g := r.good(r.roomPaths[p.room] + "layers")
	if g == nil {
		return
	}
	var floors []*work
	for _, w := range p.works {
		if w.item.NewFloor {
			floors = append(floors, w)
		}
	}
	named := map[string]int{} // layers that the file names the work for
	for i, s := range g.words() {
		name, known := layered[plainKey(s.text)]
		if !known {
			r.layerUnknown(s)
			continue
		}
		it := r.prices().Item(name)
		if len(floors) == 0 || it == nil || p.leavesOut(name) {
			continue
		}
		if _, counted := named[name]; !counted {
			named[name] = r.layersNamed(p, it)
			if other := r.prices().Item(harder[name]); other != nil {
				named[name] += r.layersNamed(p, other)
			}
		}
		if named[name]--; named[name] >= 0 {
			continue
		}
		over := floors[0]
		m := p.option.Add("item", "", fmt.Sprintf("%s, layer %d", name, i+1))
		m.Pos = s.at
		if who, ok := over.member.Given.Look("who"); ok {
			m.Give("who", who)
		}
		w := &work{item: it, member: m, label: m.Label, by: strings.TrimSpace(over.label), at: s.at}
		for _, f := range floors {
			w.bringers = append(w.bringers, brought{pricebook.Companion{Item: name}, f})
		}
		p.works = append(p.works, w)
	}
}

// layersIn is how many layers so much work takes up: one more where it is more than those
// below and what a tape slips by.
func layersIn(sum, all decimal.Decimal) int {
	layers := sum.DivRound(all, quantity.Places).Sub(roomTimes.Sub(one)).Ceil()
	return int(decimal.Max(one, decimal.Min(layers, decimal.NewFromInt(mostWorks))).IntPart())
}

// layersOf is how many layers of a room work of an item takes up, each of which is all of its
// measure; 1 for what takes up none.
func (r *reader) layersOf(room *model.Member, it *pricebook.Item) (n int) {
	if g := r.good(r.roomPaths[room] + "layers"); g != nil {
		for _, s := range g.words() {
			if layered[plainKey(s.text)] == it.Name {
				n++
			}
		}
	}
	return max(1, n)
}

// namedOf is how much of an item the file itself names in a plan, and the last work of it.
func (r *reader) namedOf(p *plan, it *pricebook.Item, all decimal.Decimal) (sum decimal.Decimal, last *work) {
	for _, w := range p.works {
		if w.item != it || w.by != "" {
			continue
		}
		if r.good(w.scope.path+"count") != nil {
			r.measureOf(p, w)
		}
		sum, last = sum.Add(w.stated().of(all)), w
	}
	return sum, last
}

// layersNamed is how many layers the file itself has taken up by work of an item: one where
// it names it, more where it names or counts more than all there is.
func (r *reader) layersNamed(p *plan, it *pricebook.Item) int {
	all := r.allThereIs(p, it.Measure)
	sum, _ := r.namedOf(p, it, all)
	if !sum.IsPositive() || !all.IsPositive() {
		return int(sum.Sign())
	}
	return layersIn(sum, all)
}
