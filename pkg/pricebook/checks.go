package pricebook

import (
	"embed"
	"slices"
	"sync"

	"github.com/shopspring/decimal"
	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

//go:embed checks.yaml
var checksFile embed.FS

// A Check is a part of the house that may hide a repair.
type Check struct {
	Name    string
	Rows    []Allowance // by the year built, oldest first
	Source  string
	Item    string   // the work that mends it
	Also    []string // other work that mends all of it
	New     bool     // whether that leaves nothing of the old part
	Pieces  []string // work that mends a piece of it
	ByRoom  []string // work of a room that mends all of the part where it is done all over the house
	Called  []string // other names of the part
	Said    []string // other words for work that mends all of it
	Near    []string // words for more, or for less, that may be meant for it
	Look    string   // how to look, in a line
	Caution string
	Pos     diag.Pos
}

// Mends are the items of work that mend all of the part; none of one that the file alone knows.
func (c *Check) Mends() []string {
	if c.Item == "" {
		return nil
	}
	return slices.Concat([]string{c.Item}, c.Also)
}

// An Allowance is what is set aside where a part was not seen.
type Allowance struct {
	Years               string          // "1950 to 1977"
	Likely, Least, Most decimal.Decimal // dollars
}

// bands are the years built that the tables by age know, oldest first, with the last
// year of each.
var bands = []struct {
	years string
	last  int
}{{"before 1950", 1949}, {"1950 to 1977", 1977}, {"1978 to 1990", 1990}, {"after 1990", 9999}}

// Bands are the years built that tables by age have a row for, in order.
func Bands() []string {
	var out []string
	for _, b := range bands {
		out = append(out, b.years)
	}
	return out
}

// band is the row of a year built; an unknown one counts as the oldest.
func band(year int) int {
	for i, b := range bands {
		if year <= b.last {
			return i
		}
	}
	return len(bands) - 1
}

// For returns the allowance for a year built; 0 is unknown and counts as the oldest.
func (c *Check) For(year int) Allowance { return c.Rows[band(year)] }

// Shares are a share of something by the year built.
type Shares struct {
	Rows   []decimal.Decimal
	Source string
}

// For returns the share for a year built; 0 is unknown and counts as the oldest.
func (s Shares) For(year int) decimal.Decimal { return s.Rows[band(year)] }

type ages struct {
	Checks                      []*Check
	Subfloor, RoofDeck, Suggest Shares
	UtilitiesOff                decimal.Decimal
}

// Checks returns the parts of a house that may hide a repair, in the order in which
// they are looked at.
func Checks() []*Check { return byAge().Checks }

// MadeNew is the part of the house that an item makes all new, or "".
func MadeNew(it *Item) string {
	for _, c := range Checks() {
		if c.New && slices.Contains(c.Mends(), it.Name) {
			return c.Name
		}
	}
	return ""
}

// SubfloorRepair is the share of a floor whose subfloor is mended.
func SubfloorRepair() Shares { return byAge().Subfloor }

// RoofDeckRepair is the share of a roof whose deck is mended.
func RoofDeckRepair() Shares { return byAge().RoofDeck }

// Share is how much of its measure an item with a share by age is done to.
func (it *Item) Share(year int) (decimal.Decimal, bool) {
	if it.ShareByAge == "" {
		return decimal.Decimal{}, false
	}
	return it.Shares().For(year), true
}

// Shares are those that an item with a share by age takes of its measure.
func (it *Item) Shares() Shares {
	if it.ShareByAge == "roof deck" {
		return RoofDeckRepair()
	}
	return SubfloorRepair()
}

// Contingency is what is suggested for a year built: a share of the cost, more where
// the utilities were off at the visit.
func Contingency(year int, utilitiesOff bool) decimal.Decimal {
	x := byAge().Suggest.For(year)
	if utilitiesOff {
		x = x.Add(byAge().UtilitiesOff)
	}
	return x
}

// byAge reads the tables by age that ship with the program; a test reads all of them.
var byAge = sync.OnceValue(func() *ages {
	text, _ := checksFile.ReadFile("checks.yaml") // embedded, so always there
	var doc yaml.Node
	if err := yaml.Unmarshal(text, &doc); err != nil {
		panic("the tables by age are not YAML")
	}
	var found diag.List
	r := &reader{file: "starter book, checks.yaml", found: &found}
	out := &ages{}
	r.keys(nodeOf(doc.Content[0]), "the tables by age", map[string]func(*node){
		"checks":           func(n *node) { out.Checks = r.checks(n) },
		"subfloor repair":  func(n *node) { out.Subfloor = r.shares(n, nil) },
		"roof deck repair": func(n *node) { out.RoofDeck = r.shares(n, nil) },
		"contingency":      func(n *node) { out.Suggest = r.shares(n, &out.UtilitiesOff) },
	})
	if len(found) > 0 {
		panic("the tables by age are not sound")
	}
	return out
})

func (r *reader) checks(n *node) []*Check {
	var out []*Check
	r.mapping(n, "checks", nil, func(key, value *node) bool {
		c := &Check{Name: key.Value, Pos: r.pos(key)}
		r.keys(value, "the check", map[string]func(*node){
			"rows": func(n *node) {
				r.mapping(n, "rows", nil, func(years, row *node) bool {
					a := Allowance{Years: years.Value}
					r.keys(row, "the row", map[string]func(*node){"likely": r.money(&a.Likely), "least": r.money(&a.Least), "most": r.money(&a.Most)})
					c.Rows = append(c.Rows, a)
					return true
				})
			},
			"source": r.text(&c.Source), "item": r.text(&c.Item), "also": r.names(&c.Also), "makes new": r.yesNo(func(is bool) { c.New = is }), "pieces": r.names(&c.Pieces), "by the room": r.names(&c.ByRoom),
			"called": r.names(&c.Called), "said": r.names(&c.Said), "near": r.names(&c.Near), "look": r.text(&c.Look), "caution": r.text(&c.Caution),
		})
		out = append(out, c)
		return true
	})
	return out
}

// names returns a reader of a list of names, in the place of what stood there.
func (r *reader) names(to *[]string) func(*node) {
	return func(n *node) {
		*to = nil
		r.list(func(n *node) { *to = append(*to, r.words(n)) })(n)
	}
}

func (r *reader) shares(n *node, more *decimal.Decimal) Shares {
	var out Shares
	percent := func(to func(decimal.Decimal)) func(*node) { return parsed(r, quantity.ParsePercent, to) }
	skip := func(*node) {}
	r.keys(n, "the table", map[string]func(*node){
		"rows": func(n *node) {
			r.mapping(n, "rows", nil, func(_, share *node) bool {
				percent(func(x decimal.Decimal) { out.Rows = append(out.Rows, x) })(share)
				return true
			})
		},
		"source": r.text(&out.Source), "of": skip, "item": skip, "beside": skip,
		"utilities off": percent(func(x decimal.Decimal) { *more = x }),
	})
	return out
}
