/* One day of the box in steps under its on/off thermostat. Usage: twin BOX ANSWERS
   Prints the CPU time of the day [ms], the median of nine runs, and the memory in use [kB]; writes the answers. */
#include "twin.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <time.h>

#define GAMMA (1 - M_SQRT1_2)
#define RUNS 9

typedef struct {
  double *row, bodyC, probeC, duty;
} State;
typedef struct {
  double *row, bodyC, radiatedW, outJ, latentJ, keptJ, powerW;
} Tried;
typedef struct {
  double heatInJ, heatOutJ, latentJ, missJ, switches, storedJ;
} Tally;
typedef struct {
  double *stage, *from, *sources, *ambient, *scratch;
} Work;

static double film(double diameterM, double delta, double meanC) {
  double t = fmax(-40, fmin(390, meanC)) + 273.15, root = t * sqrt(t);
  double density = 101325 / (287.042 * t), viscosity = (1.458e-6 * root) / (t + 110.4);
  double k = (2.64638e-3 * root) / (t + 245.4 * exp((-12 * M_LN10) / t));
  double diffusivity = k / (density * CP), prandtl = (viscosity * CP) / k;
  double rayleigh = (GRAVITY * (1 / t) * fmax(delta, 0.01) * (diameterM * diameterM * diameterM)) /
                    ((viscosity / density) * diffusivity);
  double half = sqrt(0.469 / prandtl), ninth = cbrt(cbrt(1 + half * sqrt(sqrt(sqrt(half)))));
  double bracket = ninth * ninth * (ninth * ninth), laminar = (0.589 * sqrt(sqrt(rayleigh))) / bracket;
  double turbulent = (7.44e-8 * rayleigh) / (bracket * bracket * bracket * bracket);
  return ((2 + laminar * sqrt(sqrt(cbrt(1 + turbulent)))) * k) / diameterM;
}

static double radiatedW(const Box *b, double bodyC, double seenK4) {
  double k = bodyC + 273.15;
  return b->bodyEmissivity * SIGMA * b->bodyAreaM2 * (k * k * (k * k) - seenK4);
}

static void around(const Box *b, const double *row, double *airC, double *seenK4) {
  double sum = 0, k4 = 0;
  for (int s = 0; s < b->patches; s++) {
    double w = b->longWave[s], k = row[b->air + s] + 273.15, k2 = k * k;
    sum += w;
    k4 += w * k2 * k2;
  }
  *seenK4 = k4 / sum;
  *airC = 0;
  for (int i = 0; i < b->stands; i++) *airC += b->standWeight[i] * row[(int)b->standNode[i]];
}

/* body after an implicit step, and the sources of the box for that stage */
static double heaterStage(const Box *b, const double *row, double guessC, double fromC, double powerW, double perS,
                          const Work *w, double *conv, double *rad) {
  double airC, seenK4, t = guessC, held = b->bodyCapacity * perS;
  around(b, row, &airC, &seenK4);
  for (int i = 0; i < 40; i++) {
    double k = t + 273.15, h = film(b->bodyDiameterM, fabs(t - airC), (t + airC) / 2);
    double slopeAir = 1.25 * h * b->bodyAreaM2, slopeSeen = 4 * b->bodyEmissivity * SIGMA * b->bodyAreaM2 * k * k * k;
    *conv = h * b->bodyAreaM2 * (t - airC);
    *rad = radiatedW(b, t, seenK4);
    double step = (powerW * (1 - b->shortWaveFrac) - *conv - *rad - held * (t - fromC)) / (slopeAir + slopeSeen + held);
    t += fmax(-150, fmin(150, step));
    if (fabs(step) < 1e-5) {
      *conv += slopeAir * step;
      *rad += slopeSeen * step;
      break;
    }
  }
  for (int a = 0; a < b->air; a++) w->sources[a] = w->ambient[a] + *conv * b->plumeAir[a];
  for (int s = 0; s < b->patches; s++)
    w->sources[b->air + s] =
        w->ambient[b->air + s] + *rad * b->longWave[s] + powerW * b->shortWaveFrac * b->shortWave[s] +
        *conv * b->plumePatch[s];
  return t;
}

static double heatOutW(const Box *b, const Net *net, const double *row, double roomC) {
  double sum = 0;
  int at = b->air + b->patches;
  for (int a = 0; a < b->air; a++) sum += net->exchange[a] * CP * (row[a] - roomC);
  for (int i = 0; i < net->streams; i++)
    if (net->stream[i].to < 0) sum += net->stream[i].kgPerS * CP * (row[net->stream[i].from] - roomC);
  for (int s = 0; s < b->patches; s++) {
    int last = (int)b->first[s + 1];
    double outer = last > (int)b->first[s] ? row[at + last - 1] : row[b->air + s];
    sum += net->outerLink[s] * (outer - net->outsideC[s]);
  }
  return sum;
}

static double latentW(const Box *b, const Water *w, const double *row) {
  double sum = 0;
  for (int a = 0; a < b->air; a++) sum += w->airW[a];
  for (int s = 0; s < b->patches; s++)
    sum += w->surfaceW[s] - w->slope[s] * (row[b->air + s] - w->atSurfaceC[s]);
  return sum;
}

static double storedJ(const Box *b, const double *row) {
  double sum = 0;
  for (int k = 0; k < b->air + b->patches + b->behind; k++) sum += b->capacity[k] * row[k];
  return sum;
}

static double keptW(const Box *b, double conv, double rad, double shortWaveW) {
  double air = 0, lit = 0, shone = 0;
  for (int a = 0; a < b->air; a++) air += b->plumeAir[a];
  for (int s = 0; s < b->patches; s++) {
    air += b->plumePatch[s];
    lit += b->longWave[s];
    shone += b->shortWave[s];
  }
  return conv * air + rad * lit + shortWaveW * shone;
}

static void heatStep(const Box *b, const Net *net, const Factored *f, const Water *water, const State *state,
                     double duty, double roomC, Work *w, Tried *tried) {
  double h = b->stepS, perS = 1 / (GAMMA * h), lift = (1 - GAMMA) / GAMMA, powerW = b->ratedW * duty, conv, rad;
  int n = b->air + b->patches + b->behind;
  for (int a = 0; a < b->air; a++) w->ambient[a] = water->airW[a];
  for (int s = 0; s < b->patches; s++)
    w->ambient[b->air + s] = water->surfaceW[s] + water->slope[s] * water->atSurfaceC[s];
  double one = heaterStage(b, state->row, state->bodyC, state->bodyC, powerW, perS, w, &conv, &rad);
  solveNetwork(b, net, f, w->sources, state->row, roomC, w->stage, w->scratch);
  double keptOne = keptW(b, conv, rad, powerW * b->shortWaveFrac);
  for (int k = 0; k < n; k++) w->from[k] = state->row[k] + lift * (w->stage[k] - state->row[k]);
  double bodyFrom = state->bodyC + lift * (one - state->bodyC);
  tried->bodyC = heaterStage(b, w->stage, one, bodyFrom, powerW, perS, w, &conv, &rad);
  solveNetwork(b, net, f, w->sources, w->from, roomC, tried->row, w->scratch);
  tried->radiatedW = rad;
  tried->powerW = powerW;
  tried->outJ =
      h * ((1 - GAMMA) * heatOutW(b, net, w->stage, roomC) + GAMMA * heatOutW(b, net, tried->row, roomC));
  tried->latentJ = h * ((1 - GAMMA) * latentW(b, water, w->stage) + GAMMA * latentW(b, water, tried->row));
  tried->keptJ = h * ((1 - GAMMA) * keptOne + GAMMA * keptW(b, conv, rad, powerW * b->shortWaveFrac));
}

static double probe(const Box *b, const double *row, double rad, double shortWaveW) {
  double v = 0;
  for (int a = 0; a < b->air; a++) v += b->readAir[a] * row[a];
  for (int s = 0; s < b->patches; s++) v += b->readSurface[s] * row[b->air + s];
  return v + b->readRadiated * rad + b->readShortWave * shortWaveW;
}

static double lagged(const Box *b, double reading, double from, double to) {
  double lag = b->probeLagS, decay = exp(-b->stepS / lag), slope = (to - from) / b->stepS;
  return to - slope * lag + (reading - from + slope * lag) * decay;
}

static double roomAt(const Box *b, double hour) {
  double h = fmod(fmod(hour, 24) + 24, 24);
  int rising = h >= 5 && h < 15;
  double part = rising ? (h - 5) / 10 : fmod(h - 15 + 24, 24) / 14, c = (1 - cos(M_PI * part)) / 2;
  return rising ? b->lowC + (b->highC - b->lowC) * c : b->highC - (b->highC - b->lowC) * c;
}

static void start(const Box *b, State *s, Water *w, Tally *t) {
  int np = b->patches;
  memcpy(s->row, b->startRow, sizeof(double) * (b->air + np + b->behind));
  s->bodyC = b->startBodyC, s->probeC = b->startProbeC, s->duty = b->startDuty;
  memcpy(w->ratio, b->startRatio, sizeof(double) * b->air);
  memcpy(w->airW, b->startLatent, sizeof(double) * b->air);
  memcpy(w->surfaceW, b->startLatent + b->air, sizeof(double) * np);
  memcpy(w->slope, b->startLatent + b->air + np, sizeof(double) * np);
  memcpy(w->atSurfaceC, b->startLatent + b->air + 2 * np, sizeof(double) * np);
  w->waterIn = w->waterOut = w->condensed = 0;
  memset(t, 0, sizeof *t);
}

static void day(const Box *b, State *s, Net *net, Factored *f, Water *water, Work *w, Tried *tried, Tally *tally,
                double *renewedC, double *hourly) {
  int steps = (int)lround(86400 / b->stepS), have = 0, dayWas = -1;
  double h = b->stepS, renewedAt = 0, airC, seenK4;
  for (int n = 0; n < steps; n++) {
    double hour = n * h / 3600, roomC = roomAt(b, hour + h / 7200), at = fmod(hour + 1e-9, 24);
    int isDay = at >= b->dayStartH && at < b->dayEndH;
    double moved = 0;
    for (int i = 0; i < b->patches && have; i++) moved = fmax(moved, fabs(renewedC[i] - s->row[b->air + i]));
    if (!have || moved > 4 || n * h - renewedAt >= b->renewS - 1e-6 || dayWas != isDay) {
      around(b, s->row, &airC, &seenK4);
      double conv = film(b->bodyDiameterM, fabs(s->bodyC - airC), (s->bodyC + airC) / 2) * b->bodyAreaM2 * (s->bodyC - airC);
      if (have) waterStep(b, net, s->row, water, n * h - renewedAt);
      networkAt(b, s->row, roomC, b->heaterRise * fmax(0, conv), net);
      for (int i = 0; i < b->patches; i++) net->own[i] += water->slope[i];
      factorNetwork(b, net, 1 / (GAMMA * h), f);
      have = 1, renewedAt = n * h, dayWas = isDay;
      memcpy(renewedC, s->row + b->air, sizeof(double) * b->patches);
    } else
      for (int i = 0; i < b->patches; i++) net->outsideC[i] = roomC;
    around(b, s->row, &airC, &seenK4);
    double settled = probe(b, s->row, radiatedW(b, s->bodyC, seenK4), 0), set = isDay ? b->setDayC : b->setNightC;
    heatStep(b, net, f, water, s, s->duty, roomC, w, tried);
    double reading = lagged(b, s->probeC, settled, probe(b, tried->row, tried->radiatedW, tried->powerW * b->shortWaveFrac)), next = s->duty;
    int on = s->duty > 0.5;
    double limit = on ? set + b->bandK / 2 : set - b->bandK / 2;
    int late = on ? s->probeC >= limit : s->probeC <= limit;
    int crosses = on ? s->probeC < limit && reading >= limit : s->probeC > limit && reading <= limit;
    if (late || crosses) {
      double share = late || reading == s->probeC ? 0 : (limit - s->probeC) / (reading - s->probeC);
      heatStep(b, net, f, water, s, on ? share : 1 - share, roomC, w, tried);
      reading = lagged(b, s->probeC, settled, probe(b, tried->row, tried->radiatedW, tried->powerW * b->shortWaveFrac));
      next = on ? 0 : 1;
      tally->switches++;
    }
    double change = storedJ(b, tried->row) - storedJ(b, s->row);
    tally->heatInJ += tried->powerW * h;
    tally->heatOutJ += tried->outJ;
    tally->latentJ += tried->latentJ;
    tally->missJ += fabs(tried->keptJ + tried->latentJ - tried->outJ - change);
    tally->storedJ += change + b->bodyCapacity * (tried->bodyC - s->bodyC);
    double *swap = s->row;
    s->row = tried->row, tried->row = swap;
    s->bodyC = tried->bodyC, s->probeC = reading, s->duty = next;
    if ((n + 1) % (int)lround(3600 / h) == 0) *hourly++ = reading;
  }
  if (have) waterStep(b, net, s->row, water, steps * h - renewedAt);
}

static int rising(const void *a, const void *b) { return *(double *)a < *(double *)b ? -1 : 1; }

int main(int argc, char **argv) {
  if (argc != 3) return fprintf(stderr, "usage: twin BOX ANSWERS\n"), 2;
  Box *b = readBox(argv[1]);
  int np = b->patches, na = b->air, size = na + np, row = size + b->behind, routes = b->openings * b->openings;
  State s = {numbers(row), 0, 0, 0};
  Water water = {numbers(na), numbers(na), numbers(np), numbers(np), numbers(np), 0, 0, 0};
  Net net = {0, numbers(na * (2 * b->layers + 1)), numbers(np), numbers(np), numbers(np * np), numbers(np),
             numbers(na), numbers(np), numbers(np), numbers(np), numbers(na), 0,
             calloc(routes * (na + 2) + 1, sizeof(Stream))};
  Factored f = {numbers(np * np), numbers(na * (2 * b->layers + 1)), numbers(np), numbers(b->behind),
                numbers(b->behind), numbers(row)};
  Work w = {numbers(row), numbers(row), numbers(size), numbers(size), numbers(size)};
  Tried tried = {numbers(row), 0, 0, 0, 0, 0, 0};
  Tally tally;
  double took[RUNS], hourly[24], *renewedC = numbers(np);
  for (int i = 0; i < RUNS; i++) {
    start(b, &s, &water, &tally);
    struct timespec from, to;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &from);
    day(b, &s, &net, &f, &water, &w, &tried, &tally, renewedC, hourly);
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &to);
    took[i] = (to.tv_sec - from.tv_sec) * 1e3 + (to.tv_nsec - from.tv_nsec) / 1e6;
  }
  qsort(took, RUNS, sizeof *took, rising);
  FILE *out = fopen(argv[2], "wb");
  if (!out) return 3;
  double books[] = {tally.heatInJ, tally.heatOutJ, tally.latentJ, tally.storedJ, tally.switches,
                    water.waterIn, water.waterOut, water.condensed, s.bodyC, s.probeC};
  fwrite(s.row, sizeof(double), row, out);
  fwrite(hourly, sizeof(double), 24, out);
  fwrite(books, sizeof(double), sizeof books / sizeof *books, out);
  fclose(out);
  struct rusage use;
  getrusage(RUSAGE_SELF, &use);
  printf("%.3f %ld\n", took[RUNS / 2], use.ru_maxrss);
  return 0;
}
