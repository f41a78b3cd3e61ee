package pricebook

import (
	"testing"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"
)

// The starter book is read by a reader of its own, for speed; it must see what the
// YAML library sees, place by place.
func TestPlainReadsTheStarterAsYAMLDoes(t *testing.T) {
	b := Starter()
	for _, all := range []map[string]*entry{b.products, b.items} {
		for name, e := range all {
			var doc yaml.Node
			require.NoError(t, yaml.Unmarshal([]byte(e.text()), &doc), name)
			alike(t, name, nodeOf(doc.Content[0]).Content, plain(e.text()).Content)
		}
	}
}

func alike(t *testing.T, where string, want, got []*node) {
	t.Helper()
	require.Len(t, got, len(want), where)
	for i, w := range want {
		g := got[i]
		require.Equal(t, []any{w.Kind, w.Value, w.Line, w.Column}, []any{g.Kind, g.Value, g.Line, g.Column}, where)
		alike(t, where, w.Content, g.Content)
	}
}

func TestTheIndexKnowsTheTradeOfEachItem(t *testing.T) {
	b := Starter()
	for _, name := range b.Items() {
		require.Equal(t, b.Item(name).Trade, b.items[name].trade, name)
	}
	require.Contains(t, b.Trades(), "roofing")
}
