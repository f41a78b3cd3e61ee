package deal

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// container is what people call a container for debris.
var container = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(dumpsters?|containers?|skips?|haul(ing)?|debris|roll-?offs?)\b`)
})

// doubtTwice looks for lines of the file beside rooms that price the same: a container for
// debris, permits, and work of a trade that has work in a room.
func (r *reader) doubtTwice() {
	works := r.chosenWorks()
	if len(works) == 0 {
		return
	}
	lines := slices.Concat(r.deal.Root.In("cost"), r.deal.Root.In("general_fee"))
	if paid, ok := r.worked(r.deal.Root, "disposal"); ok && paid.IsPositive() {
		r.twice(lines, func(m *model.Member) bool { return container().MatchString(m.Label) },
			"containers-twice", "is beside the containers that the rooms count by their debris", "leave it out, or say   local prices: {container: {costs: $0}}   if its sum is for all")
	}
	if brought := r.permits(works); len(brought) > 0 {
		r.twice(lines, func(m *model.Member) bool {
			return pricebook.IsPermit(plainKey(m.Label)) && !r.anotherPermit(m.Label, brought)
		},
			"permits-twice", "is beside what the work brings along: "+strings.Join(brought, ", "),
			fmt.Sprintf("leave it out, or say   whole house: {without: [%s]}   if its sum is for all", strings.Join(brought, ", ")))
	}
	r.doubtLinesTwice(works)
	r.doubtGeneralTwice(works)
	r.doubtWholeTwice(works)
}

// roomWord is what rooms are called that some call otherwise.
func roomWord(word string) string {
	switch word {
	case "bathroom", "bathrooms", "baths":
		return "bath"
	case "exterior":
		return "outside"
	}
	return word
}

// permits are the names of the permits that chosen work brings along and that cost something.
func (r *reader) permits(works []*work) []string {
	var out []string
	for _, w := range works {
		if w.by == "" || !pricebook.IsPermit(w.item.Name) {
			continue
		}
		if paid, ok := r.worked(w.member, "cash_cost"); ok && paid.IsPositive() {
			out = append(out, w.item.Name)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// anotherPermit reports whether a label names a permit of the price book that is not among
// those brought along.
func (r *reader) anotherPermit(label string, brought []string) bool {
	it := r.itemNamed(strings.TrimSuffix(strings.TrimSuffix(plainKey(label), "s"), " fee"))
	return it != nil && !slices.Contains(brought, it.Name)
}

// twice tells once of all lines of a kind, where the first of them stands.
func (r *reader) twice(lines []*model.Member, is func(*model.Member) bool, code, what, remedy string) {
	var names []string
	var first *model.Member
	for _, m := range lines {
		if is(m) {
			names = append(names, diag.Quote(m.Label))
			if first == nil {
				first = m
			}
		}
	}
	if len(names) > 1 {
		what = strings.Replace(what, "is ", "are ", 1)
	}
	if first != nil {
		r.say(code, first.Pos, "%s %s", strings.Join(names, ", "), what)("%s", remedy)
	}
}
