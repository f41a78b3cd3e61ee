package deal

import "ledgerboard/pkg/model"

// A RoomChoice is a room with what may be done to it.
type RoomChoice struct {
	Room    *model.Member
	Options []*model.Member // the first is nil: the room stays as it is
	Own     int             // which of them the scope takes
}

// Choices are the rooms that leave a choice: those with options that have names. A
// room with one list of work, and what rooms call for, leave none. The deal must be
// read with all options.
func (d *Deal) Choices() []RoomChoice {
	var out []RoomChoice
	for _, room := range d.Root.In("room") {
		c := RoomChoice{Room: room, Options: []*model.Member{nil}}
		for _, o := range room.In("option") {
			v, said := o.Given.Look("chosen")
			if !said || o.Label == onlyOption {
				continue
			}
			if !v.Number.IsZero() {
				c.Own = len(c.Options)
			}
			c.Options = append(c.Options, o)
		}
		if len(c.Options) > 1 {
			out = append(out, c)
		}
	}
	return out
}

// A Settled is a room whose work leaves no choice, and whether the scope has it done.
type Settled struct {
	Room *model.Member
	Done bool
}

// Settled are the rooms with one list of work, which stay as the scope has them whatever is
// chosen of the others. The deal must be read with all options.
func (d *Deal) Settled() []Settled {
	var out []Settled
	for _, room := range d.Root.In("room") {
		for _, o := range room.In("option") {
			if v, said := o.Given.Look("chosen"); said && o.Label == onlyOption {
				out = append(out, Settled{room, !v.Number.IsZero()})
			}
		}
	}
	return out
}

// LeftOut reports whether the scope takes another option of its room than this one.
func LeftOut(option *model.Member) bool {
	v, marked := option.Given.Look("chosen")
	return marked && v.Number.IsZero()
}
