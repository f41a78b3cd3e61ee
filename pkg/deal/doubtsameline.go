package deal

import "ledgerboard/pkg/diag"

// doubtSameLines doubts a line of work that stands in the file twice, word for word.
func (r *reader) doubtSameLines() {
	seen := map[string]bool{}
	for _, l := range r.lines() {
		if l.member == nil || r.saidApart(l) {
			continue
		}
		all, paid := plainKey(l.member.Label), false
		for _, key := range []string{"amount", "materials", "labour", "own hours"} {
			g := r.good(l.path + key)
			if g == nil {
				all += "; "
				continue
			}
			all += "; " + g.number.String()
			paid = paid || g.number.IsPositive()
		}
		if paid && seen[all] {
			r.say("line-twice", l.member.Pos, "%s stands in the file twice, at the same price", diag.Quote(l.member.Label))("take one out; if there are two of it, say where each is in   work, or   apart: yes")
		}
		seen[all] = true
	}
}
