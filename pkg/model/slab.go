package model

// A slab hands out pieces of large slices, so that the thousands of small ones that a
// bound deal is made of are not allocated one by one.
type slab[T any] struct{ left []T }

const slabSize = 2048

// take returns n elements that are zero.
func (s *slab[T]) take(n int) []T {
	if n > len(s.left) {
		s.left = make([]T, max(n, slabSize))
	}
	out := s.left[:n:n]
	s.left = s.left[n:]
	return out
}

// one returns a pointer to a zero element.
func (s *slab[T]) one() *T { return &s.take(1)[0] }
