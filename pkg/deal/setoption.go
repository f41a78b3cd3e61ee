package deal

import (
	"strings"

	"ledgerboard/pkg/diag"
)

// optionForSize tells of a set that gives a room the name of one of its options, where
// its size would stand: which option is taken is the scope's to say.
func (r *reader) optionForSize(root *node, t target, v *node, s Set) bool {
	if len(t.path) != 2 || t.path[0] != "rooms" || v.shape != scalar {
		return false
	}
	room := root.entryOf("rooms").value.entryOf(t.path[1])
	if room == nil {
		return false
	}
	options := room.value.entryOf("options")
	if name := plainKey(v.text); options == nil || name != AsItIs && options.value.entryOf(name) == nil {
		return false
	}
	path := "scope." + strings.TrimPrefix(t.name(), "rooms.")
	r.say("bad-size", v.at, "--set %s: %s is an option of the room, and no size", s.Path, diag.Quote(v.text))("write   --set '%s=%s'", path, v.text)
	return true
}
