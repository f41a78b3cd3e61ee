package deal

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// What a room of a house rarely is; common practice, no source.
var (
	largeRoom     = decimal.NewFromInt(800)  // sq ft
	largeBasement = decimal.NewFromInt(2500) // sq ft, and for what takes a whole level
	longRoom      = decimal.NewFromInt(40)   // ft of a side
	longBath      = decimal.NewFromInt(20)   // ft of a side of a bath
	longLevel     = decimal.NewFromInt(80)   // ft of a side of what may take a whole level
	narrowRoom    = decimal.New(25, -1)      // ft, where it is widest; halls of old houses and of mobile homes are little wider
	narrowBath    = decimal.NewFromInt(3)    // ft, likewise
	lowCeiling    = decimal.New(65, -1)      // ft, at its highest
	lowCellar     = decimal.New(55, -1)      // ft, of a basement, in which many stoop
	steepRoof     = decimal.NewFromInt(2)    // of rise for a foot across
	smallInInches = decimal.NewFromInt(35)   // sq ft of a room whose size is all inches
	highCeiling   = decimal.NewFromInt(20)   // ft, at its highest
	highUsual     = decimal.NewFromInt(12)   // ft, of all rooms
	deepCabinet   = decimal.New(25, -1)      // ft from the wall, of cabinets and a vanity
	narrowDoor    = decimal.New(15, -1)      // ft, of a door
	wideOpening   = decimal.NewFromInt(20)   // ft; a garage's door is up to 18 ft wide
	highOpening   = decimal.NewFromInt(12)   // ft
	manyInRoom    = decimal.NewFromInt(60)   // of what is counted in one room
	manyTreads    = decimal.NewFromInt(40)   // of its stairs
	manyFixed     = four                     // of a fixed part that water runs to
)

// counted are what a room has a number of, by line.
var counted = []struct {
	line, what string
	most       decimal.Decimal
}{
	{"outlets", "outlets", manyInRoom}, {"lights", "lights", manyInRoom}, {"registers", "registers", manyInRoom},
	{"stair_treads", "treads of stairs", manyTreads},
}

// levelWords are in the names of rooms that may take a whole level or more.
var levelWords = []string{"basement", "cellar", "attic", "loft", "garage", "crawl", "level", "floor", "house"}

// doubtSizes looks for rooms of which a mark of the size has slipped.
func (r *reader) doubtSizes() {
	for _, room := range r.deal.Root.In("inside") {
		if !r.doubtLength(room) && !r.doubtWideHall(room) && !r.doubtLongBedroom(room) {
			r.doubtFloor(room)
		}
		if r.roomKinds[room] != "closet" && !r.doubtInches(room) && !r.doubtNarrow(room) && !r.doubtSliver(room) {
			r.doubtSmall(room)
		}
		r.doubtCeiling(room)
		r.doubtAttic(room)
		r.doubtSteepCeiling(room)
		r.doubtClosets(room)
		r.doubtOpenings(room)
		r.doubtDoors(room)
		r.doubtMany(room)
		r.doubtManyDoors(room)
		r.doubtManyWindows(room)
		r.doubtFixed(room)
		r.doubtCabinets(room)
		r.doubtRoomForCabinets(room)
		r.doubtSlight(room)
	}
	r.doubtUsualHeight()
	r.doubtPitches()
	r.doubtOutside()
}

// doubtPitches doubts a roof steeper than a spire: 70/12 for 7/12.
func (r *reader) doubtPitches() {
	for _, out := range r.deal.Root.In("outside") {
		for _, p := range out.In("plane") {
			if v := p.Given.Of("pitch"); v.Number.GreaterThan(steepRoof) {
				r.say("pitch-steep", v.Pos, "the pitch of roof, %s, is %s, which rises more than 2 ft for each foot across", p.Label, diag.Quote(v.Text))("write the rise for each 12 inches across, e.g. 7/12; it is used as it stands")
			}
		}
	}
}

// doubtClosets doubts a closet that is larger than the room it is of, or longer.
func (r *reader) doubtClosets(room *model.Member) {
	floor, ok := r.worked(room, "floor_area")
	if !ok {
		return
	}
	area := func(m *model.Member) decimal.Decimal {
		return m.Given.Of("length").Number.Mul(m.Given.Of("width").Number)
	}
	var closets []*model.Member
	for _, m := range room.In("section") {
		if isCloset(m) {
			closets, floor = append(closets, m), floor.Sub(area(m))
		}
	}
	across := r.come(r.deal.acrossOf(room))
	for _, m := range closets {
		if long := longerSide(m); slices.ContainsFunc(r.deal.sidesOfFloor(m), func(c *model.Cell) bool { return slices.ContainsFunc(r.deal.longCloset(c), r.breaks) }) {
			r.say("closet-large", long.Pos, "a closet of %s is %s long, and the room %s ft across at most", room.Label, feetOf(long), short(across))("check its size, for feet and inches that have slipped, or make it a room of its own; it is used as it stands")
			continue
		}
		if slices.ContainsFunc(r.deal.largeCloset(m), r.breaks) {
			long := m.Given.Of("length")
			r.say("closet-large", long.Pos, "a closet of %s is %s x %s, %s sq ft, and the room itself %s sq ft", room.Label, long.Text, m.Given.Of("width").Text, short(area(m)), short(floor))("check its size, for feet and inches that have slipped, or make it a room of its own; it is used as it stands")
		}
	}
}

func longerSide(m *model.Member) model.Value {
	return longerOf(m.Given.Of("length"), m.Given.Of("width"))
}

func longerOf(long, wide model.Value) model.Value {
	if wide.Number.GreaterThan(long.Number) {
		return wide
	}
	return long
}

// doubtFixed doubts a tub that is deeper than long, for which walls its surround takes follows
// from which of its sides stands along the wall, cabinets that are as deep as no cabinet, and
// what stands fixed under a name that is nearly one known.
func (r *reader) doubtFixed(room *model.Member) {
	for _, f := range room.In("fitting") {
		long, deep := f.Given.Of("fitting_length"), f.Given.Of("fitting_depth")
		switch sort := f.Given.Of("sort").Choice; {
		case sort == "tub" && deep.Number.GreaterThan(long.Number):
			r.say("tub-deep", long.Pos, "%s is %s along the wall and %s deep", f.Label, diag.Quote(long.Text), diag.Quote(deep.Text))("write its length along the wall first, e.g. 5' x 2'6\"; it is used as it stands")
		case slices.Contains([]string{"base cabinet", "wall cabinet", "vanity"}, sort) && deep.Number.GreaterThanOrEqual(deepCabinet):
			r.say("cabinet-deep", deep.Pos, "%s is %s along the wall and %s deep", f.Label, diag.Quote(long.Text), diag.Quote(deep.Text))("write the length along the wall first, e.g. 12' x 2'; an island has   kind: island   ; it is used as it stands")
		case r.farBeside(f, "fitting_length", 0):
			walls, _ := r.worked(room, "perimeter")
			r.say("fixed-long", long.Pos, "%s: %s is longer than all walls of %s together, %s ft", f.Label, diag.Quote(long.Text), room.Label, short(walls))("check it, for inches taken for feet; it is used as it stands")
		case unknownSort(f) && r.doubtLikeCabinets(room, f): // told
		case unknownSort(f):
			if near, is := diag.Nearest(strings.ToLower(f.Label), fittingSorts); is {
				r.say("fixed-near", f.Pos, "%s is none of the fixed parts that are known, so it has no surround and stands for no work", diag.Quote(f.Label))("did you mean %s? else leave it: its floor is left out", near)
			}
		}
	}
}

// doubtSlight doubts lengths inside that are under a foot: a closet's, a surround's, what
// rectangles share.
func (r *reader) doubtSlight(room *model.Member) {
	tell := func(v model.Value, what string) {
		if v.Number.IsPositive() && v.Number.LessThan(one) {
			r.say("size-slight", v.Pos, "%s of %s is %s, under a foot", what, room.Label, diag.Quote(v.Text))("check it, for an inch mark in place of a foot mark ('); it is used as it stands")
		}
	}
	for _, m := range room.In("section") {
		tell(m.Given.Of("shared"), "what rectangles share")
		if !m.Given.Of("closet").Number.IsZero() {
			tell(m.Given.Of("length"), "a side of a closet")
			tell(m.Given.Of("width"), "a side of a closet")
		}
	}
	for _, f := range room.In("fitting") {
		tell(f.Given.Of("surround"), "the surround")
	}
}

// doubtOpenings doubts doors and windows that are wider together than the walls are long.
func (r *reader) doubtOpenings(room *model.Member) {
	long, ok := r.worked(room, "perimeter")
	if !ok {
		return
	}
	wide := decimal.Zero
	for _, o := range room.In("opening") {
		n, known := r.worked(o, "number")
		ok = ok && known
		wide = wide.Add(n.Mul(o.Given.Of("opening_width").Number))
	}
	if ok && wide.Round(9).GreaterThan(long.Round(9)) {
		r.say("openings-wide", room.Pos, "%s: the doors and windows are %s ft wide together, and the walls %s ft long", room.Label, short(wide), short(long))("check how many there are, and how wide; they are used as they stand")
	}
}

// doubtDoors doubts doors, and ways through a wall, that nobody walks through upright.
func (r *reader) doubtDoors(room *model.Member) {
	for _, o := range room.In("opening") {
		if !doorInside(o) || r.deal.inLowWall(o) {
			continue
		}
		var under []string
		if o.Given.Of("opening_width").Number.LessThan(narrowDoor) {
			under = append(under, `1'6" wide`)
		}
		if least := r.deal.leastHeight(o); o.Given.Of("opening_height").Number.LessThan(least) {
			under = append(under, least.String()+" ft high")
		}
		if len(under) > 0 {
			r.say("door-small", o.Pos, "%s of %s is under %s", o.Label, room.Label, strings.Join(under, " and under "))("check it, for feet and inches that have slipped; usual is 2'8\" x 6'8\"; it is used as it stands")
		}
	}
}

// doubtMany doubts more of a thing than one room has, or than one of its floor, where work goes by that.
func (r *reader) doubtMany(room *model.Member) {
	floor, _ := r.worked(room, "floor_area")
	for _, x := range counted {
		v, many := room.Given.Of(x.line), "one room"
		switch {
		case v.Number.GreaterThan(x.most):
		case tooThick(x.line, v.Number, floor) && r.takenBy(room, x.line):
			many = "its " + sqFeet(floor) + " of floor"
		default:
			continue
		}
		r.say("many-in-room", v.Pos, "%s has %s %s, many for %s", room.Label, v.Text, x.what, many)("check it, for a digit too many; it is used as it stands")
	}
	if v := room.Given.Of("stair_rail_run"); r.longRail(room, v.Number) {
		r.say("many-in-room", v.Pos, "%s has %s of stair rail, %s", room.Label, v.Text, beyondStairs)("check it, for a digit too many; it is used as it stands")
	}
	for _, f := range room.In("fitting") {
		if v := f.Given.Of("fitted"); v.Number.GreaterThan(manyFixed) && slices.Contains(oneWall, f.Given.Of("sort").Choice) {
			r.say("many-in-room", v.Pos, "%s of %s is counted %s times, many for one room", f.Label, room.Label, v.Text)("check it, for a digit too many; it is used as it stands")
		}
	}
}

// takenBy reports whether work without a quote goes by all that a room has of a measure.
func (r *reader) takenBy(room *model.Member, line string) bool {
	return slices.ContainsFunc(r.chosenWorks(), func(w *work) bool {
		return w.member.Parent.Parent == room && w.member.Given.Of("measure").Refers == line && !w.quoted()
	})
}

// A stair has a rail of at most so much for each tread, on both sides and along the slope, and where nobody says
// how many, so many treads. The opening that it comes up through has two sides as long and two as wide as it;
// common practice, no source.
var railOfTread, usualTreads, aroundStairs = decimal.New(25, -1), sixteen, decimal.NewFromInt(12)

// galleryWords are in the names of rooms that may be open to below along all of a side. Never written to.
var galleryWords = []string{"loft", "gallery", "balcony", "mezzanine"}

const beyondStairs = "more than goes along both sides of the stairs and around their opening or a gallery"

// longRail reports whether the stairs of a room hardly have so much rail.
func (r *reader) longRail(room *model.Member, rail decimal.Decimal) bool {
	around, known := r.worked(room, "perimeter")
	treads := decimal.Max(room.Given.Of("stair_treads").Number, usualTreads)
	if !holdsAny(strings.ToLower(room.Label), galleryWords...) {
		around = decimal.Min(around, treads.Mul(two).Add(aroundStairs))
	}
	return known && rail.GreaterThan(treads.Mul(railOfTread).Add(around))
}

// takesALevel reports whether a room may be as large as the house.
func (r *reader) takesALevel(room *model.Member) bool {
	return r.roomKinds[room] == "basement" || namedALevel(room.Label)
}

func namedALevel(name string) bool {
	name = strings.ToLower(name)
	return slices.ContainsFunc(levelWords, func(w string) bool { return strings.Contains(name, w) })
}

// doubtLength doubts the longest side of a room; it reports whether it did.
func (r *reader) doubtLength(room *model.Member) bool {
	usual := longRoom
	floor, _ := r.worked(room, "floor_area")
	switch {
	case r.takesALevel(room):
		usual = longLevel
	case r.roomKinds[room] == "bath" && !holdsAny(strings.ToLower(room.Label), twoRooms...) && floor.LessThanOrEqual(r.usualFloor(room)):
		usual = longBath
	}
	var long model.Value
	for _, side := range sidesOf(room) {
		if side.Number.Abs().GreaterThan(decimal.Max(usual, long.Number.Abs())) {
			long = side
		}
	}
	if long.Number.IsZero() {
		return false
	}
	tell := r.say("room-large", long.Pos, "%s has a side of %s, which is long for a room", room.Label, feetOf(long))
	if better := feetAndInches(long.Text); usual.Equal(longBath) && !long.Number.Abs().GreaterThan(longRoom) {
		tell("check it, for a digit too many or a wrong one; it is used as it stands")
	} else if better != "" {
		tell("did you mean %s? it is used as it stands", better)
	} else {
		tell("check it, for feet and inches run together; it is used as it stands")
	}
	return true
}

// largeKinds are in sq ft what floors of rooms that are small in houses rarely are over; common
// practice, no source.
var largeKinds = map[string]int64{"bath": 200, "closet": 250, "laundry": 300, "hall": 400}

// twoRooms are in the names of rooms that are another as well.
var twoRooms = []string{" and ", " with ", "+", "&", "/"}

// usualFloor is how much floor a room usually has at most, by its kind and its name.
func (r *reader) usualFloor(room *model.Member) decimal.Decimal {
	kind := r.roomKinds[room]
	most, small := largeKinds[kind]
	switch level := kind == "basement" || namedALevel(room.Label); {
	case small && (kind == "bath" || !level) && !holdsAny(strings.ToLower(room.Label), twoRooms...):
		return decimal.NewFromInt(most)
	case level:
		return largeBasement
	}
	return largeRoom
}

func (r *reader) doubtFloor(room *model.Member) {
	most := r.usualFloor(room)
	if floor, ok := r.worked(room, "floor_area"); ok && floor.GreaterThan(most) {
		r.say("room-large", r.where(r.roomPaths[room]+"size", r.roomPaths[room]+"walls"), "%s has a floor of %s sq ft; usual is at most %s sq ft", room.Label, quantity.FormatCount(floor.Round(0), 0), quantity.FormatCount(most, 0))("check its sizes, for feet and inches run together and for metres that are feet; it is used as it stands")
	}
}

// doubtInches doubts a small room whose size is written in inches alone, as 81" x 51"
// for 8' 1" x 5' 1"; it reports whether it did. An entry or hall may be as small.
func (r *reader) doubtInches(room *model.Member) bool {
	floors := rectangles(room)
	if len(floors) != 1 {
		return false
	}
	length, width := floors[0].Given.Of("length"), floors[0].Given.Of("width")
	a, b := inchesAlone(length.Text), inchesAlone(width.Text)
	if r.isPassage(room) || a == "" || b == "" || length.Number.Mul(width.Number).GreaterThanOrEqual(smallInInches) {
		return false
	}
	r.say("size-in-inches", length.Pos, "%s is %s x %s, little for a room", room.Label, length.Text, width.Text)("did you mean %s x %s? write %s x %s if the inches are right", a, b, feetText(length.Number), feetText(width.Number))
	return true
}

// doubtNarrow doubts a room that is narrower than any hall where it is widest; it reports whether it did.
func (r *reader) doubtNarrow(room *model.Member) bool {
	var widest model.Value
	for _, floor := range rectangles(room) {
		if short := shortSide(floor); short.Number.GreaterThan(widest.Number) {
			widest = short
		}
	}
	kind := r.roomKinds[room]
	if !widest.Number.IsPositive() || !widest.Number.LessThan(narrowOf(kind)) {
		return false
	}
	if kind == "bath" {
		r.say("room-narrow", widest.Pos, "%s is %s wide, and few baths are under 3 ft", room.Label, feetOf(widest))("check the size, for a foot mark (') in place of an inch mark (\"); if it is so narrow, ask what room the local code wants beside a toilet; it is used as it stands")
		return true
	}
	r.say("room-narrow", widest.Pos, "%s is %s wide, and even halls of old houses are hardly under %s", room.Label, feetOf(widest), feetText(narrowRoom))("check the size, for a foot mark (') in place of an inch mark (\"); a closet goes under closets, or has   kind: closet")
	return true
}

// narrowOf is how wide a room of a kind is at least where it is widest.
func narrowOf(kind string) decimal.Decimal {
	if kind == "bath" {
		return narrowBath
	}
	return narrowRoom
}

// sliver is the side in feet under which no part of a room is, but a mark of inches for feet: a bay
// or an alcove is deeper (common practice, no source). A hall is some 3 to 6 ft wide, and over
// wideHall hardly one. The first part of a room, or that with its longest side, is no bay: it is over
// mainSliver wide.
var sliver, mainSliver, wideHall = decimal.RequireFromString("1.5"), two, decimal.NewFromInt(10)

// doubtSliver doubts a part of a room that is too narrow for one and written in inches alone, and
// reports whether it did.
func (r *reader) doubtSliver(room *model.Member) bool {
	floors := rectangles(room)
	if len(floors) < 2 {
		return false
	}
	for i, floor := range floors {
		least := sliver
		if i == 0 || hasLongestSide(floors, floor) {
			least = mainSliver
		}
		if short := shortSide(floor); short.Number.IsPositive() && short.Number.LessThan(least) && !strings.ContainsAny(short.Text, "'’f") {
			r.say("room-narrow", short.Pos, "%s has a part that is %s wide, too narrow for a part of a room", room.Label, feetOf(short))("check the size, for a foot mark (') in place of an inch mark (\"); write %s if the inches are right", feetText(short.Number))
			return true
		}
	}
	return false
}

// hasLongestSide reports whether one of the rectangles has a side longer than all sides of the others.
func hasLongestSide(floors []*model.Member, of *model.Member) bool {
	long := longerSide(of).Number
	return !slices.ContainsFunc(floors, func(m *model.Member) bool { return m != of && !longerSide(m).Number.LessThan(long) })
}

// doubtWideHall doubts a hall that is as wide as a room, and reports whether it did.
func (r *reader) doubtWideHall(room *model.Member) bool {
	if !r.isPassage(room) {
		return false
	}
	for _, floor := range rectangles(room) {
		if short := shortSide(floor); short.Number.GreaterThan(wideHall) {
			r.say("room-large", short.Pos, "%s is %s wide, and a hall is some 3 to 6 ft", room.Label, feetOf(short))("check it, for an inch mark (\") in place of a foot mark ('); a room that is no hall has a kind, e.g.   kind: living")
			return true
		}
	}
	return false
}

// shortSide is the shorter side of a rectangle.
func shortSide(floor *model.Member) model.Value {
	short := floor.Given.Of("length")
	if w := floor.Given.Of("width"); w.Number.LessThan(short.Number) {
		short = w
	}
	return short
}

// rectangles are the parts of a room's floor, without its closets.
func rectangles(room *model.Member) []*model.Member {
	return slices.DeleteFunc(slices.Clone(room.In("section")), isCloset)
}

// closetsOf are the closets of a room.
func closetsOf(room *model.Member) []*model.Member {
	return slices.DeleteFunc(slices.Clone(room.In("section")), func(m *model.Member) bool { return !isCloset(m) })
}

// sidesOf are the sides of a room's rectangles and the walls of a walk around it; those
// that run west or south are below 0.
func sidesOf(room *model.Member) (out []model.Value) {
	for _, floor := range room.In("section") {
		out = append(out, floor.Given.Of("length"), floor.Given.Of("width"))
	}
	for _, leg := range room.In("leg") {
		out = append(out, leg.Given.Of("walk_east"), leg.Given.Of("walk_north"))
	}
	return out
}

// feetOf is a length as the file has it; a wall of a walk has its direction there too.
func feetOf(v model.Value) string {
	if v.Key == "walls" {
		return feetText(v.Number.Abs())
	}
	return v.Text
}

func feetText(feet decimal.Decimal) string {
	x, err := quantity.ParseLength(feet.Round(4).String() + " ft")
	if err != nil {
		return feet.Round(2).String() + " ft"
	}
	return x.String()
}

var (
	runTogether = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?:^|\s)(\d{1,2})(\d)\s*(?:'|’|ft|feet)$`) })
	inchesOnly  = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(\d)(\d)\s*(?:"|”|''|in|inch|inches)?$`) })
)

// feetAndInches is what 168' was probably meant for, or "".
func feetAndInches(text string) string { return parted(runTogether(), text) }

// inchesAlone is what 81" was probably meant for, or "".
func inchesAlone(text string) string { return parted(inchesOnly(), text) }

func parted(form *regexp.Regexp, text string) string {
	if m := form.FindStringSubmatch(text); m != nil {
		return fmt.Sprintf(`%s' %s"`, m[1], m[2])
	}
	return ""
}
