package deal

import (
	"regexp"
	"slices"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// builtForWork is how many years before it is bought a house that is renovated was hardly built.
const builtForWork = 1

// century is what a house is made newer by where 20 is typed for 19.
var century = decimal.NewFromInt(100)

// oldWork are in the names of work that only an old house asks for; oldSystems the parts of a house that hardly
// any is bad of within builtLately.
var oldWork, oldSystems = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(strip (wall|ceiling) plaster|mortar bed (floor|wall) tile|cast iron|old wiring|old plaster|fasten loose plaster|sash repair|rewire|repipe)\b`)
}), []string{"sewer line", "electrical panel", "wiring", "supply pipes", "oil tank"}

// doubtBuiltForWork doubts the year of a house that is bought as new and renovated, or that has what is old in it;
// sales that are as new bear it out, and older ones doubt it by themselves.
func (r *reader) doubtBuiltForWork() {
	g, bought := r.good("house.year built"), r.good("purchase.date")
	if c := r.deal.Comps; g == nil || bought == nil || c != nil && c.Value != nil && c.newestBuilt() > 0 {
		return
	}
	age := int64(bought.date.Year) - g.number.IntPart()
	if age > builtLately || age < 0 || r.saidAlready(g.at(), MistypedHouse, "built-after-purchase", "house-built-lately") {
		return
	}
	is := "the house is built in " + g.node.text + ", it says, and bought in " + decimal.NewFromInt(int64(bought.date.Year)).String()
	told := ""
	budget, _ := r.worked(r.deal.Root, "budget")
	if value, known := r.worked(r.deal.Root, "after_repair_value"); age <= builtForWork && known && !budget.LessThan(value.Mul(renovated)) {
		told = "and the plan puts " + quantity.FormatDollars(budget.Round(0)) + " of work into it: is that the year of the work, or a digit that has slipped?"
	} else if old := r.oldInIt(); old != "" {
		told = "and " + old + ": has a digit of the year slipped?"
	}
	if told != "" {
		r.say("house-built-lately", g.at(), "%s, %s", is, told)("write the year in which it was built, %s if that was meant; contingency, cautions of lead and asbestos, and what is set aside for parts not seen go by it", g.number.Sub(century))
	}
}

// oldInIt says what in the plan only an old house has, or "".
func (r *reader) oldInIt() string {
	for _, w := range r.chosenWorks() {
		if oldWork().MatchString(w.item.Name) {
			return diag.Quote(w.item.Name) + " is planned"
		}
	}
	for _, m := range r.deal.Root.In("check") {
		if name := plainKey(m.Label); m.Given.Of("seen").Choice == seenBad && slices.Contains(oldSystems, name) {
			return "its " + name + " is seen bad"
		}
	}
	return ""
}
