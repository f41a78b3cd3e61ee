package caution

// Catalogue returns every caution of the table in its order, whatever the house.
// The words in braces are left in the texts, as in "{days}"; For fills them.
func Catalogue() []Caution {
	var out []Caution
	for _, r := range rows() {
		out = append(out, r.caution(func(s string) string { return s }))
	}
	return out
}

// Customary returns the contingencies that SuggestedContingency goes by, in words,
// the newest houses first: "built after 1990: 10%". Common practice, no source.
func Customary() []string {
	var out []string
	for _, b := range contingencyBands() {
		out = append(out, b.words)
	}
	return out
}
