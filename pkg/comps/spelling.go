package comps

import (
	"strings"
	"unicode"
)

// streetWords are words of an address as they are cut short (USPS Publication 28,
// appendices B and C, from memory).
var streetWords = map[string]string{
	"street": "st", "str": "st", "avenue": "ave", "av": "ave", "road": "rd", "drive": "dr", "lane": "ln", "court": "ct", "circle": "cir", "place": "pl",
	"boulevard": "blvd", "terrace": "ter", "parkway": "pkwy", "highway": "hwy", "trail": "trl", "square": "sq",
	"north": "n", "south": "s", "east": "e", "west": "w", "northeast": "ne", "northwest": "nw", "southeast": "se", "southwest": "sw",
	"apartment": "apt", "suite": "ste",
}

// spelling is an address evened out, so that it is the same however it is written.
func spelling(address string) string {
	words := strings.FieldsFunc(strings.ToLower(address), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	for i, w := range words {
		if short := streetWords[w]; short != "" {
			words[i] = short
		}
	}
	return strings.Join(words, " ")
}

// sameSale reports whether two sales of the same day and price are one: of houses that are
// known alike, or of one address and nothing known of both that differs.
func sameSale(a, b *Sold) bool {
	if a.Label != "" && b.Label != "" {
		return a.House.agrees(&b.House) && spelling(a.Label) == spelling(b.Label)
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
