package deal

import "ledgerboard/pkg/diag"

// roomCodes are what can be wrong with rooms, their work and the outside.
func roomCodes() []Code {
	return mistakes([][2]string{
		{"bad-length", "not a length"},
		{"bad-size", "not a length and a width"},
		{"bad-area", "not an area"},
		{"bad-volume", "not a volume"},
		{"bad-weight", "not a weight"},
		{"bad-pitch", "not a pitch of a roof"},
		{"bad-days", "not a number of days"},
		{"bad-openings", "neither a count nor sizes of openings"},
		{"bad-walk", "a wall of a walk that says no direction"},
		{"bad-count", "not so much work as the item is measured by"},
		{"bad-rate", "not so much for each unit of work"},
		{"size-zero", "a length of nothing"},
		{"count-zero", "a count of no work"},
		{"rate-unit", "a rate for another unit than the work is measured by"},
		{"room-without-size", "a room without a size"},
		{"shape-two-ways", "a room with a size and a walk around its walls"},
		{"shared-too-long", "rectangles that share more than can touch"},
		{"slope-of-walk", "a sloped ceiling over a room of which only the walls are known"},
		{"walk-open", "a walk that does not lead back to where it began"},
		{"ceiling-order", "a sloped ceiling that does not rise"},
		{"fixed-without-size", "a fixed part without a size"},
		{"fixed-over-floor", "fixed parts that take more than the floor"},
		{"fixed-over-wall", "a fixed part longer than any wall of its room"},
		{"door-wide", "a door wider than it is high"},
		{"opening-over-ceiling", "an opening higher than the room"},
		{"opening-over-wall", "openings that take more than the walls"},
		{"opening-over-run", "openings and fixed parts that take more than the walls run"},
		{"plane-without-size", "a part of the roof without a size"},
		{"unknown-item", "work that the price book does not know"},
		{"unknown-product", "a product that the price book does not know"},
		{"unknown-option", "an option that there is not"},
		{"unknown-room", "a scope for a room without options"},
		{"unknown-layer", "a layer of a floor that is not known"},
		{"price-of-sticks", "one price for what is sold in sticks of several lengths"},
		{"rolls-of-walk", "roll goods in a room of which only the walls are known"},
		{"roll-too-short", "wallpaper of whose roll not one drop can be cut"},
		{"unknown-trade", "a trade that the price book does not have"},
		{"unknown-check", "a part of the house that is not looked at"},
		{"work-of-nothing", "work of which the room has nothing"},
		{"quote-or-count", "a bare number that could be a quote or a count"},
		{"quote-and-own", "work with a quote and by own hands"},
		{"measure-not-here", "work measured by what the place does not have"},
		{"book-unreadable", "a price book that cannot be read"},
		{"no-cut-list", "trim that no sticks can be cut for"},
	})
}

// roomDoubts are what is possible but probably not meant.
func roomDoubts() []Code {
	return codes(diag.Warning, [][2]string{
		{"size-mixed", "feet or inches and metres in one size"},
		{"size-in-inches", "a small room whose size is all inches"},
		{"room-large", "a room larger than rooms are"},
		{"room-narrow", "a room narrower than a hall"},
		{"nothing-shared", "rectangles of one room that share nothing"},
		{"count-large", "a count of several times what the room has"},
		{"adds-high", "options that add most of the after-repair value"},
		{"option-missing", "a room without the option that is taken for all"},
		{"without-unneeded", "something left out that would not have come"},
		{"containers-twice", "a container for debris beside those that rooms count"},
		{"permits-twice", "a line for permits beside those that work brings along"},
		{"trade-twice", "a line of a trade that rooms price too"},
		{"edges-missing", "work along the edges of the roof or of the house, without their lengths"},
		{"own-without-hours", "own work of which nobody knows the hours"},
		{"not-seen-replaced", "money for parts not seen that the work replaces"},
		{"rate-unused", "an hourly rate that no work is paid by"},
		{"no-rate", "work charged by the hour without what an hour costs"},
		{"bad-not-planned", "a part of the house seen bad, and no work that mends it"},
		{"contingency-for-age", "rooms with less contingency than the age of the house suggests"},
	})
}
