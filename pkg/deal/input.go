package deal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// varied are the kinds of values that a range can be of.
var varied = []Kind{Money, Percent, Duration, Hours, HourRate}

// decided are groups and keys that are hers to set, or follow from others.
var decided = []string{"purchase.price", "value.low", "targets.", "cash.", "tax.", "rule of thumb", "ranges.", "ties.", "bad days."}

// A use is what the name of an input is for.
type use struct {
	code   string // of what cannot be named there
	cannot string // have a range
	hint   string
	ours   bool // what is hers to decide may be named too
}

var inRanges = use{code: "range-not-here", cannot: "have a range", hint: "give a range to what is not in your hands, such as overrun or time.marketing"}

// input finds what a range or a tie names: a key by the paths that --set takes, or an input
// that a plan has no key for.
func (r *reader) input(name span) (Input, bool) { return r.inputFor(name, inRanges) }

func (r *reader) inputFor(name span, u use) (Input, bool) {
	path := setPath(name.text)
	if f := besides(path); f != nil {
		return Input{Path: f.Path, Kind: f.Kind, Member: r.deal.Root, Line: f.Line, reads: f}, true
	}
	all := r.inputKeys()
	fit := fitting(all, path)
	if len(fit) == 0 {
		for _, p := range byEntryName(all, path) {
			fit = append(fit, fitting(all, p)...)
		}
	}
	if len(fit) == 0 {
		fit = fitting(all, asTheFileSays(r.root, path))
	}
	fit = slices.DeleteFunc(fit, func(t target) bool { return t.field == nil && !t.there && t.path[0] != "seen" }) // a charge that the deal has not
	for _, better := range []func(target) bool{isThere, target.mayVary} {
		some := only(fit, better)
		if len(some) == 1 && slices.ContainsFunc(fit, func(t target) bool {
			return some[0].field != nil && t.field == some[0].field && !t.there && some[0].there
		}) {
			continue // such as another loan, which could have it as well
		}
		if len(some) > 0 {
			fit = some
		}
	}
	switch len(fit) {
	case 1:
		return r.inputAt(name, fit[0], u)
	case 0:
		r.say("unknown-input", name.at, "no input of the deal is called %s", diag.Quote(name.text))("%s", meantInput(all, path, u))
	default:
		var names []string
		for _, t := range fit {
			names = append(names, t.name())
		}
		r.say("unknown-input", name.at, "%s could be more than one: %s", diag.Quote(name.text), strings.Join(names, ", "))("write one of them in full")
	}
	return Input{}, false
}

// mayVary reports whether a place is a charge or a figure of a kind that varies.
func (t target) mayVary() bool {
	f := t.field
	return f == nil || f.Kind == Charge || len(f.feeds()) == 1 && slices.Contains(varied, f.Kind) && !strings.HasPrefix(f.Path, "<")
}

// inputKeys are the keys of the deal itself, without those that name keys.
func (r *reader) inputKeys() []target {
	if r.allKeys == nil {
		r.allKeys = slices.DeleteFunc(targets(r.root, nil, ""), func(t target) bool { return t.path[0] == "ranges" || t.path[0] == "ties" || t.path[0] == "bad days" })
	}
	return r.allKeys
}

// meantInput is the way out of a name that is no input's.
func meantInput(all []target, path string, u use) string {
	known := []string{}
	for i := range besideRows {
		known = append(known, besideRows[i].Path)
	}
	if near, ok := diag.Nearest(path, known); ok {
		return "did you mean \"" + near + "\"?"
	}
	if hint := meantPath(all, path); strings.HasPrefix(hint, "did you mean") {
		name, _, _ := strings.Cut(strings.TrimPrefix(hint, `did you mean "`), `"`)
		fit := fitting(all, name)
		switch { // a name that would be refused is no way out
		case slices.ContainsFunc(fit, func(t target) bool { return t.mayVary() && (u.ours || !t.decided()) }):
			return hint
		case u.ours && len(fit) > 0 && !fit[0].hasParts():
			return fmt.Sprintf("if %s is meant, %s", fit[0].name(), fit[0].setOnce())
		}
	}
	if key := keyOfEntry(all, path); key != "" {
		return ifEntry(path, key)
	}
	return "write the keys joined by dots, e.g. time.marketing, loans.1.rate or holding.property tax, or " + strings.Join(known, ", ")
}

// inputAt is the input at a place of the file.
func (r *reader) inputAt(name span, t target, u use) (Input, bool) {
	at := keyPath(t.path)
	whole := at
	if g := r.got[at]; t.short() != "" && g != nil && g.node.shape == scalar { // the file writes that part alone
		t.path = append(slices.Clone(t.path), t.field.Short)
		t.field = fieldNamed(t.field.Path, t.field.Short)
		at = keyPath(t.path)
	}
	in := Input{Path: strings.NewReplacer("[", ".", "]", "").Replace(whole), Member: r.deal.Root, key: at}
	g := r.got[at]
	if t.field == nil { // a charge by its name
		g = r.got[at+".amount"]
	}
	if g != nil {
		in.Member = g.member
	}
	switch f := t.field; {
	case !u.ours && t.decided():
		r.say(u.code, name.at, "%s is decided and does not come out by chance", t.name())("%s", u.hint)
		return in, false
	case f != nil && t.path[0] == "comps" && t.mayVary(): // its sales are weighed as the file is read
		r.say(u.code, name.at, "%s cannot %s: the weights of the sales go by it", t.name(), u.cannot)("%s", t.setOnce())
		return in, false
	case g != nil && !g.ok:
		return in, false // spoken of
	case f == nil || f.Kind == Charge:
		if g == nil {
			return r.notVaried(name, t, u)
		}
		return r.chargeInput(name, t, in, g, u)
	case !t.mayVary():
		return r.notVaried(name, t, u)
	case g == nil && strings.Contains(f.Path, "[]"):
		if in.Member = r.itemAt(t.path); in.Member == nil {
			r.say("unknown-input", name.at, "the deal has no %s", in.Path)("leave it out, or add to the file what it is of")
			return in, false
		}
	}
	in.Kind, in.Line, in.reads = t.field.Kind, t.field.Line, t.field
	return in, true
}

// decided reports whether a place is hers to set, or follows from others.
func (t target) decided() bool {
	return slices.ContainsFunc(decided, func(d string) bool { return strings.HasPrefix(t.name()+".", d) || t.name() == d })
}

// hasParts reports whether a place is a group or list, which has no value of its own.
func (t target) hasParts() bool {
	return t.field != nil && t.field.Short == "" && slices.Contains([]Kind{Group, List, Fees, Deposits, Prorations, Tables, Named, Works}, t.field.Kind)
}

// short is what a single value in place of the group means, where that may vary, or "".
func (t target) short() string {
	if t.field == nil || t.field.Short == "" {
		return ""
	}
	name := t.name() + "." + t.field.Short
	if f := fieldNamed(t.field.Path, t.field.Short); f == nil || len(f.feeds()) != 1 || !slices.Contains(varied, f.Kind) {
		return ""
	}
	return name
}

// ifEntry is the way out of a name that is an entry's.
func ifEntry(name, key string) string {
	return fmt.Sprintf("if the entry of that name is meant, write one of its keys, e.g.   %s.%s", name, key)
}

// setOnce is the way out for what can only be tried in a plan of its own.
func (t target) setOnce() string {
	value := "…"
	if t.field != nil && t.field.Example != "" && !strings.Contains(t.field.Example, "'") { // which would end what is quoted
		value = t.field.Example
	}
	return fmt.Sprintf("try it with   --set '%s=%s'   , once per value", t.name(), value)
}

func (r *reader) notVaried(name span, t target, u use) (Input, bool) {
	tell := r.say(u.code, name.at, "%s cannot %s", t.name(), u.cannot)
	if key := keyOfEntry(r.inputKeys(), setPath(name.text)); key != "" {
		tell("%s", ifEntry(name.text, key))
		return Input{}, false
	}
	if group, example := r.lacks(t); group != "" {
		tell("the deal has no %s, so it would do nothing; with   %s   in the file, try it with --set, once per value", group, example)
		return Input{}, false
	}
	if t.field != nil && t.field.Kind == WholeMonths && t.field.Line == "lag" && r.drawsLater(t.path) {
		tell("it is counted in whole months and stays as it is; for draws that come 1 month later stress has a bad day, draws 1 month slower; plan with another by   --set '%s=%s'", t.name(), t.field.Example)
		return Input{}, false
	}
	if t.field != nil && staysWords[t.field.Kind] != "" {
		example := t.field.Example
		if g := r.got[keyPath(t.path)]; g != nil && g.node.text == example {
			example = "…" // that is the plan's, and no other
		}
		tell(staysWords[t.field.Kind], t.name(), example)
		return Input{}, false
	}
	if same, ok := r.namesake(t); ok {
		tell("if a %s is meant, write   %s   ; for what the work costs, overrun", same.field.Kind, same.name())
		return Input{}, false
	}
	switch short := t.short(); {
	case short != "":
		tell("write   %s", short)
	case t.field != nil && slices.Contains(varied, t.field.Kind):
		tell("inputs of the plan can; details of rooms' work, of checks, of sold houses and of charges cannot: %s", t.setOnce())
	case u.ours && t.hasParts():
		tell("amounts, shares, rates, hours and lengths of time in it can: write which, e.g. 'loans.1.rate=10%%, 12%%'")
	case u.ours:
		tell("amounts, shares, rates, hours and lengths of time of the plan can; %s", t.setOnce())
	default:
		tell("amounts, shares, rates and lengths of time of the deal can; for what the work costs give overrun a range")
	}
	return Input{}, false
}

// staysWords are the ways out where a figure of a kind stays as it is in every case.
var staysWords = map[Kind]string{
	WholeMonths:  "it is counted in whole months and stays as it is; plan with another by   --set '%[1]s=%[2]s'",
	ShareOrMoney: "it may be a share or dollars, and stays as it is; plan with another by   --set '%[1]s=%[2]s'",
	Pace:         "it stays as it is; what the work then takes more is   overrun   in cost and   time.renovation   in time; or plan with another pace by   --set '%[1]s=%[2]s'",
}

// lacks is what the file has not and without which it refuses a key, and how that is written.
func (r *reader) lacks(t target) (group, example string) {
	switch {
	case t.field == nil:
	case t.field.Path == "loans[].extension.fee" && r.got[strings.TrimSuffix(keyPath(t.path), "fee")+"each"] == nil:
		return "extension", "extension: {each: 3 months, fee: 0.5%}"
	case t.field.Path == "tax.filing" && r.got["tax.income rate"] == nil:
		return "tax by rates", "tax: {income rate: 22%}"
	}
	return "", ""
}

// drawsLater reports whether stress has a bad day of later draws of the loan at a place, which
// pays for works in draws.
func (r *reader) drawsLater(path []string) bool {
	loan := r.itemAt(path)
	if loan == nil {
		return false
	}
	share, stated := loan.Given.Look("renovation_share")
	return stated && share.Number.IsPositive()
}

// namesake is the only figure that may vary and is called like a group, such as the length of
// the renovation.
func (r *reader) namesake(group target) (target, bool) {
	var found []target
	for _, t := range r.inputKeys() {
		if t.field != nil && len(t.field.feeds()) == 1 && slices.Contains(varied, t.field.Kind) && t.path[len(t.path)-1] == group.path[len(group.path)-1] {
			found = append(found, t)
		}
	}
	if len(found) != 1 || group.field == nil || group.field.Kind != Group {
		return target{}, false
	}
	return found[0], true
}

// chargeInput is the amount of a charge, whose range is written in the same form.
func (r *reader) chargeInput(name span, t target, in Input, g *reading, u use) (Input, bool) {
	text := g.node.span
	for _, word := range []string{" during ", " of "} {
		if i := lastWord(text.text, word); i >= 0 {
			text = text.cut(0, i)
		}
	}
	c, err := readCharge(text)
	if err != nil || g.member.Set != "fee" {
		return r.notVaried(name, t, u)
	}
	in.form, in.Line, in.Kind = c, c.line("fee"), Money
	switch c.form {
	case share:
		in.Kind = Percent
	case byStep:
		in.per = " per " + quantity.FormatDollars(c.unit)
	case byTime:
		in.per = "/" + c.per.String()
	}
	return in, true
}

// itemAt is the member of a list's item that a path leads to, or nil.
func (r *reader) itemAt(path []string) *model.Member {
	for i := len(path) - 1; i > 0; i-- {
		n, err := strconv.Atoi(path[i])
		if err != nil {
			continue
		}
		set := map[string]string{"loans": "loan", "loan": "loan", "lines": "cost"}[path[i-1]]
		if all := r.items[set]; n >= 1 && n <= len(all) {
			return all[n-1].member
		}
	}
	return nil
}

// keyPath is a path as readings are kept by: loans[1].rate.
func keyPath(path []string) string {
	var b strings.Builder
	group := ""
	for i, part := range path {
		f := fieldNamed(group, part)
		switch _, err := strconv.Atoi(part); {
		case err == nil && i > 0:
			b.WriteString("[" + part + "]")
			group += "[]"
			continue
		case f != nil:
			part, group = f.Key(), f.Path
		default:
			group = "<fee>"
		}
		if i > 0 {
			b.WriteByte('.')
		}
		b.WriteString(part)
	}
	return b.String()
}
