package diag

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDiagForms(t *testing.T) {
	d := Errorf(Pos{File: "house.yaml", Line: 12, Col: 8}, "unknown-key", "unknown key %q", "prise")
	tests := []struct {
		name string
		d    Diag
		err  string
		str  string
	}{
		{"no hint", d, `house.yaml:12:8: error: unknown key "prise"`, `house.yaml:12:8: error: unknown key "prise"`},
		{"hint", d.WithHint("did you mean %q?", "price"),
			`house.yaml:12:8: error: unknown key "prise"`,
			"house.yaml:12:8: error: unknown key \"prise\"\n  hint: did you mean \"price\"?"},
		{"no place", Warnf(Pos{}, "c", "m"), "warning: m", "warning: m"},
		{"file only", Errorf(Pos{File: "a"}, "c", "m"), "a: error: m", "a: error: m"},
		{"no column", Errorf(Pos{File: "a", Line: 3}, "c", "m"), "a:3: error: m", "a:3: error: m"},
		{"no file", Errorf(Pos{Line: 3, Col: 1}, "c", "m"), "line 3:1: error: m", "line 3:1: error: m"},
		{"cursor moves", Errorf(Pos{File: "a\x1b[2J"}, "c", "m\r\nn"), "a�[2J: error: m  n", "a�[2J: error: m  n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			assert.Equal(t, tt.err, tt.d.Error())
			assert.Equal(t, tt.str, tt.d.String())
		})
	}
}

func TestDiagJSON(t *testing.T) {
	got, err := json.Marshal([]Diag{
		Warnf(Pos{File: "a", Line: 2, Col: 3, Len: 4}, "doubt", "m").WithHint("h"),
		Errorf(Pos{}, "bad", "m"),
	})
	require.NoError(t, err)
	assert.JSONEq(t, `[
		{"code":"doubt","severity":"warning","pos":{"file":"a","line":2,"col":3,"len":4},"message":"m","hint":"h"},
		{"code":"bad","severity":"error","message":"m"}]`, string(got))
}

func TestListSort(t *testing.T) {
	var l List
	l.Errorf(Pos{File: "b", Line: 1, Col: 1}, "x", "6")
	l.Errorf(Pos{File: "a", Line: 10, Col: 1}, "x", "5")
	l.Warnf(Pos{File: "a", Line: 2, Col: 9}, "x", "4")
	l.Errorf(Pos{File: "a", Line: 2, Col: 8}, "y", "2")
	l.Errorf(Pos{File: "a", Line: 2, Col: 8}, "y", "3") // same place and code: order kept
	l.Errorf(Pos{File: "a", Line: 2, Col: 8}, "x", "1")
	l.Errorf(Pos{File: "a"}, "z", "0")
	l.Sort()
	for i, d := range l {
		assert.Equal(t, fmt.Sprint(i), d.Message)
	}
}

func TestListSplit(t *testing.T) {
	var l List
	require.NoError(t, l.Err())
	assert.False(t, l.HasErrors())
	l.Warnf(Pos{}, "doubt", "odd")
	require.NoError(t, l.Err(), "a doubt does not stop the work")
	l.Add(Errorf(Pos{File: "a", Line: 1}, "bad", "wrong").WithHint("right"))
	assert.True(t, l.HasErrors())
	assert.Equal(t, l[1:], l.Errors())
	assert.Equal(t, l[:1], l.Warnings())

	err := fmt.Errorf("reading: %w", l.Err())
	assert.EqualError(t, err, "reading: warning: odd\na:1: error: wrong")
	var d Diag
	require.True(t, errors.As(err, &d))
	assert.Equal(t, "doubt", d.Code)
}

func TestQuote(t *testing.T) {
	ten := "1234567890"
	sixty := ten + ten + ten + ten + ten + ten
	assert.Equal(t, `"285k"`, Quote("285k"))
	assert.Equal(t, `"a\x1b\"b"`, Quote("a\x1b\"b"))
	assert.Equal(t, `"`+sixty+`"`, Quote(sixty))
	assert.Equal(t, `"`+sixty+`…"`, Quote(sixty+"x"))
}
