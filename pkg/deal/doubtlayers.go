package deal

import (
	"slices"

	"ledgerboard/pkg/diag"
)

// woodFinish is what work on the wood of an old floor makes.
const woodFinish = "wood floor finish"

// doubtLayers doubts work on an old wood floor under layers that nothing takes up. Carpet
// comes up by itself.
func (r *reader) doubtLayers() {
	for _, p := range r.plans {
		g := r.good(r.roomPaths[p.room] + "layers")
		i := slices.IndexFunc(p.works, func(w *work) bool { return w.item.Thing() == woodFinish })
		if !p.taken || g == nil || i < 0 || slices.ContainsFunc(p.works, func(w *work) bool { return w.item.NewFloor }) {
			continue
		}
		for _, s := range g.words() {
			layer := plainKey(s.text)
			if layer == "wood" {
				break
			}
			if name := layered[layer]; name != "" && layer != "carpet" && !p.has(name) && !p.leavesOut(name) {
				r.say("layer-stays", p.works[i].at, "%s is for the wood below, and nothing takes up the %s on it", diag.Quote(p.works[i].label), layer)("add   %s: hired   to the work, or take %s out of the layers", name, layer)
				break
			}
		}
	}
}
