package deal

import (
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// doubtLoses doubts a set of a charge that drops what the file gives it beside the amount:
// $620/month during marketing set to $700 is paid once, $700/month runs all of the hold, and
// 0.5% of after-repair value set to 1% is of what is usual there.
func (r *reader) doubtLoses(t target, old, v *node, s Set) {
	isCharge := t.field == nil || strings.HasPrefix(t.field.Path, "<fee>.amount") || t.field.Path == "loans[].exit fee"
	if !isCharge || old == nil || old.shape != scalar || v.shape != scalar {
		return
	}
	was, phase, during := cutDuring(old.text)
	is, newPhase, kept := cutDuring(v.text)
	was, base, based := cutOff(was, " of ")
	is, newBase, keeps := cutOff(is, " of ")
	before, err1 := readCharge(span{text: was})
	after, err2 := readCharge(span{text: is})
	if err1 != nil || err2 != nil {
		return
	}
	stays, drops := "$"+strings.TrimPrefix(is, "$"), during && !kept
	of, in := "", ""
	if keeps {
		of = " of " + newBase
	} else if based && (after.form == before.form || before.form == byStep) {
		of = " of " + base
	}
	if kept {
		in = " during " + newPhase
	} else if during {
		in = " during " + phase
	}
	switch {
	case before.form == byTime && after.form == fixed:
		r.lostTime[v.at] = true
		r.say("set-loses-time", v.at, "--set makes %s %s, paid once, where the file says %s", diag.Quote(s.Path), v.text, old.text)("if the time is to stay, write   --set '%s=%s/%s%s'", s.Path, stays, before.per, in)
	case before.form == byStep && after.form == fixed:
		r.say("set-loses-time", v.at, "--set makes %s %s in all, where the file says %s", diag.Quote(s.Path), v.text, old.text)("if it is for each %[3]s, write   --set '%[1]s=%[2]s per %[3]s%[4]s%[5]s'", s.Path, stays, quantity.FormatDollars(before.unit), of, in)
	case based && !keeps && before.form == after.form && (after.form == share || after.form == byStep):
		r.say("set-loses-time", v.at, "--set makes %s %s, without saying of what, where the file says %s", diag.Quote(s.Path), v.text, old.text)("if it stays of that, write   --set '%s=%s%s%s'", s.Path, is, of, in)
	case drops:
		r.say("set-loses-time", v.at, "--set makes %s %s, without a phase, where the file says %s", diag.Quote(s.Path), v.text, old.text)("if the phase is to stay, write   --set '%s=%s%s%s'", s.Path, is, of, in)
	}
}

// cutDuring takes the phase off a charge written with it: $620/month during marketing.
func cutDuring(text string) (amount, phase string, found bool) { return cutOff(text, " during ") }

// cutOff parts a text at the last of a word.
func cutOff(text, word string) (before, behind string, found bool) {
	if i := lastWord(text, word); i >= 0 {
		return strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+len(word):]), true
	}
	return text, "", false
}
