/* The same day of the same box as src/physics/run.ts, in C: what the data are called. Units as in the TypeScript.
   Reads what the bench wrote, so that both run on the very same numbers. One heater with a body, one on/off thermostat. */
#ifndef TWIN_H
#define TWIN_H

#define CP 1006.0
#define SIGMA 5.670374419e-8
#define GRAVITY 9.81

typedef struct {
  int columns, layers, air, patches, behind, openings, stands;
  double lengthM, depthM, heightM;
  double insideFilm, outsideFilm, mixingAlong, mixingUp, leakage, evaporation, mixingAlongFitted, mixingUpFitted;
  double heaterRise;
  double stepS, renewS, probeLagS, setDayC, setNightC, bandK, dayStartH, dayEndH, lowC, highC, roomRatio;
  double ratedW, bodyDiameterM, bodyEmissivity, bodyAreaM2, bodyCapacity, readRadiated, shortWaveFrac, readShortWave;
  double bowlNode, bowlDiameterM;
  double *edgeM, *columnXM, *first, *capacity, *conductance, *airAt, *order;
  double *facing, *rise, *patchColumn, *patchLayer, *areaM2, *baseResistance, *exchange, *airVolume;
  double *longWave, *shortWave, *plumeAir, *plumePatch, *standNode, *standWeight, *readAir, *readSurface;
  double *openZ, *openM2, *openHeight, *openNode;
  double *startRow, *startRatio, *startLatent; /* startLatent: airW, surfaceW, slope, atSurfaceC */
  double startBodyC, startProbeC, startDuty;
} Box;

typedef struct {
  int from, to;
  double kgPerS;
} Stream;

typedef struct {
  int streams;
  /* air: a band column by column; own: film and wet face of each surface; radiant: long wave of each pair, and its sums */
  double *air, *toAir, *own, *radiant, *radiantSum, *airToRoom, *outerLink, *outsideC, *film, *exchange, fresh;
  Stream *stream;
} Net;

typedef struct {
  double *lu, *air, *toAir, *pivot, *gain, *held;
} Factored;

typedef struct {
  double *ratio, *airW, *surfaceW, *slope, *atSurfaceC;
  double waterIn, waterOut, condensed;
} Water;

Box *readBox(const char *path);
double *numbers(int n);

void networkAt(const Box *b, const double *row, double roomC, double bodiesW, Net *net);
void factorNetwork(const Box *b, const Net *net, double perS, Factored *f);
void solveNetwork(const Box *b, const Net *net, const Factored *f, const double *sources, const double *before,
                  double roomC, double *out, double *scratch);
void ventilation(const Box *b, const double *airC, double roomC, Net *net);
void waterStep(const Box *b, const Net *net, const double *row, Water *w, double dtS);
void factorDense(double *a, int n);
void solveDense(const double *lu, int n, double *x);
void factorBand(double *a, int n, int w);
void solveBand(const double *a, int n, int w, double *x);
void solveBandRows(const double *a, int n, int w, double *x, int many);
#endif
