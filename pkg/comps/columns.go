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

// fields are all that is read, in the order in which they are. Of the names of one the most
// telling stands first, since of two such columns it is read; the field's own name before
// all, unless it has a place among them. Every name is in lower case with single spaces and
// without its unit, as plain makes them.
var fields = []field{
	{"address", "", []string{"property address", "site address", "situs address", "situs addr", "situs", "street address", "location address", "full address", "unparsed address", "prop address", "prop addr", "property addr", "site addr", "property location", "addr", "street", "label", "property", "parcel", "parcel id", "parcel number", "parcel no", "parid", "id"}, (*row).label},
	{"unit", "", []string{"unit number", "unit no", "apartment", "apt", "apt number", "apt no"}, (*row).part},
	{"date", "", []string{"sale date", "sold date", "date sold", "date of sale", "sold", "sold on", "saledate", "saledt", "sale dt", "close date", "closed date", "date closed", "closing date", "selling date", "closed", "settlement date", "close of escrow", "close of escrow date", "coe", "coe date", "transfer date", "deed date", "last sale date", "last sold date", "sale date1", "recorded", "recorded date", "recording date", "date"}, (*row).date},
	{"price", "", []string{"sale price", "sold price", "selling price", "price sold", "sold for", "saleprice", "sale amt", "sales price", "closed price", "close price", "closing price", "purchase price", "sale amount", "last sale price", "last sale amount", "last sold price", "sp", "consideration", "price", "amt", "amount"}, (*row).price},
	{"concessions", "", []string{"concession", "seller concessions", "seller credit", "seller credits", "credits", "seller conc", "conc", "seller concession", "seller concessions amt", "concessions amt", "seller concession amount", "concession amount", "concessions amount", "seller paid", "seller paid costs", "seller paid closing costs", "buyer credit", "buyer credits", "seller contribution", "seller contributions"}, (*row).concessions},
	{"living area", "sqft", []string{"living", "gla", "sfla", "gross living area", "above grade", "above grade area", "above grade finished area", "above grade finished", "above grade living", "above grade living area", "total living area", "total living", "tla", "liv area", "living size", "finished living area", "total finished area", "heated area", "finished area", "residential area", "interior area", "square footage", "house size", "home size", "building size", "building area", "bldg area", "bldg size", "total area", "size", "area"}, (*row).area},
	{"lot", "sqft", []string{"lot size", "lot area", "land", "land area", "site", "site area"}, (*row).lot},
	{"bedrooms", "", []string{"bedroom", "bedrooms total", "beds", "bed", "br", "bdrms", "bdrm", "bedrms", "bedrm", "bd", "bds"}, (*row).bedrooms},
	{"baths", "", []string{"bath", "bathrooms", "bathroom", "bathrooms total", "total bathrooms", "total baths", "ba", "bths", "bas"}, (*row).baths},
	{"full baths", "", []string{"full bath", "baths full", "bath full", "full bathrooms", "bathrooms full", "fbath", "fbaths", "f bath", "full ba"}, (*row).fullBaths},
	{"half baths", "", []string{"half bath", "baths half", "bath half", "half bathrooms", "bathrooms half", "powder rooms", "hbath", "hbaths", "h bath", "half ba"}, (*row).halfBaths},
	{"year built", "", []string{"built", "yr built", "yr blt", "yrblt", "year blt", "yearbuilt", "construction year", "year", "yr"}, (*row).built},
	{"type", "", []string{"kind", "property type", "house type", "use", "class", "property class"}, (*row).kind},
	{"storeys", "", []string{"stories", "story", "storey", "levels", "floors", "style"}, (*row).storeys},
	{"wall", "", []string{"walls", "exterior", "exterior wall", "ext wall", "ext walls", "outside wall", "siding"}, (*row).wall},
	{"garage", "", []string{"gar", "garage type", "parking", "car storage"}, (*row).garage},
	{"garage area", "sqft", []string{"garage size"}, (*row).garageArea},
	{"garage cars", "", []string{"cars", "garage spaces", "garage stalls", "garage capacity", "car garage"}, (*row).garageCars},
	{"condition", "", []string{"cond", "overall condition", "overall cond"}, (*row).condition},
	{"x", "m", []string{"easting", "x coord", "xcoord", "x coordinate"}, (*row).x},
	{"y", "m", []string{"northing", "y coord", "ycoord", "y coordinate"}, (*row).y},
	{"longitude", "", []string{"lon", "lng", "long"}, (*row).longitude},
	{"latitude", "", []string{"lat"}, (*row).latitude},
	{"distance", "mi", []string{"proximity", "prox", "dist"}, (*row).distance},
	{"terms", "", []string{"sale terms", "terms of sale", "sale type", "conditions of sale", "sale conditions", "special listing conditions", "deed", "deed type", "instrument", "instr", "instrument type", "instr type", "validity", "sale validity"}, (*row).terms},
	{"status", "", []string{"mls status", "listing status", "standard status", "list status", "prop status", "property status", "sale status", "current status", "mkt status", "market status", "status code", "stat", "sts"}, (*row).status},
	{"arms length", "", []string{"arm length", "arms length sale", "arm length sale", "qualified", "qualified sale", "valid sale", "valid", "sale valid", "market sale", "open market sale"}, (*row).armsLength},
	{"source", "", []string{"data source", "from"}, (*row).source},
	{"has", "", []string{"own lines"}, (*row).has},
}

// units are the words at the end of a header that say what its numbers are in.
var units = map[string]string{
	"sqft": "sqft", "sf": "sqft", "sq ft": "sqft", "sq feet": "sqft", "square feet": "sqft", "ft2": "sqft", "m2": "m2", "sqm": "m2", "sq m": "m2",
	"acres": "acres", "acre": "acres", "acreage": "acres", "ac": "acres",
	"m": "m", "ft": "ft", "km": "km", "mi": "mi", "miles": "mi",
}

// inFeet are names that are those of an area only with square feet behind them: garage_sqft
// is no kind of garage, and bldg no area.
var inFeet = map[string]string{
	"garage": "garage area", "gar": "garage area", "bldg": "bldg area", "building": "building area", "total": "total area", "total finished": "total finished area", "heated": "heated area", "finished": "finished area", "fin": "finished area",
	"res": "residential area", "residential": "residential area", "house": "house size", "home": "home size", "interior": "interior area", "liv": "liv area",
}

// ofMore are those of its names that often hold more than the living area; common practice, no
// source.
var ofMore = []string{"total area", "total finished area", "building area", "building size", "bldg area", "bldg size"}

// roughly are words in front of a name that change nothing of what it holds.
var roughly = []string{"apx", "apprx", "approx", "approximate"}

// dollarSales are names of the day of a sale that with a sign for dollars are those of its price.
var dollarSales = []string{"sold", "sale", "close", "closed", "sold for"}

// plain returns a header in lower case with single spaces between its words, and
// its unit, which is taken off unless nothing would be left.
func plain(header string) (name, unit string) {
	words := strings.FieldsFunc(strings.ToLower(wordsApart(header)), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	words = slices.DeleteFunc(words, func(w string) bool { return w == "usd" || w == "s" })
	if len(words) > 1 && slices.Contains(roughly, words[0]) {
		words = words[1:]
	}
	if u := units[strings.Join(words, " ")]; u == "sqft" || u == "m2" {
		return "square footage", u // a column named sq ft alone is the size of the house
	}
	if of := strings.TrimPrefix(strings.Join(words, " "), "total "); strings.HasPrefix(of, "acre") && units[of] != "" {
		return "lot", "acres" // and one named acres that of its lot
	}
	if len(words) == 1 && words[0] == "lot" && strings.Contains(header, "#") {
		return "lot number", "" // on a plat
	}
	if strings.Contains(header, "$") && slices.Contains(dollarSales, strings.Join(words, " ")) {
		return "sold price", "" // Sold $ beside Sold
	}
	if len(words) == 1 && words[0] == "miles" {
		return "distance", ofMiles
	}
	for _, n := range []int{2, 1} {
		if len(words) <= n {
			continue
		}
		front := len(words) - n
		if u := units[strings.Join(words[front:], " ")]; u != "" {
			return measured(words[:front], u), u
		}
		if units[strings.Join(words[:n], " ")] == "sqft" { // sqft_living
			return measured(words[n:], "sqft"), "sqft"
		}
	}
	return strings.Join(words, " "), ""
}

// wordsApart parts words that only capitals part, as in CloseDate.
func wordsApart(header string) string {
	var out strings.Builder
	before := ' '
	for _, r := range header {
		if unicode.IsUpper(r) && unicode.IsLower(before) {
			out.WriteByte(' ')
		}
		out.WriteRune(r)
		before = r
	}
	return out.String()
}

// measured is the name that the words before or behind a unit make with it.
func measured(words []string, unit string) string {
	name := strings.Join(words, " ")
	if area := inFeet[name]; area != "" && (unit == "sqft" || unit == "m2") {
		return area
	}
	return name
}

// fieldOf returns the field of a plain header, or -1.
func fieldOf(name string) int {
	return slices.IndexFunc(fields, func(f field) bool {
		return f.name == name || slices.Contains(f.names, name)
	})
}

// moneyWords are those of a heading that is in dollars, besides the sign for them.
var moneyWords = []string{"price", "usd", "dollar", "dollars", "cost", "amount", "amt", "value"}

// ofArea are the beginnings of an area behind a price without a blank between them.
var ofArea = []string{"sf", "sqft", "squarefoot", "squarefeet", "sqm", "m2", "acre"}

// perArea reports whether a heading is that of a price for each unit of area: $/SqFt,
// price_per_sqft, PPSF. It is no area and no price.
func perArea(header string) bool {
	words := strings.FieldsFunc(strings.ToLower(header), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '$'
	})
	joined := strings.Join(words, "")
	if joined == "ppsf" || joined == "psf" || joined == "ppsqft" {
		return true
	}
	priced := strings.Contains(header, "$") || slices.ContainsFunc(words, func(w string) bool { return slices.Contains(moneyWords, w) })
	if _, unit := plain(header); priced && (unit == "sqft" || unit == "m2" || unit == "acres") {
		return true
	}
	for _, a := range ofArea {
		for _, p := range []string{"$", "price", "cost"} {
			if strings.Contains(joined, p+a) || strings.Contains(joined, p+"per"+a) {
				return true
			}
		}
	}
	return false
}

// inPercent reports whether a heading says that it holds shares, which nothing that is read
// is given in.
func inPercent(header string) bool {
	words := strings.FieldsFunc(strings.ToLower(header), func(r rune) bool { return !unicode.IsLetter(r) })
	return strings.Contains(header, "%") || slices.ContainsFunc(words, func(w string) bool { return w == "percent" || w == "pct" })
}

// inDollars reports whether a heading says that it holds dollars, and is that of what
// is in none.
func inDollars(header string) bool {
	name := FieldNamed(header)
	return strings.Contains(header, "$") && name != "" && name != "price" && name != "concessions"
}

// headerParts are parts of headings, and the field that a column with one may hold.
var headerParts = [][2]string{
	{"conc", "concessions"}, {"credit", "concessions"}, {"acre", "lot"}, {"lot", "lot"}, {"land", "lot"}, {"bed", "bedrooms"}, {"bdr", "bedrooms"}, {"bath", "baths"},
	{"sale cond", "terms"}, {"sale type", "terms"}, {"gar", "garage"}, {"parking", "garage"}, {"carport", "garage"}, {"built", "year built"}, {"blt", "year built"}, {"year", "year built"}, {"cond", "condition"}, {"grade", "condition"}, {"dist", "distance"},
	{"lon", "longitude"}, {"lat", "latitude"}, {"coord", "x"}, {"deed", "terms"}, {"instr", "terms"}, {"quality", "condition"}, {"qual", "arms length"}, {"valid", "arms length"}, {"arm", "arms length"}, {"market sale", "arms length"}, {"stat", "status"},
	{"area", "living area"}, {"sq", "living area"}, {"size", "living area"},
}

// otherYears are parts of headings of years in which no house was built.
var otherYears = []string{"tax", "sale", "sold", "list", "remodel", "renov", "assess", "eff", "roof"}

// inDrive are parts of headings of spaces to park in, which are in the drive too.
var inDrive = []string{"parking space", "parking total", "parking stall", "total parking"}

// FieldLike is the field that a column which is not read may hold by its heading, or
// another word.
func FieldLike(header, otherwise string) string {
	name, _ := plain(header)
	holds := func(w string) bool { return strings.Contains(name, w) }
	other, drive := slices.ContainsFunc(otherYears, holds), slices.ContainsFunc(inDrive, holds)
	for _, p := range headerParts {
		if holds(p[0]) && !(other && p[1] == "year built") && !(drive && p[0] == "parking") {
			return p[1]
		}
	}
	return otherwise
}

// rank is where a name stands among those of a field, the most telling first.
func (f *field) rank(name string) int {
	return slices.Index(f.names, name) // -1 for the field's own
}

// FieldNames lists what Options.Columns can name.
func FieldNames() []string {
	out := make([]string, len(fields))
	for i, f := range fields {
		out[i] = f.name
	}
	return out
}
