package comps

import (
	"slices"
	"strings"
	"unicode"
)

// streetWords are words of an address as they are cut short (USPS Publication 28,
// appendices B and C, from memory).
var streetWords = map[string]string{
	"street": "st", "str": "st", "avenue": "ave", "av": "ave", "road": "rd", "drive": "dr", "lane": "ln", "court": "ct", "circle": "cir", "place": "pl",
	"boulevard": "blvd", "terrace": "ter", "parkway": "pkwy", "highway": "hwy", "trail": "trl", "square": "sq", "crescent": "cres",
	"first": "1st", "second": "2nd", "third": "3rd", "fourth": "4th", "fifth": "5th", "sixth": "6th", "seventh": "7th", "eighth": "8th", "ninth": "9th", "tenth": "10th",
	"north": "n", "south": "s", "east": "e", "west": "w", "northeast": "ne", "northwest": "nw", "southeast": "se", "southwest": "sw",
	"apartment": "unit", "apt": "unit", "suite": "unit", "ste": "unit",
}

// spelling is an address evened out, so that it is the same however it is written.
func spelling(address string) string {
	address = strings.ReplaceAll(strings.ToLower(address), "#", " unit ")
	words := strings.FieldsFunc(address, func(r rune) bool { return !alnum(r) })
	for i, w := range words {
		if short := streetWords[w]; short != "" {
			words[i] = short
		}
	}
	words = slices.CompactFunc(words, func(a, b string) bool { return a == "unit" && b == "unit" }) // Apt #1
	return strings.Join(words, " ")
}

func alnum(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }

// ofUnits are words behind an address that tell of a part of the house.
var ofUnits = []string{"unit", "no", "rm", "room", "fl", "floor", "bldg", "building", "lot", "rear", "front", "upper", "lower", "up", "down", "left", "right", "upstairs", "downstairs"}

// kinds are the words for what a street is, cut short, which one may leave away.
var kinds = []string{
	"st", "ave", "rd", "dr", "ln", "ct", "cir", "pl", "blvd", "ter", "pkwy", "hwy", "trl", "sq", "cres",
	"way", "row", "loop", "run", "path", "pass", "pike", "alley", "aly", "cove", "cv", "plaza", "plz", "walk",
}

// SameAddress reports whether two addresses are one, however they are written, with or
// without the town behind them or what kind of street it is.
func SameAddress(a, b string) bool {
	return sameSpelling(spelling(a), spelling(b)) || townBehind(a, b) || townBehind(b, a)
}

// townBehind reports whether a comma and a town make the second of the first address.
func townBehind(a, b string) bool {
	street, town, ok := strings.Cut(b, ",")
	words := strings.Fields(spelling(town))
	return ok && len(words) > 0 && isTown(words) && hasNumber(spelling(a)) && spelling(a) == spelling(street)
}

// hasNumber reports whether an address begins with the number of a house.
func hasNumber(address string) bool {
	return address != "" && address[0] >= '0' && address[0] <= '9' && strings.Contains(address, " ")
}

func sameSpelling(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if a == b {
		return a != ""
	}
	more, ok := strings.CutPrefix(b, a+" ")
	if !ok || !hasNumber(a) {
		return false
	}
	words, behind := strings.Fields(a), strings.Fields(more)
	switch last := words[len(words)-1]; {
	case len(words) > 2 && (slices.Contains(kinds, last) || slices.Contains(directions, last)):
		return isTown(behind)
	case slices.Contains(kinds, behind[0]):
		return len(behind) == 1 || isTown(behind[1:])
	}
	for i := len(words) - 2; i >= 2; i-- { // the town may stand in both, in one with more of it
		if slices.Contains(kinds, words[i]) || slices.Contains(directions, words[i]) {
			return isTown(words[i+1:]) && isTown(slices.Concat(words[i+1:], behind))
		}
	}
	return false // what follows may be of the street's name
}

// directions are the words behind a kind of street, cut short.
var directions = []string{"n", "s", "e", "w", "ne", "nw", "se", "sw"}

// isTown reports whether words behind an address can be a town, its state and its post code:
// no unit, and no more of the street's name.
func isTown(words []string) bool {
	if streets[words[0]] || !unicode.IsLetter(rune(words[0][0])) && len(words[0]) != 5 {
		return false
	}
	return !slices.ContainsFunc(words, func(w string) bool {
		if _, number := digits(w); number {
			return len(w) < 4 // a post code, or what stands behind one
		}
		return len(w) == 1 || slices.Contains(ofUnits, w)
	})
}

// streets are the words of an address that are cut short, as they are then.
var streets = func() map[string]bool {
	out := map[string]bool{}
	for _, short := range streetWords {
		out[short] = true
	}
	return out
}()

// sameSale reports whether two sales of the same day and price are one: of one address, whatever
// one row has of the house and the other not, or has otherwise; of one name that is no address,
// and nothing known of both that differs; or of houses that are known alike.
func sameSale(a, b *Sold) bool {
	if a.Label != "" && b.Label != "" {
		return SameAddress(a.Label, b.Label) && (hasNumber(spelling(a.Label)) || a.House.agrees(&b.House))
	}
	if a.Stated != b.Stated || a.Terms != b.Terms || !a.Concessions.Equal(b.Concessions) || !slices.Equal(a.Has, b.Has) {
		return false // without an address of both, all must agree
	}
	return a.House == b.House && (a.Label != "" || b.Label != "" || a.Place.Known || a.Area.Known)
}

// agrees reports whether nothing that is known of both houses differs.
func (h *House) agrees(o *House) bool {
	for _, f := range [][2]Fact{{h.Area, o.Area}, {h.Lot, o.Lot}, {h.Bedrooms, o.Bedrooms}, {h.FullBaths, o.FullBaths}, {h.HalfBaths, o.HalfBaths},
		{h.Built, o.Built}, {h.GarageArea, o.GarageArea}, {h.GarageCars, o.GarageCars}, {h.Condition, o.Condition}} {
		if f[0].Known && f[1].Known && f[0].Value != f[1].Value {
			return false
		}
	}
	return !h.Place.Known || !o.Place.Known || h.Place == o.Place
}
