package comps

import (
	"slices"
	"strconv"
	"strings"
)

// The words of a garage: for how many cars, of what kind, and that there is none. What is
// said by any other word is not known.
var (
	carWords    = map[string]float64{"one": 1, "single": 1, "two": 2, "double": 2, "three": 3, "triple": 3, "four": 4}
	garageKinds = map[string]string{"att": "attached", "attach": "attached", "attchd": "attached", "det": "detached", "detach": "detached", "detchd": "detached", "bsmt": "basement", "builtin": "built in"}
	kindWords   = []string{"attached", "detached", "carport", "basement", "built", "in", "integral", "integrated", "tuck", "under", "tandem", "oversized", "heated", "finished", "unfinished", "side", "front", "rear", "entry", "load", "loading", "frame", "brick", "block", "shared"}
	noGarage    = []string{"none", "no", "n", "without"}
	inTheOpen   = []string{"street", "drive", "driveway", "pad"}
	fillers     = []string{"car", "cars", "garage", "gar", "stall", "stalls", "space", "spaces", "bay", "bays", "port", "parking", "only", "on", "for", "with", "and", "yes", "y"}
)

// mostCars is how many cars the garage of a house is for at most; more is hardly a count of
// them (common practice, no source).
const mostCars = 10

// SomeGarage is the kind of a garage of which nothing is said but that there is one.
const SomeGarage = "garage"

// garage reads a kind of garage, for how many cars it is, or both.
func (r *row) garage(s string) error {
	g, ok := garageOf(r.word(s))
	if !ok {
		r.doubt = &garageDoubt
		return nil
	}
	if g.cars.Known && g.cars.Value == 0 && g.kind == "" {
		g = garageSaid{kind: "none"}
	}
	if g.cars.Known {
		r.GarageCars = g.cars
	}
	r.Garage = r.word(g.kind)
	return nil
}

// parking reads a garage where the cell says that it tells of one: cars may park in the open too.
func (r *row) parking(s string) error {
	g, clear := garageOf(r.word(s))
	if some := g.cars.Value > 0 || g.kind == SomeGarage; clear && some && !g.indoors && (g.kind == "" || g.kind == SomeGarage) {
		r.doubt = &parkingDoubt
		return nil
	}
	err := r.garage(s)
	if r.doubt == &garageDoubt && !slices.ContainsFunc(garageWords(r.word(s)), ofAGarage) {
		r.doubt = &parkingDoubt
	}
	return err
}

// garageWords parts what is said of a garage into words.
func garageWords(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" -,;/()&+", r) })
}

// ofAGarage reports whether a word is of a garage and not of parking in the open.
func ofAGarage(word string) bool {
	return garageKinds[word] != "" || slices.Contains([]string{"garage", "gar", "attached", "detached", "carport", "basement", "built", "integral", "tuck"}, word)
}

// garageCars reads for how many cars a garage is, besides what its own column says of it, which goes
// before: beside some cars there, none are those that nobody counted.
func (r *row) garageCars(s string) error {
	g, clear := garageOf(r.word(s))
	if clear && g.kind == "none" && r.Garage == "" {
		r.Garage = r.word(g.kind)
		return nil
	}
	n := g.cars
	if !clear || !n.Known {
		if err := count(&n, s); err != nil {
			return err
		}
	}
	switch {
	case !r.GarageCars.Known:
		r.GarageCars = n
	case n.Value > 0 && n != r.GarageCars:
		r.doubt = &carsDoubt
	}
	if r.Garage == "" {
		r.Garage = r.word(g.kind)
	}
	return nil
}

// nought reports whether a fact is said to be 0.
func nought(f Fact) bool { return f.Known && f.Value == 0 }

// twoGarages reports whether a garage is said not to be and also to be for cars or of some size.
func (h *House) twoGarages() bool {
	some := h.GarageCars.Value > 0 || h.GarageArea.Value > 0
	return some && h.Garage == "none" || h.Garage == "" && h.GarageArea.Value > 0 && nought(h.GarageCars)
}

// unmeasured takes back noughts of cars or of a size of a garage: nobody counted or measured it.
func (h *House) unmeasured() {
	for _, f := range []*Fact{&h.GarageCars, &h.GarageArea} {
		if nought(*f) {
			*f = Fact{}
		}
	}
}

// settleGarage draws what follows from what is said of a garage together. One of none is for nought
// cars and of no size, whatever the other houses are counted by; of one for some cars a size of nothing
// is one that nobody measured, and nought cars of one of some kind nobody counted.
func (h *House) settleGarage() {
	switch {
	case h.twoGarages():
		h.Garage, h.GarageCars, h.GarageArea = "", Fact{}, Fact{}
		return
	case h.GarageCars.Value > 0, h.Garage != "" && h.Garage != "none":
		h.unmeasured()
	case h.Garage == "" && (nought(h.GarageCars) || nought(h.GarageArea)):
		h.Garage = "none"
	}
	if h.Garage == "none" {
		h.GarageCars, h.GarageArea = Known(0), Known(0)
	}
}

type garageSaid struct {
	cars    Fact
	kind    string
	indoors bool // it is called a garage
}

// garageOf is what a text says of a garage, and whether it is clear.
func garageOf(text string) (g garageSaid, ok bool) {
	var kinds []string
	before := false // in the open, and then for how many
	none, open, some := false, false, false
	for _, w := range garageWords(text) {
		w = strings.TrimRight(w, ".")
		if k := garageKinds[w]; k != "" {
			w = k
		}
		cars, counted := carsIn(w)
		switch {
		case counted && g.cars.Known:
			return garageSaid{}, false
		case counted:
			g.cars = Known(cars)
		case slices.Contains(noGarage, w):
			none = true
		case slices.Contains(inTheOpen, w):
			open = true
			before = before || !g.cars.Known
		case w == "built in" || slices.Contains(kindWords, w):
			kinds = append(kinds, w)
		case slices.Contains(fillers, w):
			some, g.indoors = true, g.indoors || w == "garage" || w == "gar"
		default:
			return garageSaid{}, false
		}
	}
	g.kind = strings.Join(kinds, " ")
	switch {
	case g.cars.Value > mostCars, none && g.cars.Value > 0:
		return garageSaid{}, false
	case none, open && before && g.kind == "" && !g.indoors: // cars in the street have no garage
		return garageSaid{kind: "none"}, true
	case open && g.kind == "" && !g.indoors:
		return garageSaid{}, false
	case g.cars.Known || g.kind != "":
		return g, true
	}
	return garageSaid{kind: SomeGarage, indoors: g.indoors}, some
}

// carsIn reads a number of cars: 2, 2.0, 2car or two.
func carsIn(word string) (float64, bool) {
	if n, ok := carWords[word]; ok {
		return n, true
	}
	bare := strings.TrimSuffix(strings.TrimSuffix(word, "s"), "car")
	if bare == "" || strings.Trim(bare, "0123456789.") != "" {
		return 0, false
	}
	n, err := strconv.ParseFloat(bare, 64)
	return n, err == nil
}

// CarsGuessed reports whether the garage of a house counts as one for a car only because
// nothing says for how many it is.
func (h *House) CarsGuessed() bool {
	return h.Garage != "" && h.Garage != "none" && !h.GarageCars.Known
}
