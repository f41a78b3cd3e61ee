package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// A reader walks one file.
type reader struct {
	deal     *Deal
	name     string
	src      *source
	diags    diag.List
	got      map[string]*reading // by full path, items of lists by number: loans[1].rate
	items    map[string][]scope  // of the lists, by the set of their members
	dated    []datedFee
	meant    map[string]bool   // full paths that unknown keys were probably meant for
	odd      map[string]bool   // paths of groups with an unknown key
	astray   map[string]bool   // groups that are missing and whose keys were found elsewhere
	books    map[string]string // texts of price books read besides, by name
	lostTime map[diag.Pos]bool // charges that a set makes one payment, where the file has them by time
	root     *node
	early    *walk.Known // of the deal, bound to find out how long the work takes
	times    *calendar   // what the model makes of the phases; nil before it is asked
	timed    bool        // whether they could be read

	unquoted bool   // quotes for all of some work are left out: a trial, of which nothing is told
	trial    *trial // the file read so

	allKeys []target // of the deal itself, once they are asked for
	scoping
	sold
}

// A reading is a key that the file gives.
type reading struct {
	field  *Field
	key    span
	node   *node
	member *model.Member   // whose line it feeds
	ok     bool            // it could be read
	number decimal.Decimal // in the model's unit
	date   quantity.Date
	choice string
}

// at is the place of the value, or of the key where the value is a group.
func (g *reading) at() diag.Pos {
	if g.node.shape == scalar {
		return g.node.at
	}
	return g.key.at
}

// dollars is its amount as it is written, or in dollars where it has no $: 304000 is $304,000.
func (g *reading) dollars() string {
	switch {
	case strings.Contains(g.node.text, "$"):
		return g.node.text
	case g.number.IsInteger():
		return quantity.FormatDollars(g.number)
	}
	return quantity.FormatMoney(g.number)
}

// A scope is the group of keys being read.
type scope struct {
	path   string // its full path with a dot behind it, "" for the whole file
	group  string // its rows in the table
	member *model.Member
	place  *place // of a charge
	at     diag.Pos
}

func newReader(name string) *reader {
	d := &Deal{Name: name, Root: model.NewDeal(name), Work: map[*model.Member]*Work{}, Products: map[*model.Member]*pricebook.Product{}}
	d.Root.Pos.File = name
	return &reader{deal: d, name: name, got: map[string]*reading{}, items: map[string][]scope{}, meant: map[string]bool{}, odd: map[string]bool{}, astray: map[string]bool{}, books: map[string]string{}, lostTime: map[diag.Pos]bool{}, scoping: newScoping(), sold: newSold(), trial: &trial{}}
}

// say adds a finding once its hint is known.
func (r *reader) say(code string, at diag.Pos, format string, args ...any) func(hint string, args ...any) {
	d := finding(code, at, format, args...)
	return func(hint string, args ...any) { r.diags.Add(d.WithHint(hint, args...)) }
}

// read walks the whole file and checks what it says.
func (r *reader) read(root *node) {
	r.root = root
	top := scope{member: r.deal.Root, at: root.at}
	r.group(top, root)
	r.facts()
	r.build()
	r.notSeen()
	r.renew()
	r.comparables()
	aside := r.besidePlan()
	r.check()
	if !r.diags.HasErrors() {
		r.bind()
	}
	if !r.diags.HasErrors() {
		r.compute()
	}
	if !r.diags.HasErrors() {
		r.rangesFit()
		r.badDaysFit()
		if !aside.HasErrors() && !r.unquoted {
			figures := r.ahead()
			r.doubt()
			figures()
			r.doubtFigures()
		}
	}
	r.diags = append(r.diags, aside...)
}

// besidePlan reads ranges and bad days, and returns what is found in them. They change no
// figure of the plan, so a mistake in one does not keep what another comes to from being told.
func (r *reader) besidePlan() diag.List {
	plan := r.diags
	r.diags = nil
	r.ranges()
	r.badDays()
	r.moveAside()
	aside := r.diags
	r.diags = plan
	return aside
}

// group reads the keys of a group in the order of the table, so that the order of
// the file does not matter.
func (r *reader) group(s scope, n *node) {
	known := map[*Field]*entry{}
	for i := range n.entries {
		e := &n.entries[i]
		f := fieldNamed(s.group, e.name)
		switch {
		case f == nil:
			r.unknown(s, e)
		case known[f] != nil:
			r.say("duplicate-key", e.key.at, "%s is another name for %s, which is given in line %d", diag.Quote(e.key.text), diag.Quote(known[f].key.text), known[f].key.at.Line)("keep one of them")
		default:
			known[f] = e
		}
	}
	for _, f := range fields()[s.group] {
		if e := known[f]; e != nil {
			r.field(s, f, e)
		}
	}
}

// field reads one key.
func (r *reader) field(s scope, f *Field, e *entry) {
	if f.Only != "" && !slices.Contains(strings.Fields(f.Only), s.place.kind) {
		r.say("detail-not-here", e.key.at, "%s has no meaning for %s", diag.Quote(e.key.text), s.place.words)("it is for %s", onlyFor(f.Only))
		return
	}
	g := &reading{field: f, key: e.key, node: e.value, member: s.member}
	r.got[s.path+f.Key()] = g
	switch e.value.shape {
	case refused:
		return
	case nothing:
		r.missing(f, e)
		return
	}
	inner := scope{path: s.path + f.Key() + ".", group: f.Path, member: s.member, place: s.place, at: e.key.at}
	switch f.Kind {
	case Group:
		inner.member = r.groupMember(s, f, e.key.at)
		r.groupField(inner, f, g)
	case List:
		r.list(s, f, g)
	case Fees:
		r.fees(inner, f, g)
	case Deposits, Prorations:
		r.deposits(inner, f, g)
	case Spending:
		r.spending(s, f, g)
	case Named:
		r.byName(s, f, g)
	case Sizes:
		r.sizes(s, f, g)
	case Walk:
		r.walls(s, f, g)
	case Ceiling:
		r.ceilingField(s, f, g)
	case Openings:
		r.openings(s, f, g)
	case Words:
		r.wordsField(f, g)
	case Roof:
		r.roof(s, f, g)
	case Works:
		r.works(s, f, g)
	case Scope:
		r.scopeField(f, g)
	case OfInput, Correlation:
		g.ok = r.wants(f, g, scalar)
	case Cases:
		g.ok = r.wants(f, g, mapping)
	case Ties:
		r.ties(s, f, g)
	case BadDays:
		g.ok = r.wants(f, g, mapping)
	case Brackets, Slabs:
		r.bracketField(s, f, g)
	case Tables:
		r.tables(s, f, g)
	case Headers, Extras, Conditions:
		r.pairs(f, g)
	default:
		if (f.Kind != Area || !r.severalAreas(f, g)) && r.wants(f, g, scalar) {
			r.value(s, f, g)
		}
	}
}

func (r *reader) missing(f *Field, e *entry) {
	if r.astray[f.Path] { // its keys stand below, not indented, and are spoken of
		return
	}
	hint := "write one, e.g. " + f.example()
	switch rest := string(r.src.line(e.key.at.Line)); {
	case e.key.at.File == r.name && strings.Contains(rest, "#"):
		hint += "; what stands behind # is not read"
	case !f.Required:
		hint += ", or leave the key out"
	}
	r.say("missing-value", e.key.at, "%s has no value", diag.Quote(e.key.text))("%s", hint)
}

// example is the key with its example; a group's is that of its first key.
func (f *Field) example() string {
	if inner := fields()[f.Path]; f.Example == "" && len(inner) > 0 {
		return fmt.Sprintf("%s: {%s}", f.title(), inner[0].example())
	}
	if f.item {
		return f.Example
	}
	return f.title() + ": " + f.Example
}

// wants checks the shape of a value.
func (r *reader) wants(f *Field, g *reading, s shape) bool {
	n := g.node
	if n.shape == s {
		return true
	}
	code := map[shape]string{scalar: "want-value", mapping: "want-group", list: "want-list"}[s]
	at := n.at
	if n.shape != scalar && !n.flow {
		at = g.key.at
	}
	tell := r.say(code, at, "%s should be %s, and is %s", f.title(), s.words(), n.shape.words())
	if isNone(n.text) {
		tell("leave the key out if there is none; else write it like   %s", f.example())
		return false
	}
	inner, value := keyInFront(f.Path, n.text)
	phases := []string(nil)
	if f.Key() == "during" {
		phases = phasesOf(f, n)
	}
	switch other := f.namesake(n.text); {
	case len(phases) > 1:
		tell("%s", chargeEach(phases))
	case s == mapping && n.shape == scalar && InSet(n.at) && f.takes(n.text):
		tell("name the key that it is for:   --set '%s.%s=%s'", f.Path, fields()[f.Path][0].Key(), n.text)
	case s == mapping && n.shape == scalar && inner != "" && n.exact:
		tell("the colon behind %s is missing; write   %s: %s", inner, inner, value)
	case s == mapping && n.shape == scalar && inner != "":
		tell("the colon behind %s is missing; write a colon and a space there", inner)
	case other != nil && InSet(n.at):
		tell("did you mean %s?", other.Path)
	case InSet(n.at) && f.namesake(n.text+" months") != nil:
		path := f.namesake(n.text + " months").Path
		tell("did you mean %s? with its unit:   --set '%s=%s months'", path, path, n.text)
	case other != nil:
		tell("if you mean the %s %s, write it as   %s: {%s: %s}; else write it like   %s", other.group(), other.Key(), other.group(), other.Key(), n.text, f.example())
	case f.Kind == Ceiling:
		tell("write it like   %s   ;%s", f.example(), slopes)
	default:
		tell("write it like   %s", f.example())
	}
	return false
}

// isNone reports whether a text says that there is none.
func isNone(text string) bool {
	return slices.Contains([]string{"none", "no", "n/a", "0", "nothing", "-"}, strings.ToLower(strings.TrimSpace(text)))
}

// takes reports whether the first key of a group takes a text as its number.
func (f *Field) takes(text string) bool {
	inner := fields()[f.Path]
	if len(inner) == 0 || numberCodes[inner[0].Kind] == "" {
		return false
	}
	_, err := number(inner[0].Kind, text)
	return err == nil
}

// namesake is the key of the same name elsewhere that takes a single value such as
// this one, or nil.
func (f *Field) namesake(text string) *Field {
	for o := range rows() {
		if o.Path != f.Path && o.Key() == f.Key() && numberCodes[o.Kind] != "" && !strings.ContainsAny(o.Path, "[<") {
			if _, err := number(o.Kind, text); err == nil {
				return o
			}
		}
	}
	return nil
}

// groupField reads a group, or the single value that stands for one of its parts.
func (r *reader) groupField(s scope, f *Field, g *reading) {
	if f.Short != "" && g.node.shape == scalar {
		g.ok = true
		part := *fieldNamed(f.Path, f.Short)
		part.said = f.title()
		r.field(s, &part, &entry{plainKey(f.Short), g.key, g.node})
		return
	}
	if r.wants(f, g, mapping) {
		g.ok = true
		r.group(s, g.node)
	}
}
