package deal

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
)

// otherWays are the keys of which the file gives some or others of a group.
var otherWays = map[string][]string{
	"cost-two-ways":  {"amount", "materials", "labour"},
	"price-two-ways": {"fixed amount", "price share"},
}

// A Tried figure is what an input would come to.
type Tried struct {
	Input Input
	Value decimal.Decimal
	text  span // where it stands, if anywhere
}

// mayBe refuses a figure of an input that the file could not have beside what it has, as a
// set of it would be. Text is where the figure stands.
func (r *reader) mayBe(in Input, x decimal.Decimal, text span) bool {
	after := r.clashesWith(Tried{in, x, text})
	if len(after) == 0 {
		return true
	}
	before := r.clashes()
	for _, d := range after {
		same := func(o diag.Diag) bool { return o.Code == d.Code && o.Pos == d.Pos }
		if slices.ContainsFunc(before, same) || d.Code == "low-above-value" { // the low value is how low it may come out
			continue
		}
		message, hint := d.Message, d.Hint
		if d.Pos != text.at {
			place := fmt.Sprintf("line %d of the file", d.Pos.Line)
			if InSet(d.Pos) {
				place = "a --set"
			}
			message += ", by this beside " + place
			hint = "take another figure, or in " + place + ": " + hint
		}
		if way := r.otherWay(in, d.Code); way != "" {
			hint = way
		}
		r.say(d.Code, text.at, "%s", message)("%s", hint)
		return false
	}
	return true
}

// Clash is what the deal file would say against several figures that it takes one by one, or
// nil.
func (d *Deal) Clash(figures ...Tried) *diag.Diag { return d.reader.clashOf(figures) }

func (r *reader) clashOf(figures []Tried) *diag.Diag {
	if len(figures) < 2 {
		return nil
	}
	after := r.clashesWith(figures...)
	if len(after) == 0 {
		return nil
	}
	for _, f := range figures { // told of each, or of the file
		alone := r.clashesWith(f)
		after = slices.DeleteFunc(after, func(d diag.Diag) bool {
			return d.Code == "low-above-value" || slices.ContainsFunc(alone, func(o diag.Diag) bool { return o.Code == d.Code && o.Message == d.Message })
		})
	}
	if len(after) == 0 {
		return nil
	}
	return &after[0]
}

// clashesWith are the mistakes that there would be with other readings of some keys.
func (r *reader) clashesWith(figures ...Tried) diag.List {
	figures = slices.DeleteFunc(slices.Clone(figures), func(f Tried) bool { return f.Input.reads == nil || f.Input.key == "" })
	if len(figures) == 0 {
		return nil
	}
	got := r.got
	r.got = maps.Clone(got)
	defer func() { r.got = got }()
	for _, f := range figures {
		in := f.Input
		text := f.text
		if text.text == "" {
			text.text = in.SaysCents(f.Value)
		}
		r.got[in.key] = &reading{field: in.reads, key: span{text: in.Key(), at: text.at}, node: &node{shape: scalar, span: text}, member: in.Member, ok: true, number: f.Value}
	}
	return r.clashes()
}

// clashes are the mistakes of keys that do not go together.
func (r *reader) clashes() diag.List {
	try := *r
	try.diags = nil
	try.checkPurchase()
	try.checkLines()
	try.checkLoans()
	return try.diags
}

// otherWay names the keys of the file that stand where the input would be another way to say
// the same, or "".
func (r *reader) otherWay(in Input, code string) string {
	ways := otherWays[code]
	group, key, _ := cutLast(in.key)
	var there []string
	for _, w := range ways {
		if w != key && r.got[group+"."+w] != nil {
			path, _, _ := cutLast(in.Path)
			there = append(there, path+"."+w)
		}
	}
	if there == nil || !slices.Contains(ways, key) {
		return ""
	}
	return "take what the file has:   " + strings.Join(there, "   or   ")
}
