package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// Windows of which a room hardly has more, and those that are held against the windows outside: the
// rooms may well have some more together, as those of a basement that are not listed. Common practice,
// no source.
var (
	roomWindows = crowd{few: decimal.NewFromInt(19), floor: decimal.NewFromInt(20)}
	heldWindows = crowd{few: decimal.NewFromInt(9), floor: decimal.NewFromInt(30)}
	moreInside  = decimal.New(125, -2)
)

// glassWords are in the names of rooms that are all windows.
var glassWords = []string{"sun", "solar", "porch", "glass", "conservatory", "season"}

// doubtManyWindows doubts more windows than one room has, or than are listed outside for all of the
// house, by it alone or with those of the other rooms.
func (r *reader) doubtManyWindows(room *model.Member) {
	n, at := r.openingsOf(room, "window")
	tell := func(than, check string) {
		r.say("many-in-room", at.Pos, "%s has %s windows%s", room.Label, n, than)("%s, for a digit too many; they are used as they stand", check)
	}
	outside, all := r.windowsListed()
	glass := holdsAny(strings.ToLower(room.Label), glassWords...)
	switch {
	case !outside.IsPositive():
		if !glass && r.isCrowd(room, n, roomWindows) {
			tell(", many for one room", "check it")
		}
	case !r.isCrowd(room, n, heldWindows):
	case n.GreaterThan(outside):
		tell(fmt.Sprintf(", and outside there are %s in all", outside), "check both")
	case !glass && all.GreaterThan(outside.Mul(moreInside)):
		tell(fmt.Sprintf(" and the rooms together %s, and outside there are %s in all", all, outside), "check both")
	}
}

// windowsListed are how many windows the file lists outside, and those of the rooms that are no guess.
func (r *reader) windowsListed() (outside, inside decimal.Decimal) {
	for _, out := range r.deal.Root.In("outside") {
		outside, _ = r.openingsOf(out, "window")
	}
	for _, room := range r.deal.Root.In("inside") {
		if !slices.Contains(r.deal.Sized["guessed"], room.Label) {
			n, _ := r.openingsOf(room, "window")
			inside = inside.Add(n)
		}
	}
	return outside, inside
}
