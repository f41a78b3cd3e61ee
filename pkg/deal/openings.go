package deal

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// openingKinds are the kinds of opening by their key, with the usual size for those
// that are only counted: common practice, no source.
var openingKinds = map[string]struct{ kind, size string }{
	"doors":          {"door", `2'8" x 6'8"`},
	"windows":        {"window", `3' x 4'`},
	"cased openings": {"cased", `3' x 6'8"`},
	"doorways":       {"doorway", `2'8" x 6'8"`},
}

// usualSizes are those sizes by the same keys; a test reads them. Never written to.
var usualSizes = sync.OnceValue(func() map[string]quantity.Size {
	sizes := map[string]quantity.Size{}
	for key, kind := range openingKinds {
		sizes[key], _ = quantity.ParseSize(kind.size)
	}
	return sizes
})

// openings reads a count, a size or a list of sizes.
func (r *reader) openings(s scope, f *Field, g *reading) {
	kind := openingKinds[f.Key()]
	for _, n := range r.each(f, g) {
		if !r.one(f, n) {
			continue
		}
		x, err := quantity.ParseOpenings(n.text)
		if count, bad := quantity.ParseCount(n.text); bad == nil {
			x, err = quantity.Openings{Count: int(count.IntPart()), Size: usualSizes()[f.Key()]}, nil
			if !count.IsInteger() || count.IsNegative() || count.GreaterThan(mostOpenings) {
				r.say("bad-openings", n.at, "%s cannot be %s", f.title(), n.text)("write a whole number, or sizes like   %s", f.example())
				continue
			}
		}
		if parts := andBetween().Split(n.text, -1); err != nil && len(parts) > 1 && (g.node.shape == scalar || areOpenings(parts)) {
			r.say("bad-openings", n.at, "%s: %s is more than one size", f.title(), diag.Quote(n.text))("write several sizes in square brackets: %s: [%s]", f.Key(), strings.Join(parts, ", "))
			g.ok = false
			continue
		}
		if hint, ok := countInWords(f, n.text); ok {
			r.say("bad-openings", n.at, "%s: %s is not a number", f.title(), diag.Quote(n.text))("%s", hint)
			g.ok = false
			continue
		}
		if err != nil {
			r.openingUnread(f, n, err)
			g.ok = false
			continue
		}
		if side := x.Size.First; side.Feet().IsZero() || x.Size.Second.Feet().IsZero() {
			if !side.Feet().IsZero() {
				side = x.Size.Second
			}
			r.say("size-zero", n.at, "%s: %s is no length", f.title(), diag.Quote(side.Text))("write both lengths, e.g. %s", f.example())
			g.ok = false
			continue
		}
		if least := leastOpening(kind.kind); x.Size.First.Feet().LessThan(least) || x.Size.Second.Feet().LessThan(least) {
			hint := "write width x height with their units, e.g. " + f.example()
			if m := timesOneSide().FindStringSubmatch(n.text); m != nil {
				_, high, _ := strings.Cut(kind.size, " x ")
				hint = fmt.Sprintf("if %s of that width are meant, write their height too, e.g.   %s of %s x %s", m[1], m[1], m[2], high)
			}
			r.say("bad-openings", n.at, "%s: %s is %s, less than one can be", f.title(), diag.Quote(n.text), x.Size)("%s", hint)
			g.ok = false
			continue
		}
		r.mixed(f, n.span, x.Size)
		if x.Count == 0 {
			continue
		}
		m := s.member.Add("opening", "", strings.TrimSuffix(f.Key(), "s")+" "+x.Size.String())
		m.Pos = n.at
		v := model.Value{Text: n.text, Key: f.Key(), Pos: n.at}
		for line, y := range map[string]decimal.Decimal{"opening_width": x.Size.First.Feet(), "opening_height": x.Size.Second.Feet(), "number": decimal.NewFromInt(int64(x.Count))} {
			v.Number = y
			m.Give(line, v)
		}
		m.Give("kind", model.Value{Choice: kind.kind, Text: f.Key(), Pos: n.at})
	}
}

// mostOpenings is how many of a sort may be counted.
var mostOpenings = decimal.NewFromInt(500)

// leastOpening is the least side of an opening in feet: 6 inches, of doors a foot (common
// practice, no source).
func leastOpening(kind string) decimal.Decimal {
	if kind == "window" {
		return decimal.New(5, -1)
	}
	return one
}

// timesOneSide is a count and one side that look like two sides: 2 x 32".
var timesOneSide = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(\d+) ?[x×*] ?([^x×*]+)$`) })

// areOpenings reports whether each text is openings of one size.
func areOpenings(texts []string) bool {
	return !slices.ContainsFunc(texts, func(text string) bool {
		_, err := quantity.ParseOpenings(text)
		return err != nil
	})
}

// openingUnread tells of openings that cannot be read.
func (r *reader) openingUnread(f *Field, n *node, err error) {
	if m := countTimes().FindStringSubmatch(n.text); m != nil {
		if _, bad := quantity.ParseSize(m[2]); bad == nil {
			r.say("bad-openings", n.at, "%s: %s is neither a count nor a size", f.title(), diag.Quote(n.text))("write   %s of %s", m[1], m[2])
			return
		}
	}
	if m := builders().FindStringSubmatch(n.text); m != nil {
		r.say("bad-openings", n.at, "%s: %s is not feet and inches", f.title(), diag.Quote(n.text))("write   %s%s'%s\" x %s'%s\"", m[1], m[2], m[3], m[4], m[5])
		return
	}
	r.unread(f.title(), n.span, "bad-openings", err, f.example())
}

// builders is a size as a builder says it, with strokes between feet and inches: 2/8 x 6/8.
var builders = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(\d+ of )?(\d)/(\d{1,2}) ?[x×] ?(\d)/(\d{1,2})$`)
})

// countTimes is a count before a size with an x between them: 2 x 2'6" x 6'8".
var countTimes = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(\d+) ?[x×*] ?(.+[x×].+)$`) })

// spelledOut are counts as words, by their number.
var spelledOut = []string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

// countInWords is how a count that is written in words is written in figures.
func countInWords(f *Field, text string) (hint string, ok bool) {
	word := strings.ToLower(strings.TrimSpace(text))
	n := slices.Index(spelledOut, word)
	switch {
	case n == 0 || word == "none" || word == "no":
		return fmt.Sprintf("write   %s: 0   , or leave it out", f.Key()), true
	case n > 0:
		return fmt.Sprintf("write the number:   %s: %d", f.Key(), n), true
	}
	return "", false
}
