package fast

import "golang.org/x/sys/cpu"

// machines are those that this one can be, and the portable one.
func machines() map[string]*machine {
	out := map[string]*machine{"portable": nil}
	if cpu.X86.HasAVX2 {
		out["AVX2"] = newMachine(&avx2)
	}
	if cpu.X86.HasAVX512F {
		out["AVX-512"] = newMachine(&avx512)
	}
	return out
}
