package takeoff

import "errors"

// ErrSplit is returned for a length that cannot be split.
var ErrSplit = errors.New("a length of 1 unit or more is split by a longest of 1 unit or more into at most 5000 pieces")

// shortest is the least length worth joining, where it can be helped: a piece
// under it reaches one stud only. Common practice, no source.
const shortest = 16 * PerInch

// Split cuts a run into whole sticks of the longest length and a rest. A rest under
// 16 inches takes what it lacks from the last whole stick, if that keeps 16 inches
// itself. The pieces add up to the length; the joints take nothing. Common
// practice, no source. It fails with [ErrSplit].
func Split(length, longest int64) ([]int64, error) {
	if length < 1 || longest < 1 || (length-1)/longest >= maxPieces {
		return nil, ErrSplit
	}
	var out []int64
	for ; length > longest; length -= longest {
		out = append(out, longest)
	}
	lack := shortest - length
	if n := len(out); n > 0 && lack > 0 && longest-lack >= shortest {
		out[n-1] -= lack
		length += lack
	}
	return append(out, length), nil
}
