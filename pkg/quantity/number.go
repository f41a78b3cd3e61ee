package quantity

import (
	"math/big"
	"regexp"
	"strings"
	"sync"

	"github.com/shopspring/decimal"
)

const (
	// Places is how many decimals are kept of what has no end, such as 1/3; the last
	// one is rounded half away from zero. Lengths of time keep MonthPlaces.
	Places = 40

	maxDigits = 15 // before the point, everywhere
)

// written reports whether a number stands with no commas, or with commas between all
// thousands.
func written(text string) bool {
	before, after, pointed := strings.Cut(text, ".")
	first, rest, commas := strings.Cut(before, ",")
	switch {
	case pointed && !whole(after):
		return false
	case !commas:
		return before == "" || whole(before)
	}
	sound := whole(first) && first[0] != '0' && len(first) <= 3
	for three := range strings.SplitSeq(rest, ",") {
		sound = sound && whole(three) && len(three) == 3
	}
	return sound
}

// whole reports whether a text is digits alone.
func whole(text string) bool { return text != "" && strings.Trim(text, "0123456789") == "" }

// vulgar are the fractions that are one character.
var vulgar = map[string][2]int64{
	"½": {1, 2}, "¼": {1, 4}, "¾": {3, 4}, "⅓": {1, 3}, "⅔": {2, 3},
	"⅛": {1, 8}, "⅜": {3, 8}, "⅝": {5, 8}, "⅞": {7, 8},
}

// decimal reads an unsigned number without a fraction, of at most places decimals as written.
func (c *cursor) decimal(places int) (decimal.Decimal, error) {
	t := c.peek()
	if err := c.checkNumber(t, places); err != nil {
		return decimal.Zero, err
	}
	c.next()
	d, err := decimal.NewFromString(strings.ReplaceAll(t.text, ",", ""))
	if err != nil {
		return decimal.Zero, c.refuse(t, "%q is not a number", t.text)
	}
	if n := c.peek(); n.kind == number {
		return decimal.Zero, c.refuseSpan(t, n, "no space inside a number; commas between thousands are fine, e.g. 285,000",
			"there is a space inside %q", c.text[t.at:n.end()])
	}
	return d, nil
}

func (c *cursor) checkNumber(t token, places int) error {
	switch {
	case t.kind == end:
		return c.refuse(t, "the number is missing")
	case t.kind != number:
		return c.refuse(t, "%q is not a number", t.text)
	case !written(t.text):
		last, want := t, wantNumber(t.text)
		if n := c.ahead(1); n.tight && n.kind == word {
			if last = n; lookalike(n) {
				want = wantDigits
			} else if strings.HasSuffix(want, wantPlain(t.text)) { // 96,5k
				want += n.text
			}
		}
		return c.refuseSpan(t, last, want, "%q is not a number that can be read in only one way", c.text[t.at:last.end()])
	}
	before, after, _ := strings.Cut(strings.ReplaceAll(t.text, ",", ""), ".")
	switch {
	case len(strings.TrimLeft(before, "0")) > maxDigits:
		return c.refuse(t, "%q has more than %d digits before the point", t.text, maxDigits)
	case len(after) > places:
		return c.refuse(t, "%q has more than %d digits behind the point", t.text, places)
	}
	return nil
}

const wantDigits = "the digits 0 and 1 for the letters O, l and I"

// lookalike reports letters right behind a figure that are taken for digits.
func lookalike(t token) bool {
	return t.tight && t.kind == word && strings.Trim(t.text, "OoIl") == ""
}

// What other countries write: points between thousands, and a comma before decimals.
var (
	pointed  = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[0-9]{1,3}(?:\.[0-9]{3})+(?:,[0-9]+)?$`) })
	decimals = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[0-9]+,[0-9]{1,2}$`) })
)

// wantPlain is a number of another country's sheet as it is written here.
func wantPlain(text string) string { return strings.NewReplacer(",", ".", ".", ",").Replace(text) }

// wantNumber says how a number would be written that has its commas and points as
// in other countries, or how any is.
func wantNumber(text string) string {
	if pointed().MatchString(text) || decimals().MatchString(text) {
		return "a comma between thousands and a point before decimals: " + wantPlain(text)
	}
	return "commas only between thousands and one point before decimals, e.g. 1,200.50"
}

// mixed reads an unsigned number that may have a fraction: 2.5, 1/2, 2 1/2, 2-1/2, 2½.
func (c *cursor) mixed(places int) (*big.Rat, error) {
	first := c.peek()
	if c.fractionAt(0) {
		return c.fraction()
	}
	if c.isPlain() {
		d, err := c.decimal(places)
		if err != nil {
			return nil, err
		}
		return d.Rat(), nil
	}
	if err := c.checkNumber(first, places); err != nil {
		return nil, err
	}
	n, ok := new(big.Rat).SetString(strings.ReplaceAll(c.next().text, ",", ""))
	if !ok || !n.IsInt() {
		return nil, c.refuseFor(first, "a whole number before a fraction, e.g. 2 1/2", "%q has decimals before a fraction", first.text)
	}
	c.take("-")
	f, err := c.fraction()
	if err != nil {
		return nil, err
	}
	return n.Add(n, f), nil
}

// rounded reads what mixed reads, rounded to places.
func (c *cursor) rounded(places int) (decimal.Decimal, error) {
	if c.isPlain() {
		d, err := c.decimal(places)
		return trim(d), err
	}
	n, err := c.mixed(places)
	if err != nil {
		return decimal.Zero, err
	}
	return toDecimal(n, int32(places)), nil
}

// isPlain reports whether no fraction stands in what comes or behind it.
func (c *cursor) isPlain() bool {
	return !c.fractionAt(0) && (c.peek().kind != number || !c.fractionAt(1) && !c.dashedFraction())
}

// fractionAt reports whether a fraction begins n tokens on.
func (c *cursor) fractionAt(n int) bool {
	_, single := vulgar[c.ahead(n).text]
	return single || c.ahead(n).kind == number && c.ahead(n+1).name == "/" && c.ahead(n+2).kind == number
}

// dashedFraction reports whether what comes is written as carpenters do: 2-1/2.
func (c *cursor) dashedFraction() bool {
	dash, f := c.ahead(1), c.ahead(2)
	return dash.name == "-" && dash.tight && f.tight && c.fractionAt(2)
}

func (c *cursor) fraction() (*big.Rat, error) {
	if f, ok := vulgar[c.peek().text]; ok {
		c.next()
		return big.NewRat(f[0], f[1]), nil
	}
	top := c.next()
	c.next()
	bottom := c.next()
	f, why := fraction(top.text, bottom.text)
	if why != "" {
		return nil, c.refuseSpan(top, bottom, "a fraction below one, with a space before it, e.g. 1/2 or 2 1/2", "%q %s", c.since(top), why)
	}
	return f, nil
}

// fraction returns why the fraction is refused, if it is.
func fraction(top, bottom string) (f *big.Rat, why string) {
	const most = 4 // digits
	if !whole(top) || !whole(bottom) || len(top) > most || len(bottom) > most {
		return nil, "is not a fraction"
	}
	var a, b big.Int
	a.SetString(top, 10)
	b.SetString(bottom, 10)
	if a.Cmp(&b) >= 0 { // 21/2 is more often a lost space than ten and a half
		return nil, "is not below one"
	}
	return new(big.Rat).SetFrac(&a, &b), ""
}

// toDecimal rounds to places and drops zeros at the end.
func toDecimal(r *big.Rat, places int32) decimal.Decimal {
	if d, is := shortDecimal(r, places); is {
		return d
	}
	if n, exact := r.FloatPrec(); exact && n < int(places) { // no more digits than there are
		places = int32(n)
	}
	return trim(decimal.NewFromBigRat(r, places))
}

// shortDecimal is a number of nine digits and nine decimals at most, as nearly all are that
// people write: machine words do for it.
func shortDecimal(r *big.Rat, places int32) (decimal.Decimal, bool) {
	const most = 1_000_000_000
	top, bottom := r.Num(), int64(1)
	if !r.IsInt() {
		if !r.Denom().IsInt64() {
			return decimal.Zero, false
		}
		bottom = r.Denom().Int64()
	}
	if !top.IsInt64() || top.Int64() > most || top.Int64() < -most {
		return decimal.Zero, false
	}
	for n, tens := int32(0), int64(1); n <= places && tens <= most; n, tens = n+1, 10*tens {
		if tens%bottom == 0 {
			return decimal.New(top.Int64()*(tens/bottom), -n), true
		}
	}
	return decimal.Zero, false
}

// shortQuotient is the quotient of two numbers of nine digits at most that ends within nine
// decimals more.
func shortQuotient(a, b decimal.Decimal) (decimal.Decimal, bool) {
	const most = 1_000_000_000
	if a.NumDigits() > 9 || b.NumDigits() > 9 || b.IsZero() {
		return decimal.Zero, false
	}
	top, bottom := a.CoefficientInt64(), b.CoefficientInt64()
	for n, tens := int32(0), int64(1); tens <= most; n, tens = n+1, 10*tens {
		if top*tens%bottom == 0 {
			q := trim(decimal.New(top*tens/bottom, a.Exponent()-b.Exponent()-n))
			return q, -q.Exponent() <= Places
		}
	}
	return decimal.Zero, false
}

// trim drops zeros behind the point and writes out those before it, so that equal
// values look the same inside too.
func trim(d decimal.Decimal) decimal.Decimal {
	if d.Exponent() > 0 {
		return decimal.NewFromBigInt(d.BigInt(), 0)
	}
	exp := d.Exponent()
	if d.NumDigits() <= 18 { // fits a machine word
		n := d.CoefficientInt64()
		for ; exp < 0 && n%10 == 0; exp++ {
			n /= 10
		}
		if exp == d.Exponent() {
			return d
		}
		return decimal.New(n, exp)
	}
	ten, n, r := big.NewInt(10), d.Coefficient(), new(big.Int)
	for exp < 0 {
		q, _ := new(big.Int).QuoRem(n, ten, r)
		if r.Sign() != 0 {
			break
		}
		n, exp = q, exp+1
	}
	return decimal.NewFromBigInt(n, exp)
}
