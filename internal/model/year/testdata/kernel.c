/* The lean kernel of a year in C, for comparison: one store with straight curves.
   Reads doubles from standard input: hours, times, X, pf, pd, gain, cost, standing, then bus[hours], total[hours].
   Prints the best ns a step of many runs, then the last state, what found no room, what was above P_f, and the unmet. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

typedef struct { double X, pf, pd, gain, cost, standing; } store;
typedef struct { long h; double unmet; } lack;
typedef struct { double x, surplus, deficit, above, over; long n; } result;

__attribute__((noinline)) static result run(const store *k, const double *restrict bus, const double *restrict total,
                                            long hours, lack *restrict missing, double x)
{
	double X = k->X, pf = k->pf, pd = k->pd, gain = k->gain, cost = k->cost, standing = k->standing, per = 3600 / cost;
	double surplus = 0, deficit = 0, above = 0, over = 0;
	long n = 0;
	for (long h = 0; h < hours; h++) {
		double s = bus[h] - total[h] - standing;
		if (s >= 0) {
			surplus += s;
			if (s > pf) { above += s - pf; s = pf; }
			x += s * gain;
			if (x > X) { over += x - X; x = X; }
		} else {
			double u = 0;
			s = -s;
			deficit += s;
			if (s > pd) { u = (s - pd) * 3600; s = pd; }
			x -= s * cost;
			if (x < 0) { u -= x * per; x = 0; }
			if (u > 0) { missing[n].h = h; missing[n].unmet = u; n++; }
		}
	}
	return (result){ x, surplus, deficit, above, over, n };
}

static double now(void)
{
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec * 1e9 + t.tv_nsec;
}

int main(void)
{
	double head[8];
	if (fread(head, 8, 8, stdin) != 8) return 1;
	long hours = head[0], times = head[1];
	store k = { head[2], head[3], head[4], head[5], head[6], head[7] };
	double *bus = malloc(hours * 8), *total = malloc(hours * 8);
	lack *missing = malloc(hours * sizeof(lack));
	if (fread(bus, 8, hours, stdin) != (size_t)hours || fread(total, 8, hours, stdin) != (size_t)hours) return 1;
	double best = 1e18;
	result r = { 0 };
	for (long i = 0; i < times; i++) {
		double t = now();
		r = run(&k, bus, total, hours, missing, k.X);
		t = (now() - t) / hours;
		if (t < best) best = t;
	}
	double unmet = 0;
	for (long i = 0; i < r.n; i++) unmet += missing[i].unmet;
	printf("%.6f %.17g %.17g %.17g %.17g\n", best, r.x, r.over, r.above, unmet);
	return 0;
}
