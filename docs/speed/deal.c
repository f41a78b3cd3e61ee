// The demo deal, scenarios/juniper-lane.yaml, as a hand-written loop over trials.
//
//	cc -O3 -march=native -fno-trapping-math -DLANES=1 deal.c -lm && ./a.out TRIALS RESULTS
//
// Money is in whole cents. LANES trials stand side by side, so that with 16 or so the
// compiler makes vector instructions of each step; with 1 it is a plain loop. A trial that
// is over before the others of its lanes goes through their months too: nothing is due in
// them. What is known of this deal is used: a last draw comes in before the month of the
// sale, a premium lasts a year, and no rule is here that the deal does not have.
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define EACH for (int i = 0; i < LANES; i++)

static const double lead = 2 * 7 * 12 / 365.0, renovation = 3.5, marketing = 5 * 7 * 12 / 365.0, escrow = 5 * 7 * 12 / 365.0;
static const double base = 5288816, to_buy = 4688918;
static const double at_closing = 17765000, holdback = 6082138, rate = 0.1125, retained = 0.1, draw_fee = 17500;
static const double term = 9, extension = 3, extension_fee = 119236;
static const double tax = 412000 / 12.0, premium = 194000, power = 23800, yard = 8500, staging = 62000;
static const double paused_at = 3.5 * 0.712859274592583238559580446183040714298514; // 80% is spent

static inline double least(double x, double y) { return x < y ? x : y; }
static inline double most(double x, double y) { return x > y ? x : y; }
static inline double cents(double x) { return floor(x + 0.50000005); } // of half a cent and half of a 9th decimal
static inline double up(double x) { return ceil(x - 5e-10); }

static void work_out(const double *value, const double *overrun, const double *standstill, const double *late,
                     double *profit, double *roi, double *cash, double *hold) {
	double works_end[LANES], release[LANES], unsold[LANES], spend[LANES], taxes[LANES], powers[LANES], yards[LANES], stagings[LANES];
	double spent[LANES], earned[LANES], asked[LANES], kept[LANES], begun[LANES], held[LANES], balance[LANES], flow[LANES], low[LANES];
	double months = 0, works = 0;
	EACH {
		works_end[i] = lead + renovation + standstill[i];
		unsold[i] = marketing + late[i];
		hold[i] = works_end[i] + unsold[i] + escrow;
		release[i] = up(works_end[i]) + 1;
		months = most(months, up(hold[i]));
		works = most(works, release[i]);
		spend[i] = cents(base * (1 + overrun[i]));
		taxes[i] = cents(tax * hold[i]);
		powers[i] = cents(power * hold[i]);
		yards[i] = cents(yard * hold[i]);
		stagings[i] = cents(staging * unsold[i]);
		spent[i] = earned[i] = asked[i] = kept[i] = begun[i] = 0;
		held[i] = premium;
		balance[i] = at_closing;
		flow[i] = low[i] = -to_buy;
	}
	for (double m = 1; m <= months; m++) {
		EACH {
			double owned = least(hold[i], m), part = owned / hold[i];
			double to_date = cents(taxes[i] * part) + cents(powers[i] * part) + cents(yards[i] * part) +
			                 cents(stagings[i] * (least(unsold[i], most(0, owned - works_end[i])) / unsold[i])) + premium * up(owned / 12);
			double interest = cents(balance[i] * rate / 12 * most(0, owned - (m - 1)));
			double extended = most(0, up((owned - term) / extension));
			flow[i] -= to_date - held[i] + interest + (extended - begun[i]) * extension_fee;
			held[i] = to_date;
			begun[i] = extended;
		}
		if (m <= works) EACH {
			double passed = m - lead;
			double done = (least(passed, paused_at) + most(0, least(passed - standstill[i], renovation) - paused_at)) / renovation;
			double now = cents(spend[i] * (3 * done * done - 2 * done * done * done));
			double due = least(holdback, now);
			double keeps = cents((due - earned[i]) * retained);
			double draw = asked[i] + (m == release[i] ? kept[i] : 0);
			flow[i] -= now - spent[i] + (asked[i] > 0 ? draw_fee : 0);
			low[i] = least(low[i], flow[i]); // before the draw comes in
			flow[i] += draw;
			balance[i] += draw;
			asked[i] = due - earned[i] - keeps;
			kept[i] += keeps;
			earned[i] = due;
			spent[i] = now;
		}
	}
	EACH { // the sale; marketing and escrow lie between the last draw and it, so until then the flow only fell
		double price = cents(value[i] * (1 - 0.02) * 100);
		double selling = 2 * cents(0.025 * price) + 190000 + cents(0.005 * least(price, 25000000) + 0.0075 * most(0, price - 25000000)) + 150000;
		double left = price - selling - balance[i];
		low[i] = least(low[i], flow[i] + least(0, left));
		double premiums = up(hold[i] / 12);
		double refund = cents(premium * most(0, least(0.75, premiums - hold[i] / 12)));
		double all = flow[i] + left + refund;
		roi[i] = all / -low[i];
		profit[i] = all / 100;
		cash[i] = -low[i] / 100;
	}
}

static double seconds(void) {
	struct timespec t;
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
	return t.tv_sec + t.tv_nsec / 1e9;
}

int main(int argc, char **argv) {
	FILE *in = argc == 3 ? fopen(argv[1], "rb") : NULL;
	if (!in)
		return 1;
	fseek(in, 0, SEEK_END);
	size_t n = ftell(in) / sizeof(double) / 4; // four inputs by four times as many trials, each input in a piece
	rewind(in);
	double *x = malloc(4 * n * sizeof *x), *y = malloc(4 * n * sizeof *y), best = INFINITY;
	if (fread(x, sizeof *x, 4 * n, in) != 4 * n || n % LANES)
		return 1;
	for (int pass = 0; pass < 6; pass++) { // the first warms up
		double began = seconds();
		for (size_t t = 0; t < n; t += LANES)
			work_out(x + t, x + n + t, x + 2 * n + t, x + 3 * n + t, y + t, y + n + t, y + 2 * n + t, y + 3 * n + t);
		best = least(best, seconds() - began);
	}
	printf("%.3f\n", best / n * 1e9); // ns a trial
	FILE *out = fopen(argv[2], "wb");
	return !out || fwrite(y, sizeof *y, 4 * n, out) != 4 * n || fclose(out) != 0;
}
