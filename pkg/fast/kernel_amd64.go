package fast

import (
	"golang.org/x/sys/cpu"

	"ledgerboard/pkg/formula"
)

// carryOut carries steps out up to the first without a kernel, and counts them.
//
//go:noescape
func carryOut(m *float64, n int, s *step) (steps int)

//go:noescape
func within(x *float64, n int, least, most float64) bool

// surely is how many of some numbers from the first on are known to lie between ends at a
// glance: all of them but the last few, or none.
func surely(x []float64, least, most float64) int {
	n := len(x) &^ 3
	if native == nil || n == 0 || !within(&x[0], n, least, most) {
		return 0
	}
	return n
}

// Where machine code is: the kernels in the order of the constants, and the end of carryOut.
var (
	avx2, avx512 [kernels]uintptr
	stop         uintptr
)

const (
	addKernel = iota
	addNumberKernel
	subKernel
	subNumberKernel
	subFromKernel
	mulKernel
	mulNumberKernel
	divKernel
	divByKernel
	divNumberKernel
	leastKernel
	leastNumberKernel
	mostKernel
	mostNumberKernel
	lessKernel
	lessNumberKernel
	lessEqualKernel
	lessEqualNumberKernel
	moreKernel
	moreNumberKernel
	moreEqualKernel
	moreEqualNumberKernel
	equalKernel
	equalNumberKernel
	notEqualKernel
	notEqualNumberKernel
	andKernel
	orKernel
	notKernel
	negativeKernel
	chooseKernel
	centsKernel
	ceilKernel
	floorKernel
	mulCentsKernel
	mulNumberCentsKernel
	addAddKernel
	subAddKernel
	addSubKernel
	kernels // how many there are
)

// quickest are the kernels that run quickest on this machine, if any do.
func quickest() *machine {
	switch {
	case cpu.X86.HasAVX512F:
		return newMachine(&avx512)
	case cpu.X86.HasAVX2:
		return newMachine(&avx2)
	}
	return nil
}

// newMachine names the kernels by operator and by how it takes its values, as the portable
// forms do.
func newMachine(k *[kernels]uintptr) *machine {
	return &machine{stop: stop, kernels: map[formula.Code][3]uintptr{
		formula.Add:       {k[addKernel], k[addNumberKernel], k[addNumberKernel]},
		formula.Sub:       {k[subKernel], k[subFromKernel], k[subNumberKernel]},
		formula.Mul:       {k[mulKernel], k[mulNumberKernel], k[mulNumberKernel]},
		formula.Div:       {k[divKernel], k[divNumberKernel], k[divByKernel]},
		formula.Min:       {k[leastKernel], k[leastNumberKernel], k[leastNumberKernel]},
		formula.Max:       {k[mostKernel], k[mostNumberKernel], k[mostNumberKernel]},
		formula.Less:      {k[lessKernel], 0, k[lessNumberKernel]},
		formula.LessEqual: {k[lessEqualKernel], 0, k[lessEqualNumberKernel]},
		formula.More:      {k[moreKernel], 0, k[moreNumberKernel]},
		formula.MoreEqual: {k[moreEqualKernel], 0, k[moreEqualNumberKernel]},
		formula.Equal:     {k[equalKernel], 0, k[equalNumberKernel]},
		formula.NotEqual:  {k[notEqualKernel], 0, k[notEqualNumberKernel]},
		formula.Negative:  {k[negativeKernel]},
		formula.Not:       {k[notKernel]},
		formula.And:       {k[andKernel]},
		formula.Or:        {k[orKernel]},
		formula.If:        {k[chooseKernel]},
		formula.Cents:     {k[centsKernel]},
		formula.Ceil:      {k[ceilKernel]},
		formula.Floor:     {k[floorKernel]},
		mulCents:          {k[mulCentsKernel], k[mulNumberCentsKernel], k[mulNumberCentsKernel]},
		addAdd:            {k[addAddKernel]},
		subAdd:            {k[subAddKernel]},
		addSub:            {k[addSubKernel]},
	}}
}
