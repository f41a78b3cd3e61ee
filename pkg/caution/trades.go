package caution

import (
	"slices"
	"strings"
	"unicode"
)

// kind is a family of trades that a caution asks about.
type kind string

// The families; each is also the word printed for it.
const (
	electrical kind = "electrical"
	plumbing   kind = "plumbing"
	gas        kind = "gas"
	hvac       kind = "HVAC"
	structure  kind = "structural"
	roof       kind = "roof"
	windows    kind = "window"
	demolition kind = "demolition"
	flooring   kind = "flooring"
	insulation kind = "insulation"
	surfaces   kind = "ceiling and wall"
	siding     kind = "siding"
)

// tradeWord joins a word of a trade name to its family. A word ending in * is a
// beginning.
type tradeWord struct {
	word string
	kind kind
}

func tradeWords() []tradeWord {
	return []tradeWord{
		{"electr*", electrical}, {"wiring", electrical}, {"rewir*", electrical},
		{"plumb*", plumbing}, {"sewer*", plumbing},
		{"gas", gas},
		{"hvac", hvac}, {"heating", hvac}, {"cooling", hvac}, {"mechanical", hvac}, {"furnace", hvac}, {"boiler", hvac}, {"duct*", hvac},
		{"struct*", structure}, {"fram*", structure}, {"foundation*", structure}, {"mason*", structure}, {"addition", structure}, {"additions", structure},
		{"roof*", roof},
		{"window*", windows},
		{"demo", demolition}, {"demolition", demolition}, {"demolish*", demolition}, {"tear*", demolition}, {"gut", demolition}, {"gutting", demolition},
		{"floor*", flooring}, {"carpet*", flooring}, {"tile", flooring}, {"tiling", flooring}, {"mastic", flooring},
		{"insulat*", insulation},
		{"siding", siding}, {"shingle*", siding}, {"cladding", siding},
		{"drywall", surfaces}, {"plaster*", surfaces}, {"ceiling*", surfaces}, {"textur*", surfaces}, {"popcorn", surfaces},
	}
}

// kindsOf returns the families the plan's trades belong to, each once, in the
// order of the table. Names it does not know belong to none.
func kindsOf(trades []string) []kind {
	var words []string
	for _, t := range trades {
		words = append(words, strings.FieldsFunc(strings.ToLower(t), notInWord)...)
	}
	var out []kind
	for _, t := range tradeWords() {
		if !slices.Contains(out, t.kind) && slices.ContainsFunc(words, t.matches) {
			out = append(out, t.kind)
		}
	}
	return out
}

func (t tradeWord) matches(word string) bool {
	begin, open := strings.CutSuffix(t.word, "*")
	return word == t.word || open && strings.HasPrefix(word, begin)
}

func notInWord(r rune) bool { return !unicode.IsLetter(r) }

// Which families each caution asks about.
var (
	// permitKinds follow the model residential code R105.1 (R105.2 exempts finish work).
	permitKinds = []kind{electrical, plumbing, gas, hvac, structure, roof, windows, demolition}
	// licensedKinds are commonly reserved for licensed trades.
	licensedKinds = []kind{electrical, plumbing, gas, hvac}
	// asbestosKinds reach the materials asbestos was used in.
	asbestosKinds = []kind{flooring, demolition, insulation, hvac, plumbing, roof, structure, surfaces, siding}
)

// planned returns the families among want that the plan has.
func planned(h House, want []kind) []kind {
	return plannedIn(h.Trades, want)
}

func plannedIn(trades []string, want []kind) []kind {
	return slices.DeleteFunc(kindsOf(trades), func(k kind) bool { return !slices.Contains(want, k) })
}

// permits and licensed are the families with work that may need a permit, or a licensed trade.
func permits(h House) []kind  { return plannedIn(less(h.Trades, h.NoPermit), permitKinds) }
func licensed(h House) []kind { return plannedIn(less(h.Trades, h.NoLicence), licensedKinds) }

// minor are the families with work that the lead rule never counts as minor repair.
func minor(h House) []kind {
	return append(plannedIn(less(h.Trades, h.NoWindow), []kind{windows}), planned(h, []kind{demolition})...)
}

func less(all, some []string) []string {
	return slices.DeleteFunc(slices.Clone(all), func(t string) bool { return slices.Contains(some, t) })
}

// plans says whether the plan has any of these families.
func plans(h House, want ...kind) bool { return len(planned(h, want)) > 0 }

// plansOnly says whether every permit job of the plan is among these families.
func plansOnly(h House, want ...kind) bool {
	return !slices.ContainsFunc(permits(h), func(k kind) bool { return !slices.Contains(want, k) })
}
