package pricebook

// Place is what a companion's condition asks about.
type Place struct {
	Kind         string // bath, kitchen, bedroom, laundry, basement, closet or ""
	YearBuilt    int    // 0 if unknown
	DarkWalls    bool
	CarpetBelow  bool
	UtilitiesOff bool
	Tub          bool
	Windows      bool
	Doors        bool
}

// conditions are the words behind "if". An unknown year counts as old, which is the
// careful reading.
var conditions = map[string]func(Place) bool{
	"bath":          func(p Place) bool { return p.Kind == "bath" },
	"kitchen":       func(p Place) bool { return p.Kind == "kitchen" },
	"bedroom":       func(p Place) bool { return p.Kind == "bedroom" },
	"laundry":       func(p Place) bool { return p.Kind == "laundry" },
	"basement":      func(p Place) bool { return p.Kind == "basement" },
	"closet":        func(p Place) bool { return p.Kind == "closet" },
	"wet":           func(p Place) bool { return p.Kind == "bath" || p.Kind == "kitchen" || p.Kind == "laundry" },
	"before 1978":   func(p Place) bool { return p.YearBuilt < 1978 },
	"before 1990":   func(p Place) bool { return p.YearBuilt < 1990 },
	"dark walls":    func(p Place) bool { return p.DarkWalls },
	"carpet below":  func(p Place) bool { return p.CarpetBelow },
	"utilities off": func(p Place) bool { return p.UtilitiesOff },
	"tub":           func(p Place) bool { return p.Tub },
	"windows":       func(p Place) bool { return p.Windows },
	"doors":         func(p Place) bool { return p.Doors },
}

// Comes reports whether the companion comes along in a place.
func (c Companion) Comes(p Place) bool { return c.If == "" || conditions[c.If](p) }
