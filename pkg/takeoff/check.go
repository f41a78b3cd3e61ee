package takeoff

import (
	"errors"
	"fmt"
)

var (
	// ErrStock is returned where there is nothing to cut the pieces from.
	ErrStock = errors.New("no lengths of stock to cut from")
	// ErrKerf is returned for a kerf that no saw has.
	ErrKerf = fmt.Errorf("a kerf is from 0 to %d units", maxLength)
	// ErrLimit is returned for a job too large to plan.
	ErrLimit = fmt.Errorf("a cut list takes at most %d pieces and %d lengths of stock", maxPieces, maxStock)
)

// An InputError is a piece or a stock that cannot be used. Lengths are in units.
type InputError struct {
	Piece   int    // index of the piece, or -1
	Stock   int    // index of the stock, or -1
	ID      string // of the piece
	Length  int64
	Price   int64 // of the stock
	Longest int64 // for a piece that is too long, the longest stock; else 0
}

// Error returns one line without a full stop.
func (e *InputError) Error() string {
	switch {
	case e.Longest > 0:
		return fmt.Sprintf("piece %d %q has length %d, over the longest stock of %d; split it first", e.Piece, e.ID, e.Length, e.Longest)
	case e.Piece >= 0:
		return fmt.Sprintf("piece %d %q has length %d; want 1 to %d", e.Piece, e.ID, e.Length, maxLength)
	case e.Length < 1 || e.Length > maxLength:
		return fmt.Sprintf("stock %d has length %d; want 1 to %d", e.Stock, e.Length, maxLength)
	}
	return fmt.Sprintf("stock %d has price %d; want 1 to %d cents", e.Stock, e.Price, maxPrice)
}

func check(pieces []Piece, stock []Stock, kerf int64) error {
	if len(pieces) > maxPieces || len(stock) > maxStock {
		return ErrLimit
	}
	var wrong []error
	if kerf < 0 || kerf > maxLength {
		wrong = append(wrong, ErrKerf)
	}
	if len(stock) == 0 && len(pieces) > 0 {
		wrong = append(wrong, ErrStock)
	}
	var longest int64
	for k, s := range stock {
		longest = max(longest, s.Length)
		if s.Length < 1 || s.Length > maxLength || s.Price < 1 || s.Price > maxPrice {
			wrong = append(wrong, &InputError{Piece: -1, Stock: k, Length: s.Length, Price: s.Price})
		}
	}
	for k, p := range pieces {
		switch {
		case p.Length < 1 || p.Length > maxLength:
			wrong = append(wrong, &InputError{Piece: k, Stock: -1, ID: p.ID, Length: p.Length})
		case p.Length > longest && longest > 0:
			wrong = append(wrong, &InputError{Piece: k, Stock: -1, ID: p.ID, Length: p.Length, Longest: longest})
		}
	}
	return errors.Join(wrong...)
}
