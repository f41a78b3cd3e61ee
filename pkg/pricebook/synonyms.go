package pricebook

import (
	"slices"
	"strings"
)

// synonyms are words that people use for the same thing: a search for one finds the
// others. Words of the trade only, no brands.
var synonyms = [][]string{
	{"stove", "range", "oven", "cooker"},
	{"fridge", "refrigerator"},
	{"drywall", "wallboard", "wall board", "plasterboard", "gypsum"},
	{"toilet", "commode"},
	{"faucet", "tap"},
	{"spigot", "hose bibb", "hydrant"},
	{"vanity", "washstand", "lavatory"},
	{"tub", "bathtub"},
	{"counter", "countertop", "worktop"},
	{"disposer", "disposal"},
	{"outlet", "receptacle", "socket"},
	{"light", "lamp"},
	{"moulding", "molding"},
	{"baseboard", "skirting"},
	{"handrail", "banister", "railing"},
	{"sheet vinyl", "linoleum"},
	{"lock", "lockset"},
	{"gutter", "eavestrough"},
	{"siding", "cladding", "batten"},
	{"container", "dumpster", "skip"},
	{"grass", "lawn", "sod", "turf"},
	{"deck", "decking"},
	{"cabinet", "cupboard"},
	{"paint", "painting"},
	{"mould", "mold", "mildew"},
	{"alarm", "detector"},
	{"duct", "ductwork", "ducting"},
}

// otherwise are words for what the book calls by other words. They go one way: a search
// for wood floor is not for hardwood alone.
var otherwise = map[string][]string{
	"hardwood": {"wood floor", "wood plank", "oak floor", "oak strip"},
	"lvp":      {"resilient plank"},
	"lvt":      {"resilient plank"},
	"vinyl":    {"vinyl", "resilient"},

	"gfci": {"protected outlet"}, "gfi": {"protected outlet"},
	"granite": {"stone counter"}, "quartz": {"stone counter"}, "marble": {"stone counter"},
	"hvac":   {"heating and cooling"},
	"ac":     {"air conditioner"},
	"tiling": {"tile"}, "rewiring": {"rewire"}, "shelving": {"shelf"},
	"bathroom": {"bath"}, "exterior": {"outside"}, "washing": {"wash"}, "tuckpointing": {"repointing", "repointed"},
	"popcorn": {"textured ceiling"},
	"can":     {"recessed"}, "downlight": {"recessed light"},
	"rekey": {"re keyed", "re key"}, "rekeying": {"re keyed", "re key"}, "rekeyed": {"re keyed"},
	"removal": {"strip", "take out", "tear off"}, "remove": {"strip", "take out", "tear off", "removal"},
}

// people are who works in which trade.
var people = map[string]string{
	"carpenter": "carpentry", "cleaner": "cleaning", "drywaller": "drywall", "electrician": "electrical", "framer": "framing", "insulator": "insulation",
	"landscaper": "landscaping", "mason": "masonry", "painter": "paint", "paperhanger": "wallpaper", "plumber": "plumbing", "roofer": "roofing", "tiler": "tile",
}

// TradeOf is the trade of who a word is for, as plumbing of plumbers, or "".
func TradeOf(word string) string { return people[strings.TrimSuffix(word, "s")] }

// worksIn reports whether a word is for who works in a trade.
func worksIn(word, trade string) bool {
	in := TradeOf(word)
	return in != "" && in == even(trade)
}

// OfTrade reports whether a word is a name for a trade of the book: roof or roofer for roofing,
// painting for paint, hvac for heating and cooling.
func OfTrade(word, trade string) bool {
	const shortest = 4 // letters that two words begin with alike
	word, trade = single(even(word)), even(trade)
	if worksIn(word, trade) || occursAs(word, trade) {
		return true
	}
	return slices.ContainsFunc(telling(strings.Fields(trade)), func(w string) bool {
		w = single(w)
		return w == word || len(word) >= shortest && strings.HasPrefix(w, word) || len(w) >= shortest && strings.HasPrefix(word, w)
	})
}

// IsMade reports whether a word is for what an item makes, as carpet and backsplash are, by the name of
// the item: a trade of its own for many who let it.
func IsMade(word string, it *Item) bool {
	const shortest = 4
	word = single(even(word))
	return len(word) >= shortest && it.Thing() != "" && (hasWord(even(it.Name), word) || occursAs(word, even(it.Name)))
}

// filler are words that say nothing of a thing.
var filler = []string{"a", "and", "for", "in", "of", "on", "or", "the", "with"}

// telling are the words that say something, or all where none does.
func telling(words []string) []string {
	out := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return slices.Contains(filler, w) })
	if len(out) == 0 {
		return words
	}
	return out
}

// occurs reports whether a word is in a text, or a synonym of it, alone or as many.
func occurs(word, text string) bool {
	for _, alike := range synonyms {
		if !slices.ContainsFunc(alike, func(w string) bool { return w == word || w+"s" == word }) {
			continue
		}
		return slices.ContainsFunc(alike, func(w string) bool { return hasWord(text, w) }) || hasWord(text, word)
	}
	return occursAs(word, text) || strings.Contains(text, single(word))
}

// occursAs reports whether what the book calls a word is in a text, or a synonym of it.
func occursAs(word, text string) bool {
	has := func(w string) bool { return hasWord(text, w) }
	for _, alike := range synonyms {
		if slices.Contains(alike, single(word)) && slices.ContainsFunc(alike, has) {
			return true
		}
	}
	return slices.ContainsFunc(slices.Concat(otherwise[word], otherwise[single(word)]), has)
}

// single is one of what a word says many of: floor for floors. Short words and those like
// glass stay as they are.
func single(word string) string {
	const shortest = 4 // letters of what is left
	if one, many := strings.CutSuffix(word, "s"); many && len(one) >= shortest && !strings.HasSuffix(one, "s") {
		return one
	}
	return word
}

// hasWord reports whether whole words, or such with an s, stand in a text.
func hasWord(text, words string) bool {
	text = " " + strings.NewReplacer("-", " ", ",", " ").Replace(text) + " "
	return strings.Contains(text, " "+words+" ") || strings.Contains(text, " "+words+"s ")
}
