#include "go_asm.h"
#include "textflag.h"
#include "kernel_amd64.h"

// Kernels with AVX-512, eight trials in one register: what a core loads and stores at once
// bounds most of them. The results are the same to the last bit.

KERNELS(·avx512)

// NUMBER puts the step's number into Z2, NEAR how far apart is equal into Z5, ONE 1 into Z3.
#define NUMBER VBROADCASTSD step_number(R9), Z2
#define NEAR VBROADCASTSD near<>(SB), Z5
#define ONE VBROADCASTSD one<>(SB), Z3
#define SIZE VBROADCASTSD size<>(SB), Z6

// X and Y load the first and the second values, FLAGS turns a mask into ones and zeros.
#define X VMOVUPD (SI)(AX*8), Z0
#define Y VMOVUPD (DX)(AX*8), Z1
#define FLAGS VMOVAPD.Z Z3, K1, Z0

// NEXT stores the results and goes on with the next eight.
#define NEXT \
	VMOVUPD Z0, (DI)(AX*8); \
	ADDQ $8, AX; \
	CMPQ AX, CX; \
	JLT loop; \
	GO_ON

TEXT add<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VADDPD (DX)(AX*8), Z0, Z0
	NEXT

TEXT sub<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VSUBPD (DX)(AX*8), Z0, Z0
	NEXT

TEXT mul<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VMULPD (DX)(AX*8), Z0, Z0
	NEXT

TEXT div<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VDIVPD (DX)(AX*8), Z0, Z0
	NEXT

TEXT addNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
loop:
	VADDPD (SI)(AX*8), Z2, Z0
	NEXT

TEXT subNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
loop:
	X
	VSUBPD Z2, Z0, Z0
	NEXT

TEXT subFrom<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
loop:
	VSUBPD (SI)(AX*8), Z2, Z0
	NEXT

TEXT mulNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
loop:
	VMULPD (SI)(AX*8), Z2, Z0
	NEXT

TEXT divBy<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
loop:
	X
	VDIVPD Z2, Z0, Z0
	NEXT

TEXT divNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
loop:
	VDIVPD (SI)(AX*8), Z2, Z0
	NEXT

// What is no number among the first values stays none.
TEXT least<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VMINPD (DX)(AX*8), Z0, Z1
	VCMPPD $7, Z0, Z0, K1
	VMOVAPD Z1, K1, Z0
	NEXT

TEXT most<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VMAXPD (DX)(AX*8), Z0, Z1
	VCMPPD $7, Z0, Z0, K1
	VMOVAPD Z1, K1, Z0
	NEXT

TEXT leastNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
loop:
	VMINPD (SI)(AX*8), Z2, Z0
	NEXT

TEXT mostNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
loop:
	VMAXPD (SI)(AX*8), Z2, Z0
	NEXT

TEXT less<>(SB), NOSPLIT, $0
	ENTER
	NEAR
	ONE
loop:
	X
	Y
	VSUBPD Z5, Z1, Z1
	VCMPPD $0x11, Z1, Z0, K1
	FLAGS
	NEXT

TEXT lessNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
	NEAR
	ONE
	VSUBPD Z5, Z2, Z2
loop:
	X
	VCMPPD $0x11, Z2, Z0, K1
	FLAGS
	NEXT

TEXT lessEqual<>(SB), NOSPLIT, $0
	ENTER
	NEAR
	ONE
loop:
	X
	VADDPD (DX)(AX*8), Z5, Z1
	VCMPPD $0x12, Z1, Z0, K1
	FLAGS
	NEXT

TEXT lessEqualNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
	NEAR
	ONE
	VADDPD Z5, Z2, Z2
loop:
	X
	VCMPPD $0x12, Z2, Z0, K1
	FLAGS
	NEXT

TEXT more<>(SB), NOSPLIT, $0
	ENTER
	NEAR
	ONE
loop:
	X
	VADDPD (DX)(AX*8), Z5, Z1
	VCMPPD $0x1e, Z1, Z0, K1
	FLAGS
	NEXT

TEXT moreNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
	NEAR
	ONE
	VADDPD Z5, Z2, Z2
loop:
	X
	VCMPPD $0x1e, Z2, Z0, K1
	FLAGS
	NEXT

TEXT moreEqual<>(SB), NOSPLIT, $0
	ENTER
	NEAR
	ONE
loop:
	X
	Y
	VSUBPD Z5, Z1, Z1
	VCMPPD $0x1d, Z1, Z0, K1
	FLAGS
	NEXT

TEXT moreEqualNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
	NEAR
	ONE
	VSUBPD Z5, Z2, Z2
loop:
	X
	VCMPPD $0x1d, Z2, Z0, K1
	FLAGS
	NEXT

TEXT equal<>(SB), NOSPLIT, $0
	ENTER
	NEAR
	SIZE
	ONE
loop:
	X
	VSUBPD (DX)(AX*8), Z0, Z0
	VPANDQ Z6, Z0, Z0
	VCMPPD $0x12, Z5, Z0, K1
	FLAGS
	NEXT

TEXT equalNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
	NEAR
	SIZE
	ONE
loop:
	X
	VSUBPD Z2, Z0, Z0
	VPANDQ Z6, Z0, Z0
	VCMPPD $0x12, Z5, Z0, K1
	FLAGS
	NEXT

TEXT notEqual<>(SB), NOSPLIT, $0
	ENTER
	NEAR
	SIZE
	ONE
loop:
	X
	VSUBPD (DX)(AX*8), Z0, Z0
	VPANDQ Z6, Z0, Z0
	VCMPPD $0x1e, Z5, Z0, K1
	FLAGS
	NEXT

TEXT notEqualNumber<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
	NEAR
	SIZE
	ONE
loop:
	X
	VSUBPD Z2, Z0, Z0
	VPANDQ Z6, Z0, Z0
	VCMPPD $0x1e, Z5, Z0, K1
	FLAGS
	NEXT

TEXT and<>(SB), NOSPLIT, $0
	ENTER
	VPXORQ Z2, Z2, Z2
	ONE
loop:
	X
	Y
	VCMPPD $4, Z2, Z0, K2
	VCMPPD $4, Z2, Z1, K2, K1
	FLAGS
	NEXT

TEXT or<>(SB), NOSPLIT, $0
	ENTER
	VPXORQ Z2, Z2, Z2
	ONE
loop:
	X
	Y
	VCMPPD $4, Z2, Z0, K1
	VCMPPD $4, Z2, Z1, K2
	KORW K1, K2, K1
	FLAGS
	NEXT

TEXT not<>(SB), NOSPLIT, $0
	ENTER
	VPXORQ Z2, Z2, Z2
	ONE
loop:
	X
	VCMPPD $0, Z2, Z0, K1
	FLAGS
	NEXT

TEXT negative<>(SB), NOSPLIT, $0
	ENTER
	VBROADCASTSD sign<>(SB), Z2
loop:
	VPXORQ (SI)(AX*8), Z2, Z0
	NEXT

TEXT choose<>(SB), NOSPLIT, $0
	ENTER
	VPXORQ Z2, Z2, Z2
loop:
	X
	VCMPPD $0, Z2, Z0, K1
	VMOVUPD (DX)(AX*8), Z0
	VMOVUPD (BX)(AX*8), K1, Z0
	NEXT

// CENTS_OF has what rounding takes ready, CENTS rounds Z0. The quotient by 100 is the product
// with 0.01, put right by what it leaves over: the nearest float64, as if divided, for 0.01
// is the nearest to 1/100 and the product within one last place (P. Markstein, 1990; from
// memory). What is infinite leaves no number over. $0xEA is (x and sign) or half.
#define CENTS_OF \
	VBROADCASTSD sign<>(SB), Z7; \
	VBROADCASTSD halfUp<>(SB), Z3; \
	VBROADCASTSD hundred<>(SB), Z5; \
	VBROADCASTSD hundredth<>(SB), Z6
#define CENTS \
	VMOVAPD Z0, Z1; \
	VPTERNLOGQ $0xEA, Z3, Z7, Z1; \
	VMULPD Z5, Z0, Z0; \
	VADDPD Z1, Z0, Z0; \
	VRNDSCALEPD $11, Z0, Z1; \
	VMULPD Z6, Z1, Z0; \
	VFNMADD231PD Z5, Z0, Z1; \
	VCMPPD $7, Z1, Z1, K1; \
	VFMADD231PD Z6, Z1, K1, Z0

TEXT cents<>(SB), NOSPLIT, $0
	ENTER
	CENTS_OF
loop:
	X
	CENTS
	NEXT

TEXT mulCents<>(SB), NOSPLIT, $0
	ENTER
	CENTS_OF
loop:
	X
	VMULPD (DX)(AX*8), Z0, Z0
	CENTS
	NEXT

TEXT mulNumberCents<>(SB), NOSPLIT, $0
	ENTER
	NUMBER
	CENTS_OF
loop:
	VMULPD (SI)(AX*8), Z2, Z0
	CENTS
	NEXT

TEXT addAdd<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VADDPD (DX)(AX*8), Z0, Z0
	VADDPD (BX)(AX*8), Z0, Z0
	NEXT

TEXT subAdd<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VSUBPD (DX)(AX*8), Z0, Z0
	VADDPD (BX)(AX*8), Z0, Z0
	NEXT

TEXT addSub<>(SB), NOSPLIT, $0
	ENTER
loop:
	X
	VADDPD (DX)(AX*8), Z0, Z0
	VSUBPD (BX)(AX*8), Z0, Z0
	NEXT

TEXT ceil<>(SB), NOSPLIT, $0
	ENTER
	VBROADCASTSD tidy<>(SB), Z2
loop:
	X
	VSUBPD Z2, Z0, Z0
	VRNDSCALEPD $10, Z0, Z0
	NEXT

TEXT floor<>(SB), NOSPLIT, $0
	ENTER
	VBROADCASTSD tidy<>(SB), Z2
loop:
	X
	VADDPD Z2, Z0, Z0
	VRNDSCALEPD $9, Z0, Z0
	NEXT
