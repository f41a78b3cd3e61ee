package pricebook

import (
	"slices"

	"go.yaml.in/yaml/v4"
)

// A Key is a key of the price book, as the docs list it.
type Key struct {
	Name    string
	Example string
	Without string // what holds where it is left out; "" is nothing
	Meaning string
}

// A keyOf is a key with the way to read it into a draft.
type keyOf[D any] struct {
	Key
	read func(*reader, D) func(*yaml.Node)
}

// ProductKeys, ItemKeys and MaterialKeys are all keys there are, in the order of the
// docs.
func ProductKeys() []Key  { return listed(productKeys) }
func ItemKeys() []Key     { return listed(itemKeys()) }
func MaterialKeys() []Key { return listed(materialKeys()) }

func listed[D any](rows []keyOf[D]) []Key {
	out := make([]Key, len(rows))
	for i, row := range rows {
		out[i] = row.Key
	}
	return out
}

// entryKeys reads the keys of a table and returns those that were given.
func entryKeys[D any](r *reader, n *yaml.Node, what string, rows []keyOf[D], draft D) map[string]bool {
	given := map[string]bool{}
	names := make([]string, len(rows))
	for i, row := range rows {
		names[i] = row.Name
	}
	r.mapping(n, what, func(key, value *yaml.Node) bool {
		i := slices.Index(names, key.Value)
		if i < 0 {
			return false
		}
		given[key.Value] = true
		rows[i].read(r, draft)(value)
		return true
	}, names...)
	return given
}
