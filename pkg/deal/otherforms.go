package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// dayHours are the hours of a day of work; common practice, no source.
var dayHours = decimal.NewFromInt(8)

// otherRate says how a rate is written that is for an hour or for another unit of the same
// kind as the work is measured by.
func otherRate(w *work, x quantity.Per, key string, money bool) string {
	each, same := x.Bottom.In(w.item.Unit)
	switch {
	case money && x.Money && x.Bottom == "hour":
		return fmt.Sprintf("where the trade charges its hours, write   by the hour: yes   at the work, and   labour: {trades: {%s: {rate: %s/hour}}}", w.item.Trade, quantity.FormatMoney(x.Number))
	case same && x.Money == money && each.IsPositive():
		to := short(x.Number.DivRound(each, 4))
		if money {
			to = quantity.FormatMoney(x.Number.DivRound(each, 2))
		}
		return fmt.Sprintf("for that unit it is   %s: %s per %s", key, to, w.item.Unit)
	}
	return fmt.Sprintf("write it like   %s: %s", key, perExample(money, w.item.Unit))
}

// otherForm says how a value is written that was put in another of the ways that people have,
// or "".
func otherForm(f *Field, text string) string {
	size, bad := quantity.ParseSize(text)
	if f.Path == "outside.around" && bad == nil {
		half := size.First.Feet().Add(size.Second.Feet())
		return fmt.Sprintf("the four sides added up: %s'", half.Add(half))
	}
	return otherPercent(f, text)
}

// workIn writes work of a place, as of the whole house, as the file may have it there: where that has
// options, in the one that is taken.
func (r *reader) workIn(place, work string) string {
	option := onlyOption
	for _, p := range r.inFile {
		if p.room.Label == place && (option == onlyOption || p.taken) {
			option = p.option.Label
		}
	}
	if option == onlyOption {
		return fmt.Sprintf("%s: {work: {%s}}", place, work)
	}
	return fmt.Sprintf("%s: {options: {%s: {work: {%s}}}}", place, option, work)
}

// elsewhere says where work belongs that is measured by what only a room has.
func elsewhere(m *pricebook.Measure) string {
	if onlyIn(*m) == "a room" {
		return "   , or put it in its room; for the outside see   ledgerboard prices outside"
	}
	return ""
}
