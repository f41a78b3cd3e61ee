package takeoff

// CutList says which sticks to buy and what to cut from each, at the least price;
// of equal prices the fewest sticks, then the least waste. The kerf is in the same
// units as the lengths.
//
// It fails with an [*InputError] for every piece or stock that cannot be used, all
// joined; [ErrStock] if there are pieces and no stock; [ErrKerf] for a kerf below 0
// or beyond reason; [ErrLimit] for more than 5,000 pieces or 32 lengths of stock.
//
// The price is the least possible where the plan is Proved. Ties are settled for
// certain on small jobs, and as far as the search reaches on large ones.
func CutList(pieces []Piece, stock []Stock, kerf int64) (Plan, error) {
	if err := check(pieces, stock, kerf); err != nil {
		return Plan{}, err
	}
	if len(pieces) == 0 {
		return Plan{By: BySum}, nil
	}
	j := newJob(pieces, stock, kerf)
	a := j.solve()
	return assign(j, a, pieces, kerf), nil
}
