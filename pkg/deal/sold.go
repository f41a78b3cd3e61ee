package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// sold is what the reader keeps of sold houses while it reads.
type sold struct {
	entries    map[string]*comps.Entry // of the house and each sold one, by path
	labels     map[string]string       // of the sold ones, by path
	headers    []header
	columns    map[string]string
	extras     []extra
	conditions map[string]condition // by evened-out option
	takes      []string             // the evened-out option that the scope takes of each room, or AsItIs
	finished   condition            // that the options leave the house in; without a key where that is the house's own
	planned    plannedScope
	asked      CompsAsked
	open       func(string) ([]byte, error)
	inMiles    bool // an m of a distance can be no metres
}

// A header says which column holds what.
type header struct {
	key         span
	name, value string
}

type extra struct {
	comps.Extra
	text string
	at   diag.Pos
}

// plannedScope is what the file's own scope takes, adds and whether another is asked for.
type plannedScope struct {
	takes []string
	adds  decimal.Decimal
	moved bool
}

type condition struct {
	comps.Fact
	key, value span
}

// CompsAsked is what is asked of the comparables beside the file.
type CompsAsked struct {
	From        string // a table of sales that stands in for the file's
	Text        []byte // of it
	Strike, Add []string
}

func newSold() sold {
	return sold{entries: map[string]*comps.Entry{}, labels: map[string]string{}, columns: map[string]string{}, conditions: map[string]condition{}}
}

// entry is what is known of the house, or of a sold one, by path.
func (r *reader) entry(path string) *comps.Entry {
	if r.entries[path] == nil {
		r.entries[path] = &comps.Entry{}
	}
	return r.entries[path]
}

// record reads a detail of a house as a record would say it.
func (r *reader) record(s scope, f *Field, g *reading) {
	if err := r.entry(s.path).Set(f.Key(), g.node.text); err != nil {
		r.unread(f.title(), g.node.span, "bad-record", err, f.example())
		return
	}
	if says, want := r.entry(s.path).Doubt(g.node.text); says != "" && !(f.Key() == "distance" && r.entry(s.path).InMetres()) { // which is told once all are read
		r.say("doubtful-cell", g.node.at, "%s: %s", f.title(), says)("write %s", want)
	}
	r.inMiles = r.inMiles || r.entry(s.path).ShowsMiles()
	g.choice, g.ok = g.node.text, true
}

// allMiles takes every "m" of the distances that are written out for miles where one of them
// can be no metres, or another says that it is in miles.
func (r *reader) allMiles() {
	for _, s := range r.items["<comp>"] {
		g := r.good(s.path + "distance")
		if g == nil || !r.entry(s.path).InMetres() {
			continue
		}
		says, want := r.entry(s.path).Settle(r.inMiles, g.node.text)
		r.say("doubtful-cell", g.node.at, "%s: %s", g.field.title(), says)("write %s", want)
	}
}

// finishComp refuses a sold house without its day or price.
func (r *reader) finishComp(s scope, e *entry) {
	r.labels[s.path] = strings.Join(strings.Fields(e.key.text), " ")
	for _, key := range []string{"sold", "price"} {
		if r.got[s.path+key] == nil && !r.odd[s.path] && e.value.shape == mapping {
			r.say("sale-incomplete", e.key.at, "%s does not say %s", diag.Quote(e.key.text), map[string]string{"sold": "when it was sold", "price": "what it sold for"}[key])("add   %s: %s", key, fieldNamed("<comp>", key).Example)
		}
	}
}

// ownLineRange is what is accepted of the worth of an own line.
const ownLineRange = "at least -$1m, at most $1m"

// pairs reads what stands by name: headers of columns, own lines, conditions.
func (r *reader) pairs(f *Field, g *reading) {
	if g.ok = r.wants(f, g, mapping); !g.ok {
		return
	}
	for i := range g.node.entries {
		e := &g.node.entries[i]
		row := &Field{Path: strings.ReplaceAll(e.key.text, ".", " "), Kind: Money, Range: ownLineRange, Example: "$15,000"}
		switch f.Kind {
		case Headers:
			row.Example = "AMT"
		case Conditions:
			row.Example = "good"
		}
		one := &reading{field: row, key: e.key, node: e.value}
		switch {
		case e.value.shape == refused:
			continue
		case e.value.shape == nothing:
			r.say("missing-value", e.key.at, "%s has no value", diag.Quote(e.key.text))("write it like   %s", f.example())
			continue
		case !r.wants(row, one, scalar):
			continue
		}
		switch f.Kind {
		case Headers:
			r.headers = append(r.headers, header{e.key, e.name, e.value.text}) // own lines may stand below
		case Conditions:
			x, err := comps.ConditionOf(e.value.text)
			if err != nil {
				r.say("bad-record", e.value.at, "%s is %s, which is no condition", e.key.text, diag.Quote(e.value.text))("write one of: %s", strings.Join(comps.Conditions(), ", "))
			}
			r.conditions[e.name] = condition{x, e.key, e.value.span}
		default:
			x, err := quantity.ParseMoney(e.value.text)
			if !r.refused(row, e.value.span, "bad-money", err) && r.inRange(row, e.value.span, x) {
				r.extras = append(r.extras, extra{comps.Extra{Name: e.name, Worth: x}, e.value.text, e.value.at})
			}
		}
	}
}

// namedColumns are the headers of what the file says that columns hold: a field, or an own line.
func (r *reader) namedColumns() {
	for _, h := range r.headers {
		field := comps.FieldNamed(h.name)
		if field == "" && slices.Contains(r.ownNames(), h.name) {
			field = h.name
		}
		if field != "" {
			r.columns[field] = h.value
			continue
		}
		r.say("unknown-field", h.key.at, "no column can hold %s", diag.Quote(h.key.text))("write what the column holds, then its header; it can hold: %s; or an own line", strings.Join(comps.FieldNames(), ", "))
	}
}

// ownNames are what the own lines are called.
func (r *reader) ownNames() (out []string) {
	for _, x := range r.extras {
		out = append(out, x.Name)
	}
	return out
}

// nothingElse is what a house has that has none of the own lines, as   has: []   says too.
const nothingElse = "none"

// writtenHas are the own lines of which the sales that are written out say something: all, if one of
// them says what it has, since whoever thought of that there thought of it for the others.
func (r *reader) writtenHas() []string {
	if slices.ContainsFunc(r.items["<comp>"], func(s scope) bool { return r.good(s.path+"has") != nil }) {
		return r.ownNames()
	}
	return nil
}

// has are the own lines that a house has; it refuses those that no line prices.
func (r *reader) has(path string) (out []string) {
	g := r.good(path + "has")
	if g == nil {
		return nil
	}
	for _, w := range g.words() {
		name := plainKey(w.text)
		if name == nothingElse && !slices.Contains(r.ownNames(), name) {
			continue
		}
		if slices.Contains(r.ownNames(), name) {
			out = append(out, name)
			continue
		}
		tell := r.say("unknown-extra", w.at, "no own line under comps says what %s is worth", diag.Quote(w.text))
		if near, ok := diag.Nearest(name, r.ownNames()); ok {
			tell("did you mean %q?", near)
		} else {
			tell("add   own lines: {%s: $15,000}   under comps", w.text)
		}
	}
	return out
}

// subject is the house as it will be when it is sold.
func (r *reader) subject() comps.Subject {
	e := r.entry("house.")
	if g := r.good("house.year built"); g != nil {
		_ = e.Set("year built", g.number.String()) // known to be a year
	}
	if g := r.good("house.levels"); g != nil && r.got["house.storeys"] == nil {
		_ = e.Set("storeys", g.number.String())
	}
	s := comps.Subject{House: e.Sold().House, Label: r.deal.Name, Has: r.has("house.")}
	if c, ok := r.conditionTaken(r.takes, s.Condition); ok {
		s.Condition, r.finished = c.Fact, c
	}
	return s
}

// conditionTaken is the condition by the options that a scope takes: the worst of the
// rooms', where one that stays counts as it is, and one of an option without a condition by
// that of the house. A room without options says nothing of it.
func (r *reader) conditionTaken(takes []string, house comps.Fact) (worst condition, known bool) {
	if len(takes) == 0 {
		takes = []string{AsItIs}
	}
	for _, option := range takes {
		c, stated := r.conditions[option]
		known = known || stated
		if !stated {
			c.Fact = house
		}
		if option != onlyOption && c.Known && (!worst.Known || c.Value < worst.Value) {
			worst = c
		}
	}
	return worst, known
}

// knownConditions refuses conditions of options that no room has.
func (r *reader) knownConditions() {
	for name, c := range r.conditions {
		if name == AsItIs || slices.ContainsFunc(r.deal.Options, func(o string) bool { return plainKey(o) == name }) {
			continue
		}
		tell := r.say("unknown-option", c.key.at, "no room has an option %s", diag.Quote(c.key.text))
		if near, ok := diag.Nearest(name, r.deal.Options); ok {
			tell("did you mean %q?", near)
		} else {
			tell("the options are: %s", strings.Join(append(slices.Clone(r.deal.Options), AsItIs), ", "))
		}
	}
}

// given are the amounts of the file, and the own lines.
func (r *reader) given() (comps.Given, []comps.Extra) {
	out := comps.Given{}
	for _, row := range adjusted {
		if g := r.good("comps.amounts." + row.key); g != nil {
			out[row.line] = g.number.InexactFloat64()
		}
	}
	var extras []comps.Extra
	for _, x := range r.extras {
		extras = append(extras, x.Extra)
	}
	return out, extras
}

func decimalOf(f comps.Fact) decimal.Decimal { return decimal.NewFromFloat(f.Value) }

// addsInComps is what options add that the value by the comparables holds: those of the
// scope taken, where the condition of the house follows them; else those planned.
func (r *reader) addsInComps() decimal.Decimal {
	if len(r.conditions) == 0 {
		return r.planned.adds
	}
	return r.takenAdds()
}
