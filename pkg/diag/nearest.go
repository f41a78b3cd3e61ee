package diag

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Nearest returns the known name closest to word, for "did you mean", or, if none is
// close, the only one that has all its words and more. Case does not
// count. A slip is a letter added, left out, changed or swapped with its neighbour;
// one is forgiven, two from six letters on, three from nine. Before more than one, a name
// that begins the word, or that it begins, is nearer: bath for bathroom. Of equally close
// names those that only add or leave out letters win, then the alphabetically first, so the
// order of known does not matter.
func Nearest(word string, known []string) (string, bool) {
	w := []rune(strings.ToLower(word))
	best, least := "", forgiven(len(w))+1
	for _, name := range known {
		if n := utf8.RuneCountInString(name); n-len(w) >= least+1 || len(w)-n >= least+1 {
			continue // also keeps very long words cheap
		}
		d := distance(w, []rune(strings.ToLower(name)))
		if d >= len(w) && d > 0 {
			continue // nothing of the word is left
		}
		keeps := func(name string) bool { return apart(utf8.RuneCountInString(name), len(w)) == least } // no letter of the shorter is lost: walls for wals
		if d < least || d == least && best != "" && (keeps(name) && !keeps(best) || keeps(name) == keeps(best) && name < best) {
			best, least = name, d
		}
	}
	if name := begun(word, known); name != "" && (best == "" || least > 1) {
		return name, true
	}
	if best == "" {
		return longer(word, known)
	}
	return best, true
}

// Misspelt reports whether one of two words is likely the other with a slip, as Nearest forgives.
func Misspelt(a, b string) bool {
	x, y := []rune(strings.ToLower(a)), []rune(strings.ToLower(b))
	return distance(x, y) <= forgiven(max(len(x), len(y)))
}

// forgiven is how many slips are, in a word of so many letters.
func forgiven(letters int) int { return min(max(letters/3, 1), 3) }

func apart(a, b int) int { return max(a-b, b-a) }

// leastBegun is how many letters a word and a name begin with that are taken for one.
const leastBegun = 4

// begun returns the only known name that begins the word, or that the word begins, with no
// less than half of the longer one.
func begun(word string, known []string) (found string) {
	for _, name := range known {
		short, long := name, word
		if len(short) > len(long) {
			short, long = long, short
		}
		switch {
		case len(short) < leastBegun || 2*len(short) < len(long) || !strings.EqualFold(short, long[:len(short)]):
		case found != "" && found != name:
			return ""
		default:
			found = name
		}
	}
	return found
}

// longer returns the only known name that has all words of a name, and others besides.
func longer(name string, known []string) (string, bool) {
	words, found := strings.Fields(strings.ToLower(name)), ""
	for _, k := range known {
		has := strings.Fields(strings.ToLower(k))
		missing := func(w string) bool { return !slices.Contains(has, w) }
		switch {
		case len(words) == 0 || len(has) <= len(words) || slices.ContainsFunc(words, missing):
		case found != "" && found != k:
			return "", false
		default:
			found = k
		}
	}
	return found, found != ""
}

// distance is the edit distance in which swapping two neighbours counts one
// (optimal string alignment: no part is edited twice).
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			change := last[j]
			if a[i] != b[j] {
				change++
			}
			row[j+1] = min(change, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
