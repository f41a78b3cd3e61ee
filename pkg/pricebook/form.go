package pricebook

// FormSheet is the name of the sheet of a form for bids. FormFrom and FormDay are what
// stands before the bidder's name and the day above its table; the licence and how long
// the bid holds stand there for who reads it, and no price is read from them.
const (
	FormSheet   = "Bid form"
	FormFrom    = "from"
	FormDay     = "day"
	FormLicence = "licence no."
	FormUntil   = "valid until"
)

// What stands behind the work of a row that is not meant to be bid on as it is planned.
const (
	FormByOwner   = " [planned by own hands]"
	FormPartOwner = " [in part planned by own hands]"
)

// A FormColumn is a column of a form for bids.
type FormColumn struct {
	Name   string
	Width  float64
	Number bool
}

// FormColumns are those of a form for bids in their order: up to the room's size they are
// filled in, and the bidder fills in the others. ReadWorkbook reads them by name.
var FormColumns = []FormColumn{
	{"item", 19, false}, {"trade", 11, false}, {"room", 12, false}, {"what is done", 28, false}, {"quantity", 8.5, true}, {"unit", 6, false}, {"coats", 5.5, true}, {"room size", 22, false},
	{"unit price", 9, true}, {"labour", 10, true}, {"total", 10, true}, {"lead time", 9, false}, {"remarks", 16, false},
}
