package deal

import (
	"regexp"
	"sync"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// againWords are in the names of what is billed again and again, besides utilities, tax, insurance, dues and
// upkeep; onceWords in those of what is paid once while a house is held, such as a tank that is filled.
var againWords, onceWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(interest|mortgage|storage)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(once|one[- ]?time|oil|propane|fill(s|ed|ing|-?up)?|tanks?|septic|pump\w*|regist\w*|inspect\w*|tests?|permits?|deposit|connect\w*|reconnect\w*|hook-?ups?|turn(ing)?[- ]?o(n|ff)|shut[- ]?off|activation|transfer|meters?|start-?up|opening|closing|final|clean-?up|winteri[sz]\w*|repairs?|set-?up|supplemental|special|initiation|move-?in|back|arrears|lien|balance|policy fee|treatment)\b`)
})

// comesAgain reports whether a holding cost is a bill by its name.
func comesAgain(m *model.Member) bool {
	name := m.Label
	return supplies(m) || taxes(m) || insures(m) || duesWords().MatchString(name) || upkeepWords().MatchString(name) || againWords().MatchString(name)
}

// doubtOnce looks for a bill that is paid once, where most come every month or year.
func (r *reader) doubtOnce(m *model.Member) {
	if onceWords().MatchString(m.Label) || r.outOfPlace(m) {
		return
	}
	when, during := ", for the whole hold", ""
	if v, ok := m.Given.Look("during"); ok && v.Choice != "" && v.Choice != "hold" {
		when, during = ", for the whole "+v.Choice, " during "+v.Choice
	}
	if v, share := m.Given.Look("share"); share && v.Number.IsPositive() {
		if paid, ok := r.worked(m, "amount"); ok {
			cost := quantity.FormatMoney(paid.Abs())
			r.say("holding-once", v.Pos, "%s is %s once%s: %s", m.Label, v.Text, when, cost)("write   %s/year%s   if it is what a year costs; if it is truly paid once, say so in its name:   %s once", cost, during, m.Label)
		}
	}
	if v, once := m.Given.Look("fixed"); once && comesAgain(m) && v.Number.IsPositive() && !r.lostTime[v.Pos] {
		r.say("holding-once", v.Pos, "%s is %s once%s", m.Label, v.Text, when)("write   %[1]s/year%[2]s   if it is the bill of a year,   %[1]s/month%[2]s   if it is paid every month; if it is truly paid once, say so in its name:   %[3]s once", v.Text, during, m.Label)
	}
}
