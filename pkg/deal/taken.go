package deal

import (
	"fmt"
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

// mayBe refuses a figure of an input that the file could not have beside what it has, as a
// set of it would be. Text is where the figure stands.
func (r *reader) mayBe(in Input, x decimal.Decimal, text span) bool {
	if in.reads == nil || in.key == "" {
		return true
	}
	after := r.clashesWith(in.key, &reading{field: in.reads, key: span{text: in.Key(), at: text.at}, node: &node{shape: scalar, span: text}, member: in.Member, ok: true, number: x})
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

// clashesWith are the mistakes that there would be with another reading of a key.
func (r *reader) clashesWith(key string, g *reading) diag.List {
	old, had := r.got[key]
	r.got[key] = g
	defer func() {
		if r.got[key] = old; !had {
			delete(r.got, key)
		}
	}()
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
