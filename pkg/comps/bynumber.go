package comps

import (
	"maps"
	"slices"
	"strings"
)

// byNumber are rows by the number that their address begins with, "" for those without. A list may
// have thousands of one day and price, so that only those are compared that may be of one house: of
// one number, or one of them without.
type byNumber map[string][]int

// with are the rows that may be of the house of an address, without those that are gone, which are
// the first added.
func (b byNumber) with(address string, gone func(int) bool) (out []int) {
	numbers := []string{"", leading(address)}
	if numbers[1] == "" {
		numbers = slices.Sorted(maps.Keys(b))
	}
	for _, n := range numbers {
		rows := b[n]
		for len(rows) > 0 && gone(rows[0]) {
			rows = rows[1:]
		}
		if len(rows) > 0 {
			b[n] = rows
			out = append(out, rows...)
		} else {
			delete(b, n)
		}
	}
	return out
}

func (b byNumber) add(address string, row int) {
	n := leading(address)
	b[n] = append(b[n], row)
}

// leading is the number of digits alone that an address begins with, or "".
func leading(address string) string {
	word, _, _ := strings.Cut(strings.TrimSpace(address), " ")
	if strings.IndexFunc(word, func(r rune) bool { return r < '0' || r > '9' }) >= 0 {
		return ""
	}
	return word
}
