package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtBetweenLayers doubts work of the file that takes up more than one layer and less than
// the next, for nothing else takes up the rest of that.
func (r *reader) doubtBetweenLayers() {
	for _, p := range r.chosenPlans() {
		for _, w := range p.works {
			there := r.layersOf(p.room, w.item)
			if there == 1 {
				continue
			}
			all := r.allThereIs(p, w.item.Measure)
			sum, last := r.namedOf(p, w.item, all)
			if w != last || !all.IsPositive() {
				continue
			}
			layers := layersIn(sum, all)
			full, slip := all.Mul(decimal.NewFromInt(int64(layers))), all.Mul(roomTimes.Sub(one))
			if layers > 1 && layers <= there && sum.LessThan(full.Sub(slip)) {
				r.say("layer-in-part", w.at, "%s takes up %s %s, more than %d and less than %d of the %d layers of %s %s in %s, and nothing takes up the rest", diag.Quote(w.item.Name), quantity.FormatCount(sum, 1), w.item.Unit, layers-1, layers, there, quantity.FormatCount(all, 1), w.item.Unit, p.room.Label)("write   count: %s %s   for %d layers; without a count it is for one, and a new floor takes up the others by itself; it is used as it stands", quantity.FormatCount(full, 2), w.item.Unit, layers)
			}
		}
	}
}

// doubtLeftLayers doubts a layer that an option does without taking up, over one that is taken up.
func (r *reader) doubtLeftLayers() {
	for _, p := range r.chosenPlans() {
		g := r.good(r.roomPaths[p.room] + "layers")
		if g == nil {
			continue
		}
		stays := -1 // which of what is left out
		for _, s := range g.words() {
			name := layered[plainKey(s.text)]
			if stays >= 0 && (p.has(name) || p.has(harder[name])) {
				r.say("layer-stays", p.without[stays].at, "%s is left out, and the %s under what it would take up is taken up", diag.Quote(p.without[stays].text), plainKey(s.text))("leave out   %s   too, or nothing of the layers over it; it is used as it stands", name)
				break
			}
			if i := slices.IndexFunc(p.without, func(s span) bool { return plainKey(s.text) == name }); i >= 0 && stays < 0 && !p.has(name) && !p.has(harder[name]) {
				stays = i
			}
		}
	}
}

// noteUnlayered notes the rooms that get a new floor while the file says neither what lies on
// the old one nor names work that takes it up: none is.
func (r *reader) noteUnlayered() {
	for _, p := range r.chosenPlans() {
		lays := slices.ContainsFunc(p.works, func(w *work) bool { return w.item.NewFloor })
		takesUp := slices.ContainsFunc(p.works, func(w *work) bool { return w.by == "" && takesUpAFloor(w.item.Name) })
		if lays && !takesUp && r.got[r.roomPaths[p.room]+"layers"] == nil && !slices.Contains(r.deal.Unlayered, p.room.Label) {
			r.deal.Unlayered = append(r.deal.Unlayered, p.room.Label)
		}
	}
}

// takesUpAFloor reports whether an item of the starter book takes up what lies on a floor.
func takesUpAFloor(item string) bool {
	for _, name := range layered {
		if item == name || item == harder[name] {
			return true
		}
	}
	return false
}

// doubtLayers doubts work on an old wood floor under layers that nothing takes up, be it beside a new floor. Carpet
// comes up by itself.
func (r *reader) doubtLayers() {
	for _, p := range r.plans {
		g := r.good(r.roomPaths[p.room] + "layers")
		i := slices.IndexFunc(p.works, func(w *work) bool { return w.item.Thing() == pricebook.WoodFinish })
		if !p.taken || g == nil || i < 0 || !r.leavesOldFloor(p, p.works[i]) {
			continue
		}
		takenUp := func(name string) bool { // for a new floor it comes up beside
			return slices.ContainsFunc(p.works, func(w *work) bool {
				return w.item.Name == name && !slices.ContainsFunc(w.bringers, func(x brought) bool { return x.by.item.NewFloor })
			})
		}
		for _, s := range g.words() {
			layer := plainKey(s.text)
			if layer == "wood" {
				break
			}
			if name := layered[layer]; name != "" && layer != "carpet" && !takenUp(name) && !takenUp(harder[name]) && !p.leavesOut(name) {
				r.say("layer-stays", p.works[i].at, "%s is for the wood below, and nothing takes up the %s on it", diag.Quote(p.works[i].label), layer)("add   %s: hired   to the work, or take %s out of the layers", name, layer)
				break
			}
		}
	}
}

// leavesOldFloor reports whether the new floors of a plan leave old floor beside them, for work that is not the
// finish of these.
func (r *reader) leavesOldFloor(p *plan, finish *work) bool {
	left := one
	for _, w := range p.works {
		if !w.item.NewFloor {
			continue
		}
		part, known := r.partOf(w)
		if !known || r.bringsInEnd(w.item, finish.item) {
			return false
		}
		left = left.Sub(part)
	}
	return left.IsPositive()
}
