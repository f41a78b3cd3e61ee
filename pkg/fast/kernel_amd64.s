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

// within says whether n numbers, a multiple of four, lie from least to most, with AVX2.
TEXT ·within(SB), NOSPLIT, $0-33
	MOVQ x+0(FP), SI
	MOVQ n+8(FP), CX
	VBROADCASTSD least+16(FP), Y2
	VBROADCASTSD most+24(FP), Y3
	VCMPPD $15, Y2, Y2, Y4
	XORQ AX, AX
loop:
	VMOVUPD (SI)(AX*8), Y0
	VCMPPD $0x1d, Y2, Y0, Y1
	VANDPD Y1, Y4, Y4
	VCMPPD $0x12, Y3, Y0, Y1
	VANDPD Y1, Y4, Y4
	ADDQ $4, AX
	CMPQ AX, CX
	JLT loop
	VMOVMSKPD Y4, AX
	VZEROUPPER
	CMPQ AX, $15
	SETEQ ret+32(FP)
	RET
