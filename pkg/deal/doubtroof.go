package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// Shingles lie on no roof that rises less than 2 inches a foot, and a membrane hardly on one of 4 or
// more: building codes and common practice.
var leastShingled, mostMembrane = decimal.New(1666, -4), decimal.New(3333, -4)

// doubtFlatShingles doubts shingles on a part of the roof whose pitch nobody gave, so that it
// counts as flat, or that is too flat for them, and a membrane on a roof that is steep all over. Where both are done, each is
// for a part.
func (r *reader) doubtFlatShingles(out *model.Member) {
	if r.roofed(out, "flat roof") != nil && r.roofed(out, "shingle") != nil { // each to its part
		return
	}
	steep := 0
	for _, p := range out.In("plane") {
		pitch := p.Given.Of("pitch")
		if !pitch.Number.LessThan(mostMembrane) {
			steep++
		}
		if !pitch.Number.LessThan(leastShingled) {
			continue
		}
		if w := r.roofed(out, "shingle"); w != nil && pitch.Number.IsPositive() {
			r.say("roof-flat", pitch.Pos, "a part of the roof rises %s, and %s goes onto it, which takes 2/12 or more", pitch.Text, w.label)("check the pitch; a roof as flat takes a membrane, as   flat roof")
			return
		} else if w != nil {
			r.say("roof-flat", p.Given.Of("plane_length").Pos, "a part of the roof has no pitch, so it counts as flat, and %s goes onto it", w.label)("write the rise for each 12 inches across, e.g.   pitch: 6/12   ; a flat roof takes a membrane")
			return
		}
	}
	if w := r.roofed(out, "flat roof"); w != nil && r.allOf(w) && steep > 0 && steep == len(out.In("plane")) {
		r.say("roof-flat", w.at, "all of the roof is pitched, and %s goes onto it", w.label)("check the pitch; a roof as steep takes shingles, as   shingle roof gable")
	}
}

// doubtHipEdges doubts a hip roof whose edges are those of a gable roof, or a small part of what it is
// around, for it has eaves all around.
func (r *reader) doubtHipEdges(out *model.Member) {
	w := r.roofed(out, "hip")
	_, eavesSaid := out.Given.Look("eaves")
	_, rakesSaid := out.Given.Look("rakes")
	if w == nil || r.roofed(out, "gable") != nil || len(out.In("plane")) == 0 {
		return
	}
	var around decimal.Decimal
	for _, p := range out.In("plane") {
		long, wide, over := p.Given.Of("plane_length").Number, p.Given.Of("plane_width").Number, p.Given.Of("overhang").Number
		around = around.Add(long.Add(wide).Add(over.Mul(decimal.NewFromInt(4))).Mul(two))
	}
	eaves, _ := r.worked(out, "eaves")
	rakes, _ := r.worked(out, "rakes")
	if eavesSaid && rakesSaid {
		if most := eaves.Add(rakes); most.IsPositive() && most.LessThan(around.Mul(half).Mul(half)) {
			r.say("roof-hip", w.at, "%s goes onto a roof with %s ft of eaves and %s ft of rakes, and its parts are %s ft around; a hip roof has eaves all around", w.label, short(eaves), short(rakes), short(around))("check the eaves, for inches in the place of feet or a digit left out: all around it is   eaves: %s, rakes: 0 ft   , less where parts of the roof meet", feetText(around))
		}
		return
	}
	r.say("roof-hip", w.at, "%s goes onto a roof with %s ft of eaves and %s ft of rakes, as a gable has; a hip roof has eaves all around", w.label, short(eaves), short(rakes))("write   eaves: %s, rakes: 0 ft   , less where parts of the roof meet", feetText(around))
}

// roofed is work named on the roof whose name holds a word, or nil.
func (r *reader) roofed(out *model.Member, word string) *work {
	for _, w := range r.chosenWorks() {
		if w.by == "" && w.item.Measure == "roof" && strings.Contains(w.item.Name, word) && w.member.Parent.Parent == out {
			return w
		}
	}
	return nil
}
