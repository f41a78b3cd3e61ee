package pricebook

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
	read func(*reader, D) func(*node)
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

// entryKeys reads the keys of a table.
func entryKeys[D any](r *reader, n *node, what string, rows []keyOf[D], draft D) {
	names := func() []string {
		out := make([]string, len(rows))
		for i := range rows {
			out[i] = rows[i].Name
		}
		return out
	}
	r.mapping(n, what, names, func(key, value *node) bool {
		for i := range rows {
			if row := &rows[i]; row.Name == key.Value {
				row.read(r, draft)(value)
				return true
			}
		}
		return false
	})
}
