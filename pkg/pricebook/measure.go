package pricebook

import (
	"slices"

	"ledgerboard/pkg/quantity"
)

// A Measure is something that work is measured by: what people call it, the model's
// line and its unit.
type Measure struct {
	Name string
	Line string
	Unit quantity.Unit
	Of   string // inside, outside or house
}

// Months is the measure of what is rented while work goes on. No line of a room holds
// it, for the length of the work depends on the rooms.
const Months = "months of work"

// Measures are all there are, in the order of the docs.
var Measures = slices.Concat(
	measures("inside", "sq ft", "floor", "floor_area", "open floor", "open_floor", "ceiling", "ceiling_area", "walls", "wall_area",
		"walls less all openings", "walls_less_all", "walls less large openings", "walls_less_large", "wet walls", "wet_walls", "tub walls", "tub_walls", "shower walls", "shower_walls",
		"backsplash", "backsplash", "counter", "counter", "stair area", "stair_area"),
	measures("inside", "ft", "perimeter", "perimeter", "base run", "base_run", "casing run", "casing_run", "crown run", "crown_run",
		"cabinet run", "cabinet_run", "wall cabinet run", "wall_cabinet_run", "island run", "island_run", "closet rod run", "closet_rod_run", "stair rail run", "stair_rail_run", "carpet run", "carpet_run"),
	measures("inside", "each", "stair treads", "stair_treads", "doors", "doors", "windows", "windows", "cased openings", "cased_openings",
		"closets", "closets", "tubs", "tubs", "showers", "showers", "vanities", "vanities", "toilets", "toilets", "sinks", "sinks",
		"outlets", "outlets", "lights", "lights", "registers", "registers"),
	measures("outside", "sq ft", "roof", "roof", "siding", "siding", "soffit", "soffit", "deck", "deck", "yard", "yard",
		"driveway", "driveway", "walk", "walk", "patio", "patio"),
	measures("outside", "ft", "eaves", "eaves", "rakes", "rakes", "gutters", "gutters", "fence", "fence", "deck rail", "deck_rail",
		"foundation run", "foundation_run"),
	measures("outside", "each", "trees", "trees", "downspouts", "downspouts", "deck footings", "deck_footings", "outside doors", "outside_doors", "outside windows", "outside_windows"),
	measures("house", "sq ft", "house floor", "house_floor", "house living area", "house_living_area",
		"house finished floor", "house_finished_floor", "house ground floor", "house_ground_floor", "house walls", "house_walls",
		"house ceiling", "house_ceiling"),
	measures("house", "ft", "house perimeter", "house_perimeter"),
	measures("house", "each", "house doors", "house_doors", "house outside doors", "house_outside_doors", "house windows", "house_windows",
		"house rooms", "house_rooms", "house baths", "house_baths", "house bedrooms", "house_bedrooms", "house levels", "house_levels"),
	measures("house", "month", Months, "months_of_work"),
	measures("", "each", "one", "one"),
)

func measures(of string, unit quantity.Unit, pairs ...string) []Measure {
	var out []Measure
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, Measure{pairs[i], pairs[i+1], unit, of})
	}
	return out
}

// partOf are the measures that are part of another, by name. Never written to.
var partOf = map[string]string{"tub walls": "wet walls", "shower walls": "wet walls"}

// PartOf reports whether what goes by one measure goes by a part of another.
func PartOf(part, measure string) bool { return partOf[part] == measure && measure != "" }

// HasParts reports whether other measures are part of one.
func HasParts(measure string) bool {
	for _, of := range partOf {
		if of == measure {
			return true
		}
	}
	return false
}

// AtEnd reports whether a part of a measure lies at the end of it, and not at the beginning: the walls of a
// shower lie beside those of a tub, but of a shower over the tub they are the same.
func AtEnd(part string) bool { return part == "shower walls" }

// surfaces are the measures that take the same surface with more or less of its openings, by
// name. Never written to.
var surfaces = map[string]string{"walls less all openings": "walls", "walls less large openings": "walls", "walls": "walls"}

// SameSurface reports whether a part of one measure is as large a part of the other: it is the
// same measure, or the same surface with more or less of its openings.
func SameSurface(one, other string) bool {
	return one == other || surfaces[one] != "" && surfaces[one] == surfaces[other]
}

// MeasureNamed returns the measure of that name, or nil.
func MeasureNamed(name string) *Measure {
	if i := slices.IndexFunc(Measures, func(m Measure) bool { return m.Name == name }); i >= 0 {
		return &Measures[i]
	}
	return nil
}
