package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// container is what people call a container for debris.
var container = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(dumpsters?|containers?|skips?|haul(ing)?|debris|roll-?offs?)\b`)
})

// With one of these a label names a container and a permit each for itself.
var bothNamed = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)[,;&+/]|\b(and|plus|with|incl\w*|rent\w*|hire)\b`)
})

// permitForContainer reports whether a label names the leave to put a container into the street.
func permitForContainer(label string) bool {
	return strings.Contains(plainKey(label), "permit") && container().MatchString(label) && !bothNamed().MatchString(label)
}

// otherContainers are in the names of what stands in a yard while a house is held and takes no debris.
var otherContainers = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(storage|stor(e|ing)|shipping|moving|portable|office|tools?|pods?|trash|garbage|refuse|recycl\w*|household|weekly|yard|curb\w*)\b`)
})

// heldContainers are the holding costs that name a container for debris.
func (r *reader) heldContainers() []*model.Member {
	return slices.DeleteFunc(slices.Clone(r.deal.Root.In("holding_fee")), func(m *model.Member) bool {
		return !container().MatchString(m.Label) || otherContainers().MatchString(m.Label) || !r.costs(m)
	})
}

// doubtTwice looks for lines of the file beside rooms that price the same: a container for
// debris, permits, and work of a trade that has work in a room.
func (r *reader) doubtTwice() {
	works := r.chosenWorks()
	if len(works) == 0 {
		return
	}
	var lines []*model.Member
	for _, l := range r.lines() {
		if l.member != nil && !r.saidApart(l) {
			lines = append(lines, l.member)
		}
	}
	lines = append(lines, r.deal.Root.In("general_fee")...)
	if paid, ok := r.worked(r.deal.Root, "disposal"); ok && paid.IsPositive() {
		r.twice(slices.Concat(lines, r.heldContainers()), func(m *model.Member) bool { return container().MatchString(m.Label) && !permitForContainer(m.Label) },
			"containers-twice", "is beside the containers that the rooms count by their debris", "leave it out, or say   local prices: {container: {costs: $0}}   if its sum is for all", "container for the yard")
	}
	r.doubtPermitsTwice(lines, works)
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

// twice tells once of all lines of a kind, where the first of them stands, and how one of other work is
// written, by an example of such.
func (r *reader) twice(lines []*model.Member, is func(*model.Member) bool, code, what, remedy, apart string) {
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
		r.say(code, first.Pos, "%s %s", strings.Join(names, ", "), what)("%s; if it is for other work, write it under renovation, as   lines: [{work: %s, amount: $400, apart: yes}]", remedy, apart)
	}
}
