package exact_test

import (
	"errors"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// chargesAsWritten works every charge out a second time, straight from what the
// deal gives, with the rules as a person would apply them.
func chargesAsWritten(w worked) error {
	var errs []error
	for _, c := range w.m.Cells {
		if c.Line.ID() == "fee.amount" {
			errs = append(errs, same(c.Name(), w.charge(c.Member), w.Of(c)))
		}
	}
	return errors.Join(errs...)
}

func (w worked) charge(f *model.Member) decimal.Decimal {
	given := func(line string) decimal.Decimal { return f.Given.Of(line).Number }
	base := decimal.Zero
	if of := f.Given.Of("base").Refers; of != "" {
		base = w.at(f.Parent, of)
	}
	x := total(given("fixed"), given("share").Mul(base), units(base, given("unit_size"), given("unit_price")))
	perMonth := total(given("a_month"), given("a_quarter").Div(decimal.NewFromInt(3)), given("a_year").DivRound(decimal.NewFromInt(12), 40))
	x = x.Add(perMonth.Mul(w.phase(f.Given.Of("during").Choice)))
	for _, t := range f.In("table") {
		if w.counts(f, t, base) {
			x = x.Add(brackets(t, base))
		}
	}
	if never := perMonth.IsPositive() && w.phase(f.Given.Of("during").Choice).IsZero(); never {
		return decimal.Zero
	}
	x = decimal.Max(x, given("least"))
	if most, has := f.Given.Look("most"); has {
		x = decimal.Min(x, most.Number)
	}
	x = x.Round(9).Round(2)
	if given("credit").IsPositive() {
		return x.Neg()
	}
	return x
}

func (w worked) phase(word string) decimal.Decimal {
	given := func(line string) decimal.Decimal { return w.Deal.Given.Of(line).Number }
	renovation, marketing := given("renovation").Add(given("standstill")), given("marketing").Add(given("late_sale"))
	switch word {
	case "lead-in":
		return given("lead_in")
	case "renovation":
		return renovation
	case "marketing":
		return marketing
	case "escrow":
		return given("escrow")
	}
	return total(given("lead_in"), renovation, marketing, given("escrow"))
}

// counts reports whether a table is in force and the one for the base.
func (w worked) counts(f, t *model.Member, base decimal.Decimal) bool {
	day := decimal.Zero
	if f.Given.Of("at_sale").Number.IsPositive() {
		day = w.phase("").Mul(decimal.NewFromInt(365)).DivRound(decimal.NewFromInt(12), 9).Floor()
	}
	if from, has := t.Given.Look("from_day"); has && day.LessThan(from.Number) {
		return false
	}
	if until, has := t.Given.Look("until_day"); has && day.GreaterThanOrEqual(until.Number) {
		return false
	}
	in := inside(t, "base_edge_in")
	return !passes(t, "base_up_to", in, base, false) && passes(t, "base_over", in, base, true)
}

// inside reports whether a base right at an edge belongs below it, which it does
// where nothing is said.
func inside(t *model.Member, line string) bool {
	v, given := t.Given.Look(line)
	return !given || v.Number.IsPositive()
}

// passes reports whether a base lies above an edge, or none where there is no edge.
func passes(t *model.Member, line string, in bool, base decimal.Decimal, none bool) bool {
	edge, given := t.Given.Look(line)
	switch {
	case !given:
		return none
	case in:
		return base.GreaterThan(edge.Number)
	}
	return base.GreaterThanOrEqual(edge.Number)
}

func units(base, size, price decimal.Decimal) decimal.Decimal {
	if size.IsZero() || !base.IsPositive() {
		return decimal.Zero
	}
	n, rest := base.QuoRem(size, 0)
	if !rest.IsZero() {
		n = n.Add(decimal.NewFromInt(1))
	}
	return n.Mul(price)
}

func brackets(t *model.Member, base decimal.Decimal) decimal.Decimal {
	sum, in := decimal.Zero, inside(t, "edge_in")
	slab := t.Given.Of("slab").Number.IsPositive()
	for _, b := range t.In("bracket") {
		lower, part := b.Given.Of("lower").Number, base
		upper, ends := b.Given.Look("upper")
		above := base.GreaterThan(lower) || !in && base.Equal(lower) || in && base.IsZero() && lower.IsZero()
		if !above {
			continue
		}
		falls := !passes(b, "upper", in, base, false)
		switch {
		case slab && !falls:
			continue
		case !slab && ends:
			part = decimal.Min(base, upper.Number).Sub(lower)
		case !slab:
			part = base.Sub(lower)
		}
		sum = total(sum, part.Mul(b.Given.Of("rate").Number), units(part, b.Given.Of("unit_size").Number, b.Given.Of("unit_price").Number))
		if falls {
			sum = sum.Add(b.Given.Of("fixed").Number)
		}
	}
	return sum
}
