// What the kernels share, whatever their width. One carries a step out over a block and goes
// on to the next step's by itself: R9 is the step, R8 the memory, CX the number of trials,
// R12 counts steps. A block has room for a multiple of eight trials, so what lies beyond the
// last is worked out and never read.

DATA hundred<>+0(SB)/8, $100.0
GLOBL hundred<>(SB), RODATA, $8
DATA hundredth<>+0(SB)/8, $0.01
GLOBL hundredth<>(SB), RODATA, $8
DATA halfUp<>+0(SB)/8, $0.50000005 // half a cent and half of a 9th decimal, in cents
GLOBL halfUp<>(SB), RODATA, $8
DATA tidy<>+0(SB)/8, $5e-10
GLOBL tidy<>(SB), RODATA, $8
DATA near<>+0(SB)/8, $1e-9
GLOBL near<>(SB), RODATA, $8
DATA one<>+0(SB)/8, $1.0
GLOBL one<>(SB), RODATA, $8
DATA sign<>+0(SB)/8, $0x8000000000000000
GLOBL sign<>(SB), RODATA, $8
DATA size<>+0(SB)/8, $0x7fffffffffffffff
GLOBL size<>(SB), RODATA, $8

// ENTER points DI at the result, SI, DX and BX at the values, and counts to CX in AX.
#define ENTER \
	MOVLQSX step_to(R9), DI; \
	LEAQ (R8)(DI*8), DI; \
	MOVLQSX step_x(R9), SI; \
	LEAQ (R8)(SI*8), SI; \
	MOVLQSX step_y(R9), DX; \
	LEAQ (R8)(DX*8), DX; \
	MOVLQSX step_z(R9), BX; \
	LEAQ (R8)(BX*8), BX; \
	XORQ AX, AX

// GO_ON goes on to the next step.
#define GO_ON \
	ADDQ $step__size, R9; \
	INCQ R12; \
	MOVQ step_kernel(R9), R10; \
	JMP R10

// KERNELS fills a table of them, in the order of the constants in kernel_amd64.go.
#define KERNELS(table) \
	DATA table+0(SB)/8, $add<>(SB); \
	DATA table+8(SB)/8, $addNumber<>(SB); \
	DATA table+16(SB)/8, $sub<>(SB); \
	DATA table+24(SB)/8, $subNumber<>(SB); \
	DATA table+32(SB)/8, $subFrom<>(SB); \
	DATA table+40(SB)/8, $mul<>(SB); \
	DATA table+48(SB)/8, $mulNumber<>(SB); \
	DATA table+56(SB)/8, $div<>(SB); \
	DATA table+64(SB)/8, $divBy<>(SB); \
	DATA table+72(SB)/8, $divNumber<>(SB); \
	DATA table+80(SB)/8, $least<>(SB); \
	DATA table+88(SB)/8, $leastNumber<>(SB); \
	DATA table+96(SB)/8, $most<>(SB); \
	DATA table+104(SB)/8, $mostNumber<>(SB); \
	DATA table+112(SB)/8, $less<>(SB); \
	DATA table+120(SB)/8, $lessNumber<>(SB); \
	DATA table+128(SB)/8, $lessEqual<>(SB); \
	DATA table+136(SB)/8, $lessEqualNumber<>(SB); \
	DATA table+144(SB)/8, $more<>(SB); \
	DATA table+152(SB)/8, $moreNumber<>(SB); \
	DATA table+160(SB)/8, $moreEqual<>(SB); \
	DATA table+168(SB)/8, $moreEqualNumber<>(SB); \
	DATA table+176(SB)/8, $equal<>(SB); \
	DATA table+184(SB)/8, $equalNumber<>(SB); \
	DATA table+192(SB)/8, $notEqual<>(SB); \
	DATA table+200(SB)/8, $notEqualNumber<>(SB); \
	DATA table+208(SB)/8, $and<>(SB); \
	DATA table+216(SB)/8, $or<>(SB); \
	DATA table+224(SB)/8, $not<>(SB); \
	DATA table+232(SB)/8, $negative<>(SB); \
	DATA table+240(SB)/8, $choose<>(SB); \
	DATA table+248(SB)/8, $cents<>(SB); \
	DATA table+256(SB)/8, $ceil<>(SB); \
	DATA table+264(SB)/8, $floor<>(SB); \
	DATA table+272(SB)/8, $mulCents<>(SB); \
	DATA table+280(SB)/8, $mulNumberCents<>(SB); \
	DATA table+288(SB)/8, $addAdd<>(SB); \
	DATA table+296(SB)/8, $subAdd<>(SB); \
	DATA table+304(SB)/8, $addSub<>(SB); \
	GLOBL table(SB), NOPTR, $312
