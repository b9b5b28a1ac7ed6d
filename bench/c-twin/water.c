/* Water in the air of the box after a step of time, as in src/physics/moisture.ts: bowl and cold walls. */
#include "twin.h"
#include <math.h>
#include <string.h>

#define PRESSURE 101325.0
#define DENSITY 1.19

static double saturationPa(double c) {
  double t = c + 273.15;
  if (c <= 0.01)
    return exp(-5.6745359e3 / t + 6.3925247 +
               t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 + t * -9.484024e-13))) +
               4.1635019 * log(t));
  return exp(-5.8002206e3 / t + 1.3914993 + t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8)) +
             6.5459673 * log(t));
}
static double ratioOf(double pa) { return (0.621945 * pa) / (PRESSURE - pa); }
static double saturatedRatio(double c) { return ratioOf(saturationPa(fmax(-40, fmin(90, c)))); }
static double heatOf(double c) { return 2501000 - 2361 * c; }
static double transferOf(double film, double density, double lewis) {
  return film / (density * CP * cbrt(lewis * lewis));
}

/* surplus of a bowl's surface at a water temperature [W/m2]; *transfer gets its mass transfer [m/s], *film its film */
static double bowlSurplus(double diameterM, double airC, double rh, double aroundC, double waterC, double *transfer,
                          double *film) {
  double airPa = rh * saturationPa(airC), waterPa = saturationPa(waterC), filmC = (airC + waterC) / 2;
  double t = filmC + 273.15, dry = PRESSURE / (287.042 * t), viscosity = (1.458e-6 * pow(t, 1.5)) / (t + 110.4);
  double k = (2.64638e-3 * pow(t, 1.5)) / (t + 245.4 * pow(10, -12 / t)), diffusivity = k / (dry * CP);
  double ratio = ratioOf((airPa + waterPa) / 2), w = ratioOf(waterPa), a = ratioOf(airPa);
  double density = (1 + ratio) / ((287.042 * t * (1 + ratio / 0.621945)) / PRESSURE);
  double drive = ((waterC + 273.15) * (1 + w / 0.621945)) / (1 + w) - ((airC + 273.15) * (1 + a / 0.621945)) / (1 + a);
  double lengthM = diameterM / 4;
  double rayleigh = (GRAVITY * (1 / t) * hypot(drive, 1) * pow(lengthM, 3)) / ((viscosity / dry) * diffusivity);
  double rising = 1 / (1 + exp(-drive / 0.3));
  double nusselt = rising * fmax(0.54 * pow(rayleigh, 0.25), 0.15 * cbrt(rayleigh)) +
                   (1 - rising) * (0.52 * pow(rayleigh, 0.2));
  *film = (fmax(1, nusselt) * k) / lengthM;
  *transfer = transferOf(*film, density, diffusivity / (2.6e-5 * pow(t / 298, 1.81)));
  double kg = (*transfer * (waterPa / (waterC + 273.15) - airPa / (airC + 273.15))) / 461.524;
  double radiant = 0.96 * SIGMA * (pow(aroundC + 273.15, 4) - pow(waterC + 273.15, 4));
  return *film * (airC - waterC) + radiant - kg * heatOf(waterC);
}

static double bowlAtRest(double diameterM, double airC, double rh, double aroundC, double *transfer, double *film) {
  double low = fmin(airC, aroundC) - 40, high = fmax(airC, aroundC) + 40;
  while (high - low > 1e-10) {
    double middle = (low + high) / 2;
    if (bowlSurplus(diameterM, airC, rh, aroundC, middle, transfer, film) > 0) low = middle;
    else high = middle;
  }
  double waterC = (low + high) / 2;
  bowlSurplus(diameterM, airC, rh, aroundC, waterC, transfer, film);
  return waterC;
}

typedef struct {
  int node, patch;
  double g, saturated;
} Exchange;

/* the bowl at its own balance: what it draws from the air, and from a face of 1 m2 for each K^4 above the water [W] */
typedef struct {
  double waterC, airW, perFaceW;
} Bowl;

static double fourth(double c) { return pow(c + 273.15, 4); }

static int exchanges(const Box *b, const Net *net, const double *row, const double *before, Exchange *list,
                     Bowl *drawn) {
  int n = 0, bowl = (int)b->bowlNode;
  double k4 = 0, area = 0, transfer, film;
  for (int s = 0; s < b->patches; s++) {
    k4 += b->areaM2[s] * fourth(row[b->air + s]);
    area += b->areaM2[s];
  }
  double airC = row[bowl], pa = (PRESSURE * before[bowl]) / (0.621945 + before[bowl]);
  double seenC = sqrt(sqrt(k4 / area)) - 273.15, rh = fmin(1, pa / saturationPa(airC));
  double waterC = bowlAtRest(b->bowlDiameterM, airC, rh, seenC, &transfer, &film);
  double bowlM2 = ((M_PI * b->bowlDiameterM * b->bowlDiameterM) / 4) * b->evaporation;
  list[n++] = (Exchange){bowl, -1, transfer * DENSITY * bowlM2, saturatedRatio(waterC)};
  *drawn = (Bowl){waterC, bowlM2 * film * (airC - waterC), (bowlM2 * 0.96 * SIGMA) / area};
  for (int s = 0; s < b->patches; s++) {
    if (b->facing[s] == 0) continue;
    int node = (int)b->patchLayer[s] * b->columns + (int)b->patchColumn[s];
    double k = transferOf(fmax(net->film[s], 0.5), DENSITY, 0.86) * DENSITY * b->areaM2[s];
    list[n++] = (Exchange){node, s, k, saturatedRatio(row[b->air + s])};
  }
  return n;
}

void waterStep(const Box *b, const Net *net, const double *row, Water *w, double dtS) {
  int na = b->air, np = b->patches, wet[np + 1], wets = 0;
  int band = b->layers, wide = 2 * band + 1;
  double still[na * wide], drives[na], matrix[na * wide], right[na], ratio[na];
  Exchange list[np + 1];
  Bowl bowl;
  int n = exchanges(b, net, row, w->ratio, list, &bowl);
  for (int i = 0; i < n; i++)
    if (list[i].patch < 0 || w->ratio[list[i].node] > list[i].saturated) wet[wets++] = i;
  for (int a = 0; a < na; a++) {
    int at = (int)b->order[a], from = at * wide;
    double toRoom = net->airToRoom[a] / CP + 1e-9, held = (b->airVolume[a] * DENSITY) / dtS, given = 0;
    for (int k = 0; k < wide; k++) {
      if (k == band) continue;
      double m = net->air[from + k] / CP;
      still[from + k] = m;
      given -= m;
    }
    still[from + band] = given + toRoom + held;
    drives[at] = toRoom * b->roomRatio + held * w->ratio[a];
  }
  for (int pass = 0; pass < 12; pass++) {
    memcpy(matrix, still, sizeof matrix);
    memcpy(right, drives, sizeof right);
    for (int i = 0; i < wets; i++) {
      Exchange e = list[wet[i]];
      int at = (int)b->order[e.node];
      matrix[at * wide + band] += e.g;
      right[at] += e.g * e.saturated;
    }
    factorBand(matrix, na, band);
    solveBand(matrix, na, band, right);
    for (int a = 0; a < na; a++) ratio[a] = right[(int)b->order[a]];
    int before = wets, same = 1;
    wets = 0;
    for (int i = 0; i < n; i++)
      if (list[i].patch < 0 || ratio[list[i].node] > list[i].saturated) {
        same = same && wets < before && wet[wets] == i;
        wet[wets++] = i;
      }
    if (same && wets == before) break;
  }
  memset(w->airW, 0, sizeof(double) * na);
  memset(w->surfaceW, 0, sizeof(double) * np);
  memset(w->slope, 0, sizeof(double) * np);
  for (int i = 0; i < wets; i++) {
    Exchange e = list[wet[i]];
    double kg = e.g * (e.saturated - ratio[e.node]), heat = heatOf(25);
    if (e.patch < 0) w->waterIn += kg * dtS;
    else {
      double c = row[na + e.patch];
      w->surfaceW[e.patch] -= kg * heat;
      w->slope[e.patch] += e.g * heat * (saturatedRatio(c + 0.5) - saturatedRatio(c - 0.5));
      w->condensed -= kg * dtS;
    }
  }
  w->airW[(int)b->bowlNode] -= bowl.airW;
  for (int s = 0; s < np; s++)
    w->surfaceW[s] -= bowl.perFaceW * b->areaM2[s] * (fourth(row[na + s]) - fourth(bowl.waterC));
  double out = 0;
  for (int a = 0; a < na; a++) out += (1e-9 + net->exchange[a]) * (ratio[a] - b->roomRatio);
  for (int i = 0; i < net->streams; i++)
    if (net->stream[i].to < 0) out += net->stream[i].kgPerS * (ratio[net->stream[i].from] - b->roomRatio);
  w->waterOut += out * dtS;
  memcpy(w->ratio, ratio, sizeof ratio);
  memcpy(w->atSurfaceC, row + na, sizeof(double) * np);
}
