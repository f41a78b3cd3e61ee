package model

import "slices"

// A shape is what members have in common that are of one kind and stand below and
// point to members of the same kinds: their lines, and what a name means in them.
type shape struct {
	shapeKey
	members []*Member
	lines   []*Line
	place   []int16        // by line position in the document: the place among the lines + 1
	names   map[string]ref // what was looked up while the deal was bound
	rules   []*rule        // by line, where any member has use for it
	among   *shapes
}

// isUnder reports whether members stand below members of another shape, or point to
// them, and are of a set or kind.
func (s *shape) isUnder(other *shape, set string) bool {
	return (s.set == set || s.kind == set) && (s.parent == other || slices.Contains(s.links[:], linkKey{other.set, other.kind}))
}

// isBeside reports whether members can stand in front of members of another shape,
// among those that point to the same member of a set where one is named.
func (s *shape) isBeside(other *shape, set string) bool {
	if set == "" {
		return s.set == other.set && s.parent == other.parent
	}
	points := func(l linkKey) bool { return l.set == set }
	return s.set == other.set && slices.ContainsFunc(s.links[:], points) && slices.ContainsFunc(other.links[:], points)
}

// A ref is the way from a member to the cell that a name means.
type ref struct {
	up    int16 // how many parents up; below 0 the place is the cell's among all
	link  int16 // and from there the link that is followed, or -1
	place int32 // among the lines of the member there, or -1 if the name means nothing
}

var nowhere = ref{place: -1}

func toCell(i int) ref { return ref{up: -1, place: int32(i)} }

// from is the index of the cell that the way from a member leads to, or -1.
func (r ref) from(x *Member) int {
	if r.up < 0 || r.place < 0 {
		return int(r.place)
	}
	for range r.up {
		x = x.Parent
	}
	if r.link >= 0 {
		x = x.Links[r.link]
	}
	return x.first + int(r.place)
}

// shapes finds the shape of each member, making those that are new.
type shapes struct {
	doc   *Document
	all   []*shape // in the order in which they were met
	known map[shapeKey]*shape
	bySet map[string][]*Line
	done  bool // the deal is bound: several may ask now, and nothing more is kept
}

type shapeKey struct {
	set, kind string
	parent    *shape
	links     [2]linkKey // a set points to two others at most
}

type linkKey struct{ set, kind string }

func newShapes(d *Document) *shapes {
	s := &shapes{doc: d, known: map[shapeKey]*shape{}, bySet: map[string][]*Line{}}
	for _, l := range d.Lines {
		s.bySet[l.Set] = append(s.bySet[l.Set], l)
	}
	return s
}

func (s *shapes) of(x *Member) *shape {
	key := shapeKey{set: x.Set, kind: x.Kind}
	if x.Parent != nil {
		key.parent = x.Parent.shape
	}
	for i, l := range x.Links {
		key.links[i] = linkKey{l.Set, l.Kind}
	}
	if found := s.known[key]; found != nil {
		return found
	}
	out := &shape{shapeKey: key, place: make([]int16, len(s.doc.Lines)), names: map[string]ref{}, among: s}
	for _, set := range []string{x.Set, x.Kind} {
		for _, l := range s.bySet[set] {
			out.lines = append(out.lines, l)
			out.place[l.position] = int16(len(out.lines))
		}
	}
	out.rules = make([]*rule, len(out.lines))
	s.known[key] = out
	s.all = append(s.all, out)
	return out
}

// own is the place of a member's own line, or -1.
func (s *shape) own(d *Document, x *Member, name string) int32 {
	for _, set := range []string{x.Kind, x.Set} {
		if l := d.Line(set, name); l != nil && s.place[l.position] > 0 {
			return int32(s.place[l.position]) - 1
		}
	}
	return -1
}

// find is the way to what a name means in a member: itself, what it points to, then
// its parents and what they point to, nearest first.
func (s *shape) find(d *Document, x *Member, name string) ref {
	if found, known := s.names[name]; known {
		return found
	}
	out := nowhere
	for y, up := x, int16(0); y != nil && out.place < 0; y, up = y.Parent, up+1 {
		if out = (ref{up, -1, y.shape.own(d, y, name)}); out.place >= 0 {
			break
		}
		for i, l := range y.Links {
			if out = (ref{up, int16(i), l.shape.own(d, l, name)}); out.place >= 0 {
				break
			}
		}
	}
	if !s.among.done {
		s.names[name] = out
	}
	return out
}

// at is the index of the cell that a name means in a member, or -1.
func (m *Model) at(x *Member, name string) int { return x.shape.find(m.Doc, x, name).from(x) }
