package takeoff

// A Piece is one piece to be cut.
type Piece struct {
	Length int64  // in units of 1/PerInch inch
	ID     string // what it is for; may repeat
}

// A Stock is a length that is sold, in any number.
type Stock struct {
	Length int64 // in units of 1/PerInch inch
	Price  int64 // in cents, for one
}

// A Stick is one stick to buy, with the pieces to cut from it, longest first.
type Stick struct {
	Stock
	Cuts   []Piece
	Offcut int64 // what is left in one length after the last cut; the kerfs are gone
}

// A Plan says what to buy and how to cut it.
type Plan struct {
	Sticks []Stick // longest first
	Price  int64   // cents, of all sticks
	Waste  int64   // length bought less length of pieces: offcuts and kerfs
	Bound  int64   // cents: no plan costs less
	By     Proof   // what the bound rests on
}

// Proved reports whether no plan is cheaper.
func (p Plan) Proved() bool { return p.Bound == p.Price }

// Gap is how many cents a better plan could save at most.
func (p Plan) Gap() int64 { return p.Price - p.Bound }

// A Proof is what a lower bound on the price rests on.
type Proof string

const (
	// BySum: the cheapest sticks that are long enough together for all pieces cost
	// as much as the bound.
	BySum Proof = "total length"
	// ByValues: a value in cents was given to each length so that no way to cut a
	// stick yields more than its price; the pieces together are worth the bound.
	ByValues Proof = "value of the pieces"
	// BySearch: every other way was tried or ruled out.
	BySearch Proof = "exhaustive search"
)
