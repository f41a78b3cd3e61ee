package cli

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/report"
)

// rooms refuses a deal without rooms, and a room or trade that it does not have.
func rooms(a *answer.Answer, path string, view report.View) error {
	if len(a.Model.Root.In("room")) == 0 {
		return &dataError{fmt.Errorf("%s has no rooms", path), "add   rooms: {hall bath: {size: 8' x 5', work: {paint walls: own hands}}}"}
	}
	if err := oneOf(a, "room", view.Room); err != nil {
		return err
	}
	return oneOf(a, "trade", view.Trade)
}

func oneOf(a *answer.Answer, set, name string) error {
	if name == "" {
		return nil
	}
	var names []string
	for _, m := range a.Model.Root.In(set) {
		if strings.EqualFold(m.Label, strings.TrimSpace(name)) {
			return nil
		}
		names = append(names, m.Label)
	}
	if set == "trade" && slices.Contains(pricebook.Starter().Trades(), strings.ToLower(strings.TrimSpace(name))) {
		return &usageError{fmt.Errorf("--trade %q: this deal names no work of that trade", name), "it names work of: " + strings.Join(names, ", ")}
	}
	return &usageError{fmt.Errorf("--%s %q: there is none of that name", set, name), meantOne(name, names, "there are: "+strings.Join(names, ", "))}
}

// meantOne is the hint for a name that there is not: the trade of who was named, or what
// is near it.
func meantOne(name string, names []string, otherwise string) string {
	if trade := pricebook.TradeOf(strings.ToLower(strings.TrimSpace(name))); slices.Contains(names, trade) {
		return "did you mean " + trade + "?"
	}
	return didYouMean(name, names, otherwise)
}
