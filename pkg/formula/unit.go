package formula

import (
	"fmt"
	"strings"
)

// base names the units that others are built from.
var base = []string{"$", "month", "quarter", "year", "week", "day", "hour", "ft", "each", "lb", "unit", "good", "pack"}

// powers are the names of areas and volumes.
var powers = map[string]int8{"sqft": 2, "cuft": 3}

// A Unit is a product of powers of the base units. The zero Unit is that of a
// plain number, a share or a yes/no.
type Unit struct {
	power [13]int8
	any   bool // the number 0 goes with every unit
}

var (
	plain = Unit{}
	// AnyUnit is that of the number 0, which goes with every unit.
	AnyUnit = Unit{any: true}
)

// plainNames are the words for numbers without a unit, kept apart for the reader.
var plainNames = map[string]bool{"share": true, "flag": true, "choice": true, "count": true, "": true}

// ParseUnit reads a unit such as "$", "share", "month" or "$/month".
func ParseUnit(text string) (Unit, error) {
	over, under, _ := strings.Cut(text, "/")
	var u Unit
	if err := u.times(over, 1); err != nil {
		return Unit{}, err
	}
	if err := u.times(under, -1); err != nil {
		return Unit{}, err
	}
	return u, nil
}

func (u *Unit) times(name string, n int8) error {
	if plainNames[name] {
		return nil
	}
	if p, ok := powers[name]; ok {
		name, n = "ft", n*p
	}
	for i, b := range base {
		if b == name {
			u.power[i] += n
			return nil
		}
	}
	return fmt.Errorf("unknown unit %q", name)
}

// String returns the unit for people. ParseUnit reads it back if it has at most
// one part above the line and one below, and is not plain.
func (u Unit) String() string {
	if u.any {
		return "any"
	}
	var over, under string
	for i, b := range base {
		switch n := u.power[i]; {
		case n > 0:
			over += strings.Repeat(b+" ", int(n))
		case n < 0:
			under += strings.Repeat(b+" ", int(-n))
		}
	}
	over, under = strings.TrimSpace(over), strings.TrimSpace(under)
	if under != "" {
		return over + "/" + under
	}
	if over == "" {
		return "a plain number"
	}
	return over
}

// Fits reports whether a value of unit v may stand where u is expected.
func (u Unit) Fits(v Unit) bool { return u.any || v.any || u.power == v.power }

func (u Unit) raised(v Unit, sign int8) Unit {
	for i := range u.power {
		u.power[i] += sign * v.power[i]
	}
	u.any = u.any || v.any
	if u.any {
		return AnyUnit
	}
	return u
}

// The unit rules of the operators.

func sameUnit(a []Unit) (Unit, error) {
	u := a[0]
	for _, v := range a[1:] {
		if !u.Fits(v) {
			return u, fmt.Errorf("%v does not go with %v", u, v)
		}
		if u.any {
			u = v
		}
	}
	return u, nil
}

func compared(a []Unit) (Unit, error) {
	_, err := sameUnit(a)
	return plain, err
}

func product(a []Unit) (Unit, error)  { return a[0].raised(a[1], 1), nil }
func quotient(a []Unit) (Unit, error) { return a[0].raised(a[1], -1), nil }

func yesNo(a []Unit) (Unit, error) {
	for _, u := range a {
		if !u.Fits(plain) {
			return plain, fmt.Errorf("expected a yes or no, found %v", u)
		}
	}
	return plain, nil
}

func choose(a []Unit) (Unit, error) {
	if !a[0].Fits(plain) {
		return plain, fmt.Errorf("expected a yes or no, found %v", a[0])
	}
	return sameUnit(a[1:])
}

func dollars(a []Unit) (Unit, error) {
	d := Unit{power: [13]int8{1}}
	if !a[0].Fits(d) {
		return d, fmt.Errorf("cents needs dollars, found %v", a[0])
	}
	return d, nil
}

func first(a []Unit) (Unit, error) { return a[0], nil }

func plainOnly(a []Unit) (Unit, error) {
	for _, u := range a {
		if !u.Fits(plain) {
			return plain, fmt.Errorf("expected a plain number, found %v", u)
		}
	}
	return plain, nil
}

// levelPaid is the unit of the principal; the rate for a period and the number of
// periods are plain.
func levelPaid(a []Unit) (Unit, error) {
	_, err := plainOnly(a[1:])
	return a[0], err
}

// monthOf is the rule of first_month, which looks for a yes.
func monthOf(a []Unit) (Unit, error) {
	if _, err := yesNo(a); err != nil {
		return plain, err
	}
	return inMonths(nil)
}

func inMonths(a []Unit) (Unit, error) { return Unit{power: [13]int8{0, 1}}, nil }

// atMonth is the rule of words that read another month: the second value is a month.
func atMonth(a []Unit) (Unit, error) {
	if m, _ := inMonths(nil); !m.Fits(a[1]) {
		return a[0], fmt.Errorf("expected months, found %v", a[1])
	}
	return a[0], nil
}
