package comps

import (
	"slices"
	"strings"
	"unicode"
)

// field is one thing that a column of the list can hold.
type field struct {
	name  string // as in Options.Columns and in messages
	unit  string // what a bare number is in if the header names no unit
	names []string
	read  func(*row, string) error
}

// fields are all that is read, most telling first. Every name is in lower case with
// single spaces and without its unit, as plain makes them.
var fields = []field{
	{"label", "", []string{"address", "property", "property address", "site address", "parcel", "parcel id", "parcel number", "id"}, (*row).label},
	{"date", "", []string{"sale date", "sold date", "date sold", "date of sale", "sold", "sold on", "saledate", "sale dt", "transfer date", "recorded", "recording date", "closed", "close date", "closing date"}, (*row).date},
	{"price", "", []string{"sale price", "sold price", "selling price", "price sold", "sold for", "saleprice", "sale amt", "closed price", "amount", "sale amount", "consideration"}, (*row).price},
	{"concessions", "", []string{"concession", "seller concessions", "seller credit", "seller credits", "credits"}, (*row).concessions},
	{"area", "sqft", []string{"living area", "living", "size", "square feet", "square footage", "gla", "gross living area", "finished area", "heated area", "building area"}, (*row).area},
	{"lot", "sqft", []string{"lot size", "lot area", "land", "land area", "site", "site area"}, (*row).lot},
	{"bedrooms", "", []string{"bedroom", "beds", "bed", "br"}, (*row).bedrooms},
	{"baths", "", []string{"bath", "bathrooms", "bathroom", "total baths"}, (*row).baths},
	{"full baths", "", []string{"full bath", "baths full", "bath full", "full bathrooms"}, (*row).fullBaths},
	{"half baths", "", []string{"half bath", "baths half", "bath half", "half bathrooms", "powder rooms"}, (*row).halfBaths},
	{"year built", "", []string{"built", "year", "yr built", "yearbuilt", "construction year"}, (*row).built},
	{"kind", "", []string{"type", "property type", "house type", "use", "class", "property class"}, (*row).kind},
	{"storeys", "", []string{"stories", "story", "storey", "levels", "floors", "style"}, (*row).storeys},
	{"wall", "", []string{"walls", "exterior", "exterior wall", "outside wall", "siding"}, (*row).wall},
	{"garage", "", []string{"garage type", "parking", "car storage"}, (*row).garage},
	{"garage area", "sqft", []string{"garage size"}, (*row).garageArea},
	{"garage cars", "", []string{"cars", "garage spaces", "garage stalls", "parking spaces", "garage capacity"}, (*row).garageCars},
	{"condition", "", []string{"cond", "overall condition"}, (*row).condition},
	{"x", "m", []string{"easting", "x coord", "x coordinate"}, (*row).x},
	{"y", "m", []string{"northing", "y coord", "y coordinate"}, (*row).y},
	{"longitude", "", []string{"lon", "lng", "long"}, (*row).longitude},
	{"latitude", "", []string{"lat"}, (*row).latitude},
	{"distance", "mi", []string{"proximity", "dist"}, (*row).distance},
	{"terms", "", []string{"sale terms", "terms of sale", "sale type", "deed", "deed type", "arms length", "qualified", "validity", "sale validity"}, (*row).terms},
	{"source", "", []string{"data source", "from"}, (*row).source},
}

// units are the words at the end of a header that say what its numbers are in.
var units = map[string]string{
	"sqft": "sqft", "sf": "sqft", "sq ft": "sqft", "ft2": "sqft", "m2": "m2", "sqm": "m2", "sq m": "m2",
	"acres": "acres", "acre": "acres", "ac": "acres",
	"m": "m", "ft": "ft", "km": "km", "mi": "mi", "miles": "mi",
}

// plain returns a header in lower case with single spaces between its words, and
// its unit, which is taken off unless nothing would be left.
func plain(header string) (name, unit string) {
	words := strings.FieldsFunc(strings.ToLower(header), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	words = slices.DeleteFunc(words, func(w string) bool { return w == "usd" || w == "s" })
	if units[strings.Join(words, " ")] == "sqft" {
		return "area", "sqft" // a column named sq ft alone is the size of the house
	}
	for _, n := range []int{2, 1} {
		if len(words) > n {
			if u := units[strings.Join(words[len(words)-n:], " ")]; u != "" {
				name = strings.Join(words[:len(words)-n], " ")
				if name == "garage" {
					name = "garage area" // garage_sqft is no kind of garage
				}
				return name, u
			}
		}
	}
	return strings.Join(words, " "), ""
}

// fieldOf returns the field of a plain header, or -1.
func fieldOf(name string) int {
	return slices.IndexFunc(fields, func(f field) bool {
		return f.name == name || slices.Contains(f.names, name)
	})
}

// fieldNames lists what Options.Columns can name.
func fieldNames() []string {
	out := make([]string, len(fields))
	for i, f := range fields {
		out[i] = f.name
	}
	return out
}
