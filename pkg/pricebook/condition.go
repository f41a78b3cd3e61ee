package pricebook

import "slices"

// Place is what a companion's condition asks about.
type Place struct {
	Kind         string // bath, kitchen, bedroom, laundry, basement, closet or ""
	YearBuilt    int    // 0 if unknown
	DarkWalls    bool
	CarpetBelow  bool
	UtilitiesOff bool
	Tub          bool
	Shower       bool
	Windows      bool
	Doors        bool
	OwnHands     bool // of the work that brings it
}

// A Condition is a word that may stand behind "if", where a companion comes only then.
type Condition struct {
	Name, Meaning string
	holds         func(Place) bool
}

// Conditions are all there are, in the order of the docs. An unknown year counts as
// old, which is the careful reading.
var Conditions = []Condition{
	{"bath", "the room is a bath", func(p Place) bool { return p.Kind == "bath" }},
	{"kitchen", "the room is a kitchen", func(p Place) bool { return p.Kind == "kitchen" }},
	{"bedroom", "the room is a bedroom", func(p Place) bool { return p.Kind == "bedroom" }},
	{"laundry", "the room is a laundry", func(p Place) bool { return p.Kind == "laundry" }},
	{"basement", "the room is a basement", func(p Place) bool { return p.Kind == "basement" }},
	{"closet", "the room is a closet", func(p Place) bool { return p.Kind == "closet" }},
	{"wet", "the room is a bath, a kitchen or a laundry", func(p Place) bool { return p.Kind == "bath" || p.Kind == "kitchen" || p.Kind == "laundry" }},
	{"before 1978", "the house was built before 1978, or it is not said when", func(p Place) bool { return p.YearBuilt < 1978 }},
	{"before 1990", "the house was built before 1990, or it is not said when", func(p Place) bool { return p.YearBuilt < 1990 }},
	{"dark walls", "the room has `dark walls: yes`", func(p Place) bool { return p.DarkWalls }},
	{"carpet below", "carpet is among the room's `layers`", func(p Place) bool { return p.CarpetBelow }},
	{"utilities off", "the house has `utilities: off`", func(p Place) bool { return p.UtilitiesOff }},
	{"tub", "a tub is among the room's `fixed` parts", func(p Place) bool { return p.Tub }},
	{"shower", "a shower is among the room's `fixed` parts", func(p Place) bool { return p.Shower }},
	{"windows", "the room has a window", func(p Place) bool { return p.Windows }},
	{"doors", "the room has a door of its own, no doorway alone", func(p Place) bool { return p.Doors }},
	{"own hands", "the work that brings it is by own hands", func(p Place) bool { return p.OwnHands }},
}

func conditionNamed(name string) *Condition {
	if i := slices.IndexFunc(Conditions, func(c Condition) bool { return c.Name == name }); i >= 0 {
		return &Conditions[i]
	}
	return nil
}

// Comes reports whether the companion comes along in a place.
func (c Companion) Comes(p Place) bool { return c.If == "" || conditionNamed(c.If).holds(p) }
