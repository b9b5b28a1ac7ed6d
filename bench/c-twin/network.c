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

static void link(double *core, int size, int i, int j, double g) {
  core[i * size + i] += g;
  core[j * size + j] += g;
  core[i * size + j] -= g;
  core[j * size + i] -= g;
}

static void radiation(const Box *b, const double *surfaceC, Net *net) {
  int n = b->patches, size = net->size, first = b->air;
  for (int i = 0; i < n; i++) {
    double ti = surfaceC[i] + 273.15, ti2 = ti * ti, sum = 0;
    double *row = net->core + (first + i) * size + first;
    for (int j = 0; j < i; j++) {
      double tj = surfaceC[j] + 273.15;
      double g = SIGMA * b->exchange[i * n + j] * (ti2 + tj * tj) * (ti + tj);
      double *other = net->core + (first + j) * size + first;
      row[j] -= g;
      other[i] -= g;
      other[j] += g;
      sum += g;
    }
    row[i] += sum;
  }
}

static void mixing(const Box *b, const double *airC, double drivenW, Net *net) {
  int c = b->columns, l = b->layers;
  double mean = 0;
  for (int a = 0; a < b->air; a++) mean += airC[a];
  double airK = mean / b->air + 273.15, density = 353 / airK, floorM2 = b->edgeM[c] * b->depthM;
  double flux = fmax(drivenW, 0.5) / floorM2 / (density * CP);
  double velocity = cbrt((GRAVITY / airK) * flux * b->heightM), capacity = density * CP;
  double eddyAlong = b->mixingAlongFitted * b->mixingAlong * velocity * b->heightM;
  double eddyUp = b->mixingUpFitted * b->mixingUp * velocity * b->heightM;
  double eddyOver = 0.3 * velocity * b->heightM, layerM = b->heightM / l;
  for (int i = 0; i < c - 1; i++) {
    double g = (capacity * eddyAlong * b->depthM * layerM) / (b->columnXM[i + 1] - b->columnXM[i]);
    for (int k = 0; k < l; k++) link(net->core, net->size, k * c + i, k * c + i + 1, g);
  }
  for (int k = 0; k < l - 1; k++)
    for (int i = 0; i < c; i++) {
      double rise = airC[(k + 1) * c + i] - airC[k * c + i];
      double part = 1 / (1 + exp(-rise / 0.15));
      double eddy = pow(eddyUp, part) * pow(eddyOver, 1 - part);
      double g = (capacity * eddy * b->depthM * (b->edgeM[i + 1] - b->edgeM[i])) / layerM;
      link(net->core, net->size, k * c + i, (k + 1) * c + i, g);
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

void networkAt(const Box *b, const double *row, double roomC, double convectedW, Net *net) {
  const double *airC = row, *surfaceC = row + b->air;
  int size = net->size;
  double drivenW = convectedW;
  memset(net->core, 0, sizeof(double) * size * size);
  for (int s = 0; s < b->patches; s++) {
    int a = (int)b->patchLayer[s] * b->columns + (int)b->patchColumn[s];
    double delta = surfaceC[s] - airC[a];
    double h = insideFilm(b, (int)b->facing[s], delta) * b->insideFilm;
    double g = h * b->areaM2[s];
    net->film[s] = h;
    if (delta > 0) drivenW += g * delta;
    link(net->core, size, a, b->air + s, g);
  }
  radiation(b, surfaceC, net);
  mixing(b, airC, drivenW, net);
  ventilation(b, airC, roomC, net);
  for (int a = 0; a < b->air; a++) net->airToRoom[a] = 0;
  for (int i = 0; i < net->streams; i++) {
    Stream s = net->stream[i];
    double w = s.kgPerS * CP;
    if (s.to < 0) continue;
    net->core[s.to * size + s.to] += w;
    if (s.from < 0) net->airToRoom[s.to] += w;
    else net->core[s.to * size + s.from] -= w;
  }
  for (int a = 0; a < b->air; a++) {
    double w = net->exchange[a] * CP;
    net->core[a * size + a] += w;
    net->airToRoom[a] += w;
  }
  outerLinks(b, row, roomC, net);
}

void factorNetwork(const Box *b, const Net *net, double perS, Factored *f) {
  int n = b->patches, na = b->air, at = na + n, w = b->layers, wide = 2 * w + 1, size = net->size;
  double answer[na * na], through[n];
  for (int k = 0; k < at + b->behind; k++) f->held[k] = b->capacity[k] * perS;
  for (int s = 0; s < n; s++) {
    memcpy(f->lu + s * n, net->core + (na + s) * size + na, sizeof(double) * n);
    double beyond = net->outerLink[s];
    for (int k = (int)b->first[s + 1] - 1; k >= (int)b->first[s]; k--) {
      double g = b->conductance[k], p = 1 / (f->held[at + k] + g + beyond);
      f->pivot[k] = p;
      f->gain[k] = g * p;
      beyond = g - g * g * p;
    }
    f->lu[s * n + s] += beyond + f->held[na + s];
    int a = (int)b->patchLayer[s] * b->columns + (int)b->patchColumn[s];
    f->toAir[s] = -net->core[a * size + na + s];
  }
  memset(f->air, 0, sizeof(double) * na * wide);
  for (int a = 0; a < na; a++) {
    int row = (int)b->order[a];
    for (int c = 0; c < na; c++) {
      int reach = (int)b->order[c] - row;
      if (reach >= -w && reach <= w) f->air[row * wide + w + reach] = net->core[a * size + c];
    }
    f->air[row * wide + w] += f->held[a];
  }
  factorBand(f->air, na, w);
  memset(answer, 0, sizeof answer);
  for (int from = 0; from < na; from++) {
    answer[from * na + from] = 1;
    solveBand(f->air, na, w, answer + from * na, from);
  }
  for (int to = 0; to < na; to++) {
    for (int j = 0; j < n; j++) through[j] = f->toAir[j] * answer[(int)b->airAt[j] * na + to];
    for (int i = 0; i < n; i++) {
      if ((int)b->airAt[i] != to || f->toAir[i] == 0) continue;
      for (int j = 0; j < n; j++) f->lu[i * n + j] -= f->toAir[i] * through[j];
    }
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
  solveBand(f->air, na, b->layers, scratch, 0);
  for (int s = 0; s < n; s++) scratch[na + s] += f->toAir[s] * scratch[(int)b->airAt[s]];
  solveDense(f->lu, n, scratch + na);
  for (int a = 0; a < na; a++) scratch[(int)b->order[a]] = out[a];
  for (int s = 0; s < n; s++) {
    double t = scratch[na + s];
    out[na + s] = t;
    scratch[(int)b->airAt[s]] += f->toAir[s] * t;
  }
  solveBand(f->air, na, b->layers, scratch, 0);
  for (int a = 0; a < na; a++) out[a] = scratch[(int)b->order[a]];
  for (int s = 0; s < n; s++) {
    double inner = out[na + s];
    for (int k = (int)b->first[s]; k < (int)b->first[s + 1]; k++) {
      inner = out[at + k] * f->pivot[k] + f->gain[k] * inner;
      out[at + k] = inner;
    }
  }
}
