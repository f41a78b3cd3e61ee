package diag

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	known := []string{"price", "points", "rate", "hold", "holdback", "after_repair_value", "or", "rye"}
	tests := []struct{ word, want string }{
		{"prise", "price"},                           // one changed
		{"pirce", "price"},                           // neighbours swapped: one, the cut-off for five letters
		{"Price", "price"},                           // case does not count
		{"pric", "price"},                            // one left out
		{"poinst", "points"},                         // swapped
		{"ponits2", "points"},                        // two slips in seven letters
		{"after repair value", "after_repair_value"}, // two of eighteen
		{"rte", "rate"},                              // nearer than a letter changed
		{"holdbak", "holdback"},                      // nearer than hold
		{"of", "or"},
		{"price", "price"},
		{"prxse", ""},         // two slips in five letters
		{"x", ""},             // nothing left of the word
		{"colour", ""},        // unlike all
		{"", ""},              //
		{"after value", ""},   // seven left out
		{"preis", ""},         // c→s and a swap: more than one
		{"afterrepairal", ""}, // five: more than three whatever the length
	}
	for _, tt := range tests {
		got, ok := Nearest(tt.word, known)
		assert.Equal(t, tt.want, got, tt.word)
		assert.Equal(t, tt.want != "", ok, tt.word)
	}
}

func TestNearestWithAWordMissing(t *testing.T) {
	known := []string{"attic room", "Hall bath", "main bath", "corner office room"}
	for word, want := range map[string]string{"attic": "attic room", "HALL": "Hall bath", "office corner": "corner office room", "bath": "", "room bath": "", "office hall": ""} {
		got, ok := Nearest(word, known)
		assert.Equal(t, want, got, word)
		assert.Equal(t, want != "", ok, word)
	}
}

// What one begins the other with is nearer than two letters that differ.
func TestNearestOfWhatBeginsAlike(t *testing.T) {
	for _, tt := range []struct {
		word, want string
		known      []string
	}{
		{"bathroom", "bath", []string{"bath", "bay room"}},
		{"bathroom", "bath room", []string{"bath", "bath room"}}, // one left out is nearer still
		{"kitchenette", "kitchen", []string{"kitchen", "hall"}},
		{"elect", "electrical", []string{"electrical", "tile"}},
		{"bathroom", "bay room", []string{"bay room", "hall"}},
		{"strip", "", []string{"strip tile", "strip wood"}}, // either
		{"bathroom upstairs", "", []string{"bath", "den"}},  // less than half
	} {
		got, _ := Nearest(tt.word, tt.known)
		assert.Equal(t, tt.want, got, tt.word)
	}
}

func TestNearByWordsBeginsAlike(t *testing.T) {
	assert.Empty(t, Near("roofing", []string{"heating and cooling", "tile"}))
	assert.Equal(t, []string{"heating and cooling"}, Near("coolling", []string{"heating and cooling", "tile"}))
}

func TestNearestTie(t *testing.T) {
	known := []string{"rata", "rate", "ratf"} // each one change from "ratx"
	for range 3 {
		got, _ := Nearest("ratx", known)
		assert.Equal(t, "rata", got)
		known = append(known[1:], known[0])
	}
}

func TestDistance(t *testing.T) { // counted by hand
	for _, tt := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"kitten", "sitting", 3}, {"ab", "ba", 1}, {"ca", "abc", 3}, {"über", "uber", 1}} {
		assert.Equal(t, tt.want, distance([]rune(tt.a), []rune(tt.b)), "%s %s", tt.a, tt.b)
		assert.Equal(t, tt.want, distance([]rune(tt.b), []rune(tt.a)), "%s %s", tt.b, tt.a)
	}
}

func TestNearestForgivesASwap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := []rune(rapid.StringMatching(`[a-z]{3,12}`).Draw(t, "word"))
		i := rapid.IntRange(0, len(word)-2).Draw(t, "at")
		slip := slices.Clone(word)
		slip[i], slip[i+1] = slip[i+1], slip[i]
		got, ok := Nearest(string(slip), []string{string(word), strings.Repeat("9", len(word))})
		assert.True(t, ok)
		assert.Equal(t, string(word), got)
	})
}

func BenchmarkNearest(b *testing.B) {
	known := make([]string, 400)
	for i := range known {
		known[i] = strings.Repeat(string(rune('a'+i%26)), 4+i%17)
	}
	long := strings.Repeat("x", 1<<20)
	b.Run("key", func(b *testing.B) {
		for b.Loop() {
			Nearest("after_repar_value", known)
		}
	})
	b.Run("megabyte", func(b *testing.B) {
		for b.Loop() {
			Nearest(long, known)
		}
	})
}
