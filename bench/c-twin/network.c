/* Conductances at the present temperatures, elimination of panels and air, and one solve. */
#include "twin.h"
#include <math.h>
#include <string.h>

static double cubed(double x) { return x * x * x; }
static double blend(double laminar, double turbulent) {
  return cbrt(sqrt(cubed(laminar) * cubed(laminar) + cubed(turbulent) * cubed(turbulent)));
}
static double vertical(double d, double heightM) {
  return blend(1.5 * sqrt(sqrt(d / heightM)), 1.23 * cbrt(d));
}
static double unstable(double d, double diameterM) {
  return blend(1.4 * sqrt(sqrt(d / diameterM)), 1.63 * cbrt(d));
}
static double stable(double d, double diameterM) { return 0.6 * pow(d / (diameterM * diameterM), 0.2); }

static double insideFilm(const Box *b, int facing, double delta) {
  double d = fmax(0.1, fabs(delta));
  if (facing == 2) return vertical(d, b->heightM);
  double diameter = (2 * b->lengthM * b->depthM) / (b->lengthM + b->depthM);
  double driven = facing == 0 ? delta : -delta;
  double part = 1 / (1 + exp(-driven / 0.3));
  return part * unstable(d, diameter) + (1 - part) * stable(d, diameter);
}

/* between two air nodes */
static void link(const Box *b, double *air, int from, int to, double g) {
  int w = b->layers, wide = 2 * w + 1, i = (int)b->order[from], j = (int)b->order[to];
  air[i * wide + w] += g;
  air[j * wide + w] += g;
  air[i * wide + w + j - i] -= g;
  air[j * wide + w + i - j] -= g;
}

static void radiation(const Box *b, const double *surfaceC, Net *net) {
  int n = b->patches;
  memset(net->radiantSum, 0, sizeof(double) * n);
  for (int i = 0; i < n; i++) {
    double ti = surfaceC[i] + 273.15, ti2 = ti * ti, sum = 0, *row = net->radiant + i * n;
    for (int j = 0; j < i; j++) {
      double tj = surfaceC[j] + 273.15;
      double g = SIGMA * b->exchange[i * n + j] * (ti2 + tj * tj) * (ti + tj);
      row[j] = g;
      net->radiant[j * n + i] = g;
      net->radiantSum[j] += g;
      sum += g;
    }
    row[i] = 0;
    net->radiantSum[i] += sum;
  }
}

static void mixing(const Box *b, const double *airC, double risingW, Net *net) {
  int c = b->columns, l = b->layers;
  double mean = 0;
  for (int a = 0; a < b->air; a++) mean += airC[a];
  double airK = mean / b->air + 273.15, density = 353 / airK, floorM2 = b->edgeM[c] * b->depthM;
  double flux = sqrt(risingW * risingW + 0.5 * 0.5) / floorM2 / (density * CP);
  double velocity = cbrt((GRAVITY / airK) * flux * b->heightM), capacity = density * CP;
  double eddyAlong = b->mixingAlongFitted * b->mixingAlong * velocity * b->heightM;
  double eddyUp = b->mixingUpFitted * b->mixingUp * velocity * b->heightM;
  double eddyOver = 0.3 * velocity * b->heightM, layerM = b->heightM / l;
  for (int i = 0; i < c - 1; i++) {
    double g = (capacity * eddyAlong * b->depthM * layerM) / (b->columnXM[i + 1] - b->columnXM[i]);
    for (int k = 0; k < l; k++) link(b, net->air, k * c + i, k * c + i + 1, g);
  }
  for (int k = 0; k < l - 1; k++)
    for (int i = 0; i < c; i++) {
      double rise = airC[(k + 1) * c + i] - airC[k * c + i];
      double part = 1 / (1 + exp(-rise / 0.15));
      double eddy = pow(eddyUp, part) * pow(eddyOver, 1 - part);
      double g = (capacity * eddy * b->depthM * (b->edgeM[i + 1] - b->edgeM[i])) / layerM;
      link(b, net->air, k * c + i, (k + 1) * c + i, g);
    }
}

static void outerLinks(const Box *b, const double *row, double roomC, Net *net) {
  double diameter = (2 * b->lengthM * b->depthM) / (b->lengthM + b->depthM);
  int at = b->air + b->patches;
  for (int s = 0; s < b->patches; s++) {
    int last = (int)b->first[s + 1];
    double outer = last > (int)b->first[s] ? row[at + last - 1] : row[b->air + s];
    double delta = fmax(0.2, fabs(outer - roomC)), convection;
    if (b->facing[s] == 2) convection = vertical(delta, b->heightM);
    else {
      int driven = (b->facing[s] == 1) == (outer > roomC);
      convection = driven ? unstable(delta, diameter) : stable(delta, diameter);
    }
    double mean = (outer + roomC) / 2 + 273.15;
    double h = convection * b->outsideFilm + 0.9 * 4 * SIGMA * mean * mean * mean;
    net->outsideC[s] = roomC;
    net->outerLink[s] = b->areaM2[s] / (b->baseResistance[s] + 1 / h);
  }
}

void networkAt(const Box *b, const double *row, double roomC, double bodiesW, Net *net) {
  const double *airC = row, *surfaceC = row + b->air;
  int w = b->layers, wide = 2 * w + 1;
  double risingW = bodiesW;
  memset(net->air, 0, sizeof(double) * b->air * wide);
  for (int s = 0; s < b->patches; s++) {
    int a = (int)b->patchLayer[s] * b->columns + (int)b->patchColumn[s];
    double delta = surfaceC[s] - airC[a];
    double h = insideFilm(b, (int)b->facing[s], delta) * b->insideFilm;
    double g = h * b->areaM2[s];
    net->film[s] = h;
    if (delta > 0) risingW += b->rise[s] * g * delta;
    net->toAir[s] = g;
    net->own[s] = g;
    net->air[(int)b->airAt[s] * wide + w] += g;
  }
  radiation(b, surfaceC, net);
  mixing(b, airC, risingW, net);
  ventilation(b, airC, roomC, net);
  for (int a = 0; a < b->air; a++) net->airToRoom[a] = 0;
  for (int i = 0; i < net->streams; i++) {
    Stream s = net->stream[i];
    double flow = s.kgPerS * CP;
    if (s.to < 0) continue;
    int at = (int)b->order[s.to] * wide + w;
    net->air[at] += flow;
    if (s.from < 0) net->airToRoom[s.to] += flow;
    else net->air[at + (int)b->order[s.from] - (int)b->order[s.to]] -= flow;
  }
  for (int a = 0; a < b->air; a++) {
    double flow = net->exchange[a] * CP;
    net->air[(int)b->order[a] * wide + w] += flow;
    net->airToRoom[a] += flow;
  }
  outerLinks(b, row, roomC, net);
}

void factorNetwork(const Box *b, const Net *net, double perS, Factored *f) {
  int n = b->patches, na = b->air, at = na + n, w = b->layers, wide = 2 * w + 1;
  double answers[na * n];
  for (int k = 0; k < at + b->behind; k++) f->held[k] = b->capacity[k] * perS;
  for (int k = 0; k < n * n; k++) f->lu[k] = -net->radiant[k];
  for (int s = 0; s < n; s++) {
    double beyond = net->outerLink[s];
    for (int k = (int)b->first[s + 1] - 1; k >= (int)b->first[s]; k--) {
      double g = b->conductance[k], p = 1 / (f->held[at + k] + g + beyond);
      f->pivot[k] = p;
      f->gain[k] = g * p;
      beyond = g - g * g * p;
    }
    f->lu[s * n + s] = net->radiantSum[s] + net->own[s] + beyond + f->held[na + s];
    f->toAir[s] = net->toAir[s];
  }
  memcpy(f->air, net->air, sizeof(double) * na * wide);
  for (int a = 0; a < na; a++) f->air[(int)b->order[a] * wide + w] += f->held[a];
  factorBand(f->air, na, w);
  memset(answers, 0, sizeof answers);
  for (int s = 0; s < n; s++) answers[(int)b->airAt[s] * n + s] = f->toAir[s];
  solveBandRows(f->air, na, w, answers, n);
  for (int s = 0; s < n; s++) {
    double *restrict row = f->lu + s * n, *restrict answer = answers + (int)b->airAt[s] * n;
    for (int j = 0; j < n; j++) row[j] -= f->toAir[s] * answer[j];
  }
  factorDense(f->lu, n);
}

/* sources: air nodes, then surfaces [W] */
void solveNetwork(const Box *b, const Net *net, const Factored *f, const double *restrict sources,
                  const double *restrict before, double roomC, double *restrict out, double *restrict scratch) {
  int n = b->patches, na = b->air, at = na + n;
  for (int k = 0; k < at + b->behind; k++) out[k] = f->held[k] * before[k];
  for (int a = 0; a < na; a++) {
    double v = out[a] + sources[a] + net->airToRoom[a] * roomC;
    out[a] = v;
    scratch[(int)b->order[a]] = v;
  }
  for (int s = 0; s < n; s++) {
    double carry = net->outerLink[s] * net->outsideC[s];
    for (int k = (int)b->first[s + 1] - 1; k >= (int)b->first[s]; k--) {
      double v = out[at + k] + carry;
      out[at + k] = v;
      carry = v * f->gain[k];
    }
    scratch[na + s] = out[na + s] + sources[na + s] + carry;
  }
  solveBand(f->air, na, b->layers, scratch);
  for (int s = 0; s < n; s++) scratch[na + s] += f->toAir[s] * scratch[(int)b->airAt[s]];
  solveDense(f->lu, n, scratch + na);
  for (int a = 0; a < na; a++) scratch[(int)b->order[a]] = out[a];
  for (int s = 0; s < n; s++) {
    double t = scratch[na + s];
    out[na + s] = t;
    scratch[(int)b->airAt[s]] += f->toAir[s] * t;
  }
  solveBand(f->air, na, b->layers, scratch);
  for (int a = 0; a < na; a++) out[a] = scratch[(int)b->order[a]];
  for (int s = 0; s < n; s++) {
    double inner = out[na + s];
    for (int k = (int)b->first[s]; k < (int)b->first[s + 1]; k++) {
      inner = out[at + k] * f->pivot[k] + f->gain[k] * inner;
      out[at + k] = inner;
    }
  }
}
