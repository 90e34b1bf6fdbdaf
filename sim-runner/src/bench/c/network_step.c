/*
 * One step of the heat network as Network.java and SparseSystem.java take it, operation by operation,
 * for a comparison of speed and of bits. Reads what NetworkStep.java writes; prints nanoseconds a
 * step (CPU time, best of the repeats) and the end state in hexadecimal.
 *
 * gcc -std=gnu99 -O3 -march=native -ffp-contract=off network_step.c -o network_step -lm
 * network_step <file> <steps> <repeats>
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static FILE *in;
static int whole(void) { int v; if (fscanf(in, "%d", &v) != 1) exit(2); return v; }
static double real(void) { double v; if (fscanf(in, "%la", &v) != 1) exit(2); return v; }
static int *wholes(int *count) {
  *count = whole();
  int *a = malloc((*count + 1) * sizeof(int));
  for (int i = 0; i < *count; i++) a[i] = whole();
  return a;
}
static double *reals(int *count) {
  *count = whole();
  double *a = malloc((*count + 1) * sizeof(double));
  for (int i = 0; i < *count; i++) a[i] = real();
  return a;
}

static int n, steady, entries, neighbours, outers, cells, unused;
static double halfGamma, fromGamma, fromStart, weightOuter;
static double *capacity, *fixed, *first, *piece;
static int *order, *neighbourStart, *pivotOf, *neighbourNode, *lowerAt, *upperAt, *updateStart, *updateTarget, *link, *outer;
static int air, nest, plate;
static double lowC, perK;

static double *base, *a, *b, *work, *start, *inner, *end, *mean, *slope, *drawn, *mid, *inverse, *lower, *upper;
static double d, baseD;
static int since;

static double table(double c) {
  double u = (c - lowC) * perK;
  u = u > 0 ? u : 0;
  u = u < cells ? u : cells;
  int i = (int) u;
  i = i < cells ? i : cells - 1;
  double f = u - i;
  const double *p = piece + 4 * i;
  return p[0] + f * (p[1] + f * (p[2] + f * p[3]));
}

static void eliminate(double *m, int from, int to) {
  for (int k = from; k < to; k++) {
    int pivot = order[k];
    double inv = 1 / m[pivot];
    inverse[pivot] = inv;
    int firstR = neighbourStart[k], last = neighbourStart[k + 1], u = updateStart[k];
    for (int r = firstR; r < last; r++) {
      double l = m[lowerAt[r]] * inv;
      lower[r] = l;
      upper[r] = m[upperAt[r]] * inv;
      for (int c = firstR; c < last; c++) m[updateTarget[u++]] -= l * m[upperAt[c]];
    }
  }
}

static void substitute(double *x) {
  for (int r = 0; r < neighbours; r++) x[neighbourNode[r]] -= lower[r] * x[pivotOf[r]];
  for (int i = 0; i < n; i++) x[i] *= inverse[i];
  for (int r = neighbours - 1; r >= 0; r--) x[pivotOf[r]] -= upper[r] * x[neighbourNode[r]];
}

static double limited(double now, double before) {
  if (now * before <= 0) return before == 0 ? 0 : -now;
  double most = 2 * before;
  return now > 0 ? (now < most ? now : most) : (now > most ? now : most);
}

static void step(int i) {
  double h = 10, half = 0.5 * h;
  for (int k = 0; k < n; k++) mid[k] = start[k] + half * drawn[k];
  d = halfGamma * h;
  if (d != baseD) {
    baseD = d;
    for (int p = 0; p < entries; p++) base[p] = p < n ? capacity[p] + d * fixed[p] : d * fixed[p];
    eliminate(base, 0, steady);
  }
  memcpy(a, base, entries * sizeof(double));
  memset(b, 0, n * sizeof(double));
  double outC = -5 + (i % 1000) * 0.01;
  double dg = d * (0.1 + 0.2 * table(mid[air]));
  a[link[0]] += dg;
  a[link[1]] += dg;
  a[link[2]] -= dg;
  a[link[3]] -= dg;
  for (int f = 0; f < outers; f++) {
    a[outer[f]] += d * 1.5;
    b[outer[f]] += 1.5 * outC;
  }
  double g = 0.05 + 0.01 * sqrt(mid[air] - outC > 0 ? mid[air] - outC : 0);
  a[air] += d * g;
  b[air] += g * outC;
  b[nest] += 3;
  b[plate] += i / 120 % 2 == 0 ? 25 : 0;
  for (int k = 0; k < n; k++) {
    b[k] *= d;
    work[k] = 2 * (capacity[k] * start[k] + b[k]);
  }
  eliminate(a, steady, n);
  substitute(work);
  for (int k = 0; k < n; k++) {
    double y = work[k] - start[k];
    inner[k] = y;
    end[k] = capacity[k] * (fromGamma * y - fromStart * start[k]) + b[k];
  }
  substitute(end);
  for (int k = 0; k < n; k++) mean[k] = weightOuter * (start[k] + inner[k]) + halfGamma * end[k];
  double perS = 1 / h;
  for (int k = 0; k < n; k++) {
    double now = (end[k] - start[k]) * perS;
    drawn[k] = since > 0 ? limited(now, slope[k]) : now;
    slope[k] = now;
    start[k] = end[k];
  }
  since++;
}

int main(int argc, char **argv) {
  if (argc != 4 || !(in = fopen(argv[1], "r"))) return 2;
  halfGamma = real(); fromGamma = real(); fromStart = real(); weightOuter = real();
  steady = whole(); air = whole(); nest = whole(); plate = whole();
  capacity = reals(&n); first = reals(&n); fixed = reals(&entries);
  order = wholes(&n); neighbourStart = wholes(&unused); pivotOf = wholes(&neighbours);
  neighbourNode = wholes(&neighbours); lowerAt = wholes(&neighbours); upperAt = wholes(&neighbours);
  updateStart = wholes(&unused); updateTarget = wholes(&unused);
  link = wholes(&unused); outer = wholes(&outers);
  lowC = real(); perK = real(); piece = reals(&cells); cells /= 4;
  double **scratch[] = {&base, &a, &b, &work, &start, &inner, &end, &mean, &slope, &drawn, &mid, &inverse, &lower, &upper};
  for (size_t s = 0; s < sizeof scratch / sizeof *scratch; s++) *scratch[s] = malloc((entries + neighbours + 1) * sizeof(double));
  int steps = atoi(argv[2]), repeats = atoi(argv[3]);
  double best = 1e99;
  for (int r = 0; r < repeats; r++) {
    for (int k = 0; k < n; k++) { start[k] = first[k]; slope[k] = 0; drawn[k] = 0; }
    since = 0;
    baseD = NAN;
    struct timespec t0, t1;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t0);
    for (int i = 0; i < steps; i++) step(i);
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t1);
    double ns = ((t1.tv_sec - t0.tv_sec) * 1e9 + (t1.tv_nsec - t0.tv_nsec)) / steps;
    best = ns < best ? ns : best;
  }
  printf("%.3f\n", best);
  for (int k = 0; k < n; k++) printf("%a\n", start[k]);
  return 0;
}
