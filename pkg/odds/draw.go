package odds

import (
	"encoding/binary"
	"math/rand/v2"
)

// Block is how many trials are drawn at a time.
const Block = 4096

// A Drawer draws blocks of trials. It belongs to one worker.
type Drawer struct {
	spreads []Spread
	ties    *Ties
	values  [][]float64
	source  *rand.ChaCha8
	random  *rand.Rand
}

// NewDrawer returns a drawer of some spreads and their ties, nil for none.
func NewDrawer(spreads []Spread, ties *Ties) *Drawer {
	d := &Drawer{spreads: spreads, ties: ties, values: make([][]float64, len(spreads)), source: rand.NewChaCha8([32]byte{})}
	for i := range d.values {
		d.values[i] = make([]float64, Block)
	}
	d.random = rand.New(d.source)
	return d
}

// Draw draws a block of a seed, by spread and trial. Blocks are independent of each other,
// and a block is the same whoever draws it and however many there are. What it returns
// holds until the next.
func (d *Drawer) Draw(seed, block uint64) [][]float64 {
	var key [32]byte
	binary.LittleEndian.PutUint64(key[:], seed)
	binary.LittleEndian.PutUint64(key[8:], block)
	d.source.Seed(key)
	for _, scores := range d.values {
		for i := range scores {
			scores[i] = d.random.NormFloat64()
		}
	}
	if d.ties != nil {
		d.ties.apply(d.values)
	}
	for i, s := range d.spreads {
		for k, score := range d.values[i] {
			d.values[i][k] = s.At(max(-furthest, min(furthest, score)))
		}
	}
	return d.values
}
