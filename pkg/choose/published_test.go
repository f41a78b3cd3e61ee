package choose

import (
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

// origin is where a case was published, and how it was come by.
type origin struct {
	ID, Source, Section string
	HowObtained         string `json:"how_obtained"`
}

func (o origin) name() string {
	return fmt.Sprintf("%s %s %s (%s)", o.ID, o.Source, o.Section, o.HowObtained)
}

// knapsacks is testdata/published/knapsack.json; each of its cases names its source.
type knapsacks struct {
	one struct { // KNAP-01
		origin
		Classes [][][]int64
		Limits  []int64
		Optimal int64
		Choice  []int
	}
	each struct { // KNAP-02: resource from 1, limit, value, use, choice
		origin
		Rows [][5]json.RawMessage
	}
	rooms struct { // KNAP-05: limit, value, cost, choice, number of optima
		origin
		Rooms  []struct{ Options [][2]int64 }
		Greedy map[int64]int64 `json:"greedy_by_ratio"`
		Rows   [][5]json.RawMessage
	}
}

func published(t *testing.T) (k knapsacks) {
	text, err := os.ReadFile("../../testdata/published/knapsack.json")
	require.NoError(t, err)
	var list []json.RawMessage
	require.NoError(t, json.Unmarshal(text, &list))
	require.Len(t, list, 3)
	require.NoError(t, json.Unmarshal(list[0], &k.one))
	require.NoError(t, json.Unmarshal(list[1], &k.each))
	require.NoError(t, json.Unmarshal(list[2], &k.rooms))
	return k
}

func (k knapsacks) rooms01() [][]Option {
	var out [][]Option
	for _, class := range k.one.Classes {
		var room []Option
		for _, item := range class {
			room = append(room, Option{item[0], item[1:]})
		}
		out = append(out, room)
	}
	return out
}

// only keeps one resource, counted from 1.
func only(rooms [][]Option, resource int64) [][]Option {
	var out [][]Option
	for _, room := range rooms {
		var list []Option
		for _, o := range room {
			list = append(list, Option{o.Value, o.Uses[resource-1 : resource]})
		}
		out = append(out, list)
	}
	return out
}

func (k knapsacks) rooms05() [][]Option {
	var out [][]Option
	for _, r := range k.rooms.Rooms {
		var room []Option
		for _, o := range r.Options {
			room = append(room, Option{o[1], []int64{o[0]}})
		}
		out = append(out, room)
	}
	return out
}

func integer(t *testing.T, text json.RawMessage) (n int64) {
	require.NoError(t, json.Unmarshal(text, &n))
	return n
}

func choiceOf(t *testing.T, text json.RawMessage) (c []int) {
	require.NoError(t, json.Unmarshal(text, &c))
	return c
}

// agree asserts that both ways find what an independent count found.
func agree(t *testing.T, rooms [][]Option, limits []int64, value int64) []int {
	choice, got, ok := Best(rooms, limits)
	require.True(t, ok)
	require.Equal(t, value, got)
	a, err := NewAdditive(rooms, limits)
	require.NoError(t, err)
	r, err := Search(a)
	require.NoError(t, err)
	require.True(t, r.Proved)
	require.True(t, r.RunnerUpProved)
	require.Equal(t, value, r.Best.Value)
	return choice
}

func TestPublishedAllResources(t *testing.T) {
	k := published(t)
	t.Run(k.one.name(), func(t *testing.T) {
		require.Equal(t, k.one.Choice, agree(t, k.rooms01(), k.one.Limits, k.one.Optimal))
	})
}

// The choice shown is one optimum of several, so what counts is that it is worth as
// much as ours and that ours uses no more.
func TestPublishedOneResource(t *testing.T) {
	k := published(t)
	require.Len(t, k.each.Rows, 8)
	for _, row := range k.each.Rows {
		resource, limit := integer(t, row[0]), integer(t, row[1])
		t.Run(fmt.Sprintf("%s resource %d limit %d", k.each.name(), resource, limit), func(t *testing.T) {
			rooms, limits := only(k.rooms01(), resource), []int64{limit}
			choice := agree(t, rooms, limits, integer(t, row[2]))
			a, err := NewAdditive(rooms, limits)
			require.NoError(t, err)
			_, ok, tie := a.Worth(choice)
			require.True(t, ok)
			require.LessOrEqual(t, tie[0], integer(t, row[3]))
			value, ok, tie := a.Worth(choiceOf(t, row[4]))
			require.True(t, ok)
			require.Equal(t, integer(t, row[2]), value)
			require.Equal(t, integer(t, row[3]), tie[0])
		})
	}
}

func TestPublishedRooms(t *testing.T) {
	k := published(t)
	rooms := k.rooms05()
	require.Len(t, k.rooms.Rows, 12)
	for _, row := range k.rooms.Rows {
		limit := integer(t, row[0])
		t.Run(fmt.Sprintf("%s budget %d", k.rooms.name(), limit), func(t *testing.T) {
			choice := agree(t, rooms, []int64{limit}, integer(t, row[1]))
			require.Equal(t, choiceOf(t, row[3]), choice)
			a, err := NewAdditive(rooms, []int64{limit})
			require.NoError(t, err)
			_, _, tie := a.Worth(choice)
			require.Equal(t, integer(t, row[2]), tie[0])
			require.EqualValues(t, 1, integer(t, row[4]), "else the choice is not the only one")
		})
	}
}

// Raising the room with the best ratio falls short at some budgets: the published
// list, which Best must never be under.
func TestPublishedGreedyFallsShort(t *testing.T) {
	k := published(t)
	require.Len(t, k.rooms.Greedy, len(k.rooms.Rows))
	short := 0
	for budget, greedy := range k.rooms.Greedy {
		_, value, ok := Best(k.rooms05(), []int64{budget})
		require.True(t, ok)
		require.GreaterOrEqual(t, value, greedy)
		if value > greedy {
			short++
		}
	}
	require.Equal(t, 5, short, "5,000, 20,000, 30,000, 50,000 and 60,000 by the two lists")
}
