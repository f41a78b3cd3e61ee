package takeoff_test

import (
	"encoding/binary"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/takeoff"
)

// FuzzCutList: nothing panics; what is not refused can be carried out. The bytes
// are numbers of two bytes each, of stock first; the scale stretches them to the limits.
func FuzzCutList(f *testing.F) {
	f.Add([]byte{0, 96, 0, 9, 0, 192, 0, 17, 0, 90, 0, 60, 0, 33}, uint8(2), int64(1), int64(0), int64(1))
	f.Add([]byte{0, 1, 255, 255, 255, 255, 0, 1, 0, 1, 0, 1}, uint8(2), int64(15000), int64(1), int64(1500))
	f.Add([]byte{0, 7, 0, 3, 0, 9, 0, 4, 0, 0, 0, 10}, uint8(2), int64(-1), int64(1<<62), int64(1<<40))
	f.Fuzz(func(t *testing.T, text []byte, stocks uint8, scale, kerf, cents int64) {
		var numbers []int64
		for len(text) > 1 && len(numbers) < 200 {
			numbers = append(numbers, int64(binary.BigEndian.Uint16(text)))
			text = text[2:]
		}
		var j job
		for len(numbers) > 1 && len(j.stock) < int(stocks%8) {
			j.stock = append(j.stock, takeoff.Stock{Length: numbers[0] * scale, Price: numbers[1] * cents})
			numbers = numbers[2:]
		}
		for _, n := range numbers {
			j.pieces = append(j.pieces, takeoff.Piece{Length: n * scale})
		}
		p, err := takeoff.CutList(j.pieces, j.stock, kerf)
		if err == nil {
			require.NoError(t, feasible(p, j.pieces, j.stock, kerf))
		}
	})
}

func FuzzSplit(f *testing.F) {
	f.Add(int64(300*takeoff.PerInch), int64(192*takeoff.PerInch))
	f.Add(int64(1), int64(1<<62))
	f.Fuzz(func(t *testing.T, length, longest int64) {
		list, err := takeoff.Split(length, longest)
		if err != nil {
			return
		}
		for _, l := range list {
			require.Positive(t, l)
			length -= l
		}
		require.Zero(t, length)
	})
}
