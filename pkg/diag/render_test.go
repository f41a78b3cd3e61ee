package diag

import (
	"errors"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func ExampleRender() {
	src := "name: Elm Street\nprise: 285k\n"
	var l List
	l.Add(Errorf(Pos{File: "house.yaml", Line: 2, Col: 1, Len: 5}, "unknown-key", "unknown key %q", "prise").
		WithHint("did you mean %q?", "price"))
	_ = Render(os.Stdout, l, map[string]string{"house.yaml": src})
	// Output:
	// house.yaml:2:1: error: unknown key "prise"
	//   2 | prise: 285k
	//     | ^^^^^
	//   hint: did you mean "price"?
}

func rendered(t require.TestingT, src string, d ...Diag) string {
	var b strings.Builder
	require.NoError(t, Render(&b, d, map[string]string{"f": src}))
	return b.String()
}

func TestRenderExcerpt(t *testing.T) {
	at := func(line, col, n int) Diag { return Errorf(Pos{File: "f", Line: line, Col: col, Len: n}, "c", "m") }
	long := strings.Repeat("a", 100) + "BAD" + strings.Repeat("z", 100)
	tests := []struct {
		name, src string
		d         Diag
		want      string
	}{
		{"token", "a: b\n", at(1, 4, 1), "1 | a: b\n    |    ^"},
		{"length not known", "a: bcd", at(1, 4, 0), "1 | a: bcd\n    |    ^"},
		{"no column", "a: b", at(1, 0, 0), "1 | a: b"},
		{"windows line end", "x\r\na: b\r\n", at(2, 1, 1), "2 | a: b\n    | ^"},
		{"byte order mark", "\ufeffa: b", at(1, 1, 1), "1 | a: b\n    | ^"},
		{"tab before", "a:\tbc", at(1, 4, 2), "1 | a:  bc\n    |     ^^"},
		{"tab meant", "a:\tbc", at(1, 3, 1), "1 | a:  bc\n    |   ^^"},
		{"accents", "café: é5", at(1, 7, 2), "1 | café: é5\n    |       ^^"},
		{"combining accent is a character of no width", "cafe\u0301: x", at(1, 8, 1), "1 | cafe\u0301: x\n    |       ^"},
		{"wide letters", "家: 家x", at(1, 4, 2), "1 | 家: 家x\n    |     ^^^"},
		{"escape sequence", "\x1b[2Jx", at(1, 5, 1), "1 | �[2Jx\n    |     ^"},
		{"behind the line", "ab", at(1, 3, 1), "1 | ab\n    |   ^"},
		{"far behind the line", "ab", at(1, 99, 9), "1 | ab\n    |   ^"},
		{"longer than the line", "ab", at(1, 2, 9), "1 | ab\n    |  ^"},
		{"empty line", "", at(1, 1, 1), "1 |\n    | ^"},
		{"gutter follows the number", strings.Repeat("\n", 99) + "abc", at(100, 2, 2), "100 | abc\n      |  ^^"},
		// 74 columns are left: 36 before the word of 3 (half of 71, rounded up), so 36 after it,
		// less one on each side for the mark.
		{"long line", long, at(1, 101, 3), "1 | …" + strings.Repeat("a", 34) + "BAD" + strings.Repeat("z", 35) + "…\n    | " + strings.Repeat(" ", 35) + "^^^"},
		{"long line, start", long, at(1, 1, 2), "1 | " + strings.Repeat("a", 73) + "…\n    | ^^"},
		{"long line, end", long, at(1, 203, 1), "1 | …" + strings.Repeat("z", 73) + "\n    | " + strings.Repeat(" ", 73) + "^"},
		{"long word", long, at(1, 1, 203), "1 | " + strings.Repeat("a", 73) + "…\n    | " + strings.Repeat("^", 73)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			head := tt.d.Error() + "\n"
			assert.Equal(t, head+"  "+tt.want+"\n", rendered(t, tt.src, tt.d))
		})
	}
}

func TestRenderWithoutExcerpt(t *testing.T) {
	for _, d := range []Diag{
		Errorf(Pos{File: "f", Line: 3, Col: 1}, "c", "m"), // beyond the end
		Errorf(Pos{File: "g", Line: 1, Col: 1}, "c", "m"), // text not given
		Errorf(Pos{File: "f"}, "c", "m"),
		Errorf(Pos{}, "c", "m"),
	} {
		assert.Equal(t, d.Error()+"\n", rendered(t, "a\nb", d))
	}
}

func TestRenderWrap(t *testing.T) {
	d := Warnf(Pos{File: "f", Line: 9}, "c", "the sale price of $285,000 is below the price paid, $310,000, so this deal loses money").
		WithHint("%s", "if the house really sells for less than it cost, say so with a line that names the reason\nor leave it")
	assert.Equal(t, `f:9: warning: the sale price of $285,000 is below the price paid, $310,000, so
    this deal loses money
  hint: if the house really sells for less than it cost, say so with a line that
        names the reason
        or leave it

error: m
`, rendered(t, "", d, Errorf(Pos{}, "c", "m")))

	word := strings.Repeat("x", 150)
	assert.Equal(t, "f: error: a\n    "+word[:76]+"\n    "+word[76:]+" b\n",
		rendered(t, "", Errorf(Pos{File: "f"}, "c", "a %s b", word)))

	// what is to be typed as it is stays on one line
	assert.Equal(t, "f: error: m\n  hint: ask the lender, and add   interest on: balance   or\n        interest on: commitment\n",
		rendered(t, "", Errorf(Pos{File: "f"}, "c", "m").WithHint("ask the lender, and add   interest on: balance   or   interest on: commitment")))

	name := strings.Repeat("d/", 50) + "f" // a file name stays whole
	assert.Equal(t, name+": error:\n    a b\n", rendered(t, "", Errorf(Pos{File: name}, "c", "a b")))
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestRenderWriterFails(t *testing.T) {
	assert.EqualError(t, Render(full{}, List{Errorf(Pos{}, "c", "m")}, nil), "disk full")
}

// Whatever the file holds, nothing is wider than 80 columns, no control character
// gets out, and the carets stand under the screen columns of the word.
func checkRender(t require.TestingT, src, message string, line, col, n int) {
	out := rendered(t, src, Errorf(Pos{File: "f", Line: line, Col: col, Len: n}, "c", "%s", message).WithHint("%s", message))
	assert.True(t, utf8.ValidString(out))
	for _, l := range strings.Split(out, "\n") {
		assert.LessOrEqual(t, uniseg.StringWidth(l), 80, "%q", l)
		assert.Equal(t, printable(l), l)
	}
}

func TestRenderFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		checkRender(t, rapid.StringN(-1, 300, -1).Draw(t, "src"), rapid.String().Draw(t, "message"),
			rapid.IntRange(-1, 4).Draw(t, "line"), rapid.IntRange(-1, 300).Draw(t, "col"), rapid.IntRange(-1, 300).Draw(t, "len"))
	})
}

// For plain text the word is cut out again by its carets, however the line is trimmed.
func TestCaretsFindTheWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := rapid.StringMatching(`[a-z: é家]{0,120}`).Draw(t, "before")
		word := rapid.StringMatching(`[A-Z]{1,20}`).Draw(t, "word")
		after := rapid.StringMatching(`[a-z: é家]{0,120}`).Draw(t, "after")
		out := rendered(t, before+word+after, Errorf(Pos{File: "f", Line: 1,
			Col: utf8.RuneCountInString(before) + 1, Len: len(word)}, "c", "m"))
		lines := strings.Split(out, "\n")
		start := strings.Index(lines[2], "^")
		at := uniseg.StringWidth(lines[1][:strings.Index(lines[1], word)])
		assert.Equal(t, at, start)
		assert.Equal(t, len(word), strings.Count(lines[2], "^"))
	})
}

func FuzzRender(f *testing.F) {
	f.Add("a: b\n\tc: d", "unknown key", 2, 2, 1)
	f.Add("家\x1b[0m\xff👩‍👩‍👧", "🇩🇪 \u0301", 1, 3, 2)
	f.Fuzz(func(t *testing.T, src, message string, line, col, n int) {
		checkRender(t, src, message, line, col, n)
	})
}
