package diag

import (
	"cmp"
	"slices"
	"strings"
)

// nearNames is the most names that Near returns.
const nearNames = 5

// Near returns at most a few of the known names that are close to words: the one they
// were probably meant for, then those with most of the words in them. Words are small
// letters with one blank between them.
func Near(words string, known []string) []string {
	var out []string
	if near, ok := Nearest(words, known); ok {
		out = append(out, near)
	}
	wanted := strings.Fields(words)
	score := map[string]int{}
	for _, name := range known {
		score[name] = hits(wanted, strings.Fields(name))
	}
	byScore := slices.Clone(known)
	slices.SortStableFunc(byScore, func(a, b string) int { return cmp.Compare(score[b], score[a]) })
	for _, name := range byScore {
		if len(out) < nearNames && score[name] > 0 && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// hits are how many words a name has, slips forgiven behind the first letter of all but
// the shortest, but none that loses a third of the word.
func hits(words, name []string) (n int) {
	for _, w := range words {
		if near, ok := Nearest(w, name); ok && (near == w || len(w) > 3 && near[0] == w[0] && 3*len(near) > 2*len(w)) { // no cooling for roofing
			n++
		}
	}
	return n
}
