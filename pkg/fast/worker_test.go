package fast_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/model"
)

const juniper = "../../scenarios/juniper-lane.yaml"

// demo is the question of most stress: profit, cash and months of the demo deal.
func demo(t testing.TB) *fast.Question {
	m := scenario(t, juniper)
	q, err := fast.Ask(m, stresses(m), all(m, "profit", "cash_needed", "hold_months"))
	require.NoError(t, err)
	return q
}

func all(m *model.Model, names ...string) (out []*model.Cell) {
	for _, n := range names {
		out = append(out, m.Find(m.Root, n))
	}
	return out
}

// stresses are the axes of the demo question.
func stresses(m *model.Model) (out []fast.Axis) {
	for i, c := range all(m, "after_repair_value", "overrun", "standstill", "late_sale") {
		out = append(out, fast.Axis{Cell: c, Most: []float64{1e6, 1, 36, 6000}[i]})
	}
	return out
}

func free(cells []*model.Cell) (out []fast.Axis) {
	for _, c := range cells {
		out = append(out, fast.Free(c))
	}
	return out
}

// drawn are trials of the demo question.
func drawn(n int) [][]float64 {
	r := rand.New(rand.NewPCG(1, 2))
	in := make([][]float64, 4)
	for i := range in {
		in[i] = make([]float64, n)
	}
	for t := range n {
		in[0][t], in[1][t], in[2][t], in[3][t] = 300_000+100_000*r.Float64(), 0.6*r.Float64(), 3*r.Float64(), 4*r.Float64()
	}
	return in
}

func room(n int) [][]float64 {
	return [][]float64{make([]float64, n), make([]float64, n), make([]float64, n)}
}

func between(of [][]float64, from, to int) (out [][]float64) {
	for _, x := range of {
		out = append(out, x[from:to])
	}
	return out
}

// A trial comes out the same to the last bit, whatever stands beside it and whoever works
// it out.
func TestTrialsDoNotDependOnEachOther(t *testing.T) {
	q, n := demo(t), 10_000
	in, whole, parts := drawn(n), room(n), room(n)
	require.NoError(t, q.Worker().Run(in, whole))
	other := demo(t)
	var wait sync.WaitGroup
	cuts := []int{0, 1, 700, 701, 5000, 9001, n}
	for i, to := range cuts[1:] {
		from := cuts[i]
		wait.Go(func() {
			if err := other.Worker().Run(between(in, from, to), between(parts, from, to)); err != nil {
				t.Error(err)
			}
		})
	}
	wait.Wait()
	require.Equal(t, whole, parts)
	require.Greater(t, slices.Max(whole[2])-slices.Min(whole[2]), 4.0, "many lengths of hold are tried")
}

// Once each length of hold is met, nothing is allocated.
func TestTrialsAllocateNothing(t *testing.T) {
	w, in, out := demo(t).Worker(), drawn(5000), room(5000)
	require.NoError(t, w.Run(in, out))
	require.Zero(t, testing.AllocsPerRun(3, func() { _ = w.Run(in, out) }))
}

// A hold that no reader works out gives no number, and one beyond what was prepared at
// first does give one.
func TestLongHolds(t *testing.T) {
	w, out := demo(t).Worker(), room(4)
	late := []float64{0, 100, 5000, math.NaN()}
	same := []float64{359_000, 359_000, 359_000, 359_000}
	zero := make([]float64, 4)
	require.NoError(t, w.Run([][]float64{same, zero, zero, late}, out))
	require.Less(t, out[0][1], out[0][0])
	require.False(t, math.IsNaN(out[0][1]))
	for _, o := range out {
		require.True(t, math.IsNaN(o[2]) && math.IsNaN(o[3]))
	}
}

// A trial past the ends that an axis was said to keep gives no number.
func TestTrialsPastTheEnds(t *testing.T) {
	w, out := demo(t).Worker(), room(3)
	zero := make([]float64, 3)
	require.NoError(t, w.Run([][]float64{{-1, 0, 359_000}, zero, zero, zero}, out))
	require.True(t, math.IsNaN(out[0][0]))
	require.Less(t, out[0][1], out[0][2])
}

// Where nothing moves the months, there is one length of hold.
func TestMonthsThatStay(t *testing.T) {
	m := scenario(t, juniper)
	q, err := fast.Ask(m, free(all(m, "price")), all(m, "price", "profit", "renovation"))
	require.NoError(t, err)
	out := room(2)
	require.NoError(t, q.Worker().Run([][]float64{{200_000, 200_001}}, out))
	require.Equal(t, []float64{200_000, 200_001}, out[0], "an axis may be asked for")
	require.Greater(t, out[0][0], out[1][0])
	require.Equal(t, []float64{3.5, 3.5}, out[2], "and so may what does not move")
}

func TestRefusesLinesByMonth(t *testing.T) {
	m := scenario(t, juniper)
	_, err := fast.Ask(m, free(all(m, "price")), all(m, "net_cash"))
	require.EqualError(t, err, "net_cash has a value for each month")
}
