#include "go_asm.h"
#include "textflag.h"
#include "kernel_amd64.h"

// carryOut carries steps out up to the first without a kernel of its own.
TEXT ·carryOut(SB), NOSPLIT, $0-32
	MOVQ m+0(FP), R8
	MOVQ n+8(FP), CX
	MOVQ s+16(FP), R9
	XORQ R12, R12
	MOVQ step_kernel(R9), R10
	JMP R10

// stop is the kernel of a step without one. It returns for carryOut.
TEXT stop<>(SB), NOSPLIT, $0-32
	VZEROUPPER
	MOVQ R12, steps+24(FP)
	RET

DATA ·stop+0(SB)/8, $stop<>(SB)
GLOBL ·stop(SB), NOPTR, $8
