/* Reads the box as the bench wrote it: 8-byte numbers, in the order of bench/twin-data.ts. */
#include "twin.h"
#include <stdio.h>
#include <stdlib.h>

static FILE *file;

double *numbers(int n) {
  double *x = calloc(n > 0 ? n : 1, sizeof(double));
  if (!x) exit(3);
  return x;
}
static double *take(int n) {
  double *x = numbers(n);
  if (fread(x, sizeof(double), n, file) != (size_t)n) {
    fprintf(stderr, "the box is shorter than expected\n");
    exit(3);
  }
  return x;
}
static double one(void) {
  double *x = take(1), v = *x;
  free(x);
  return v;
}

Box *readBox(const char *path) {
  Box *b = calloc(1, sizeof(Box));
  file = fopen(path, "rb");
  if (!b || !file) {
    fprintf(stderr, "cannot read %s\n", path);
    exit(3);
  }
  b->columns = (int)one(), b->layers = (int)one(), b->air = (int)one(), b->patches = (int)one();
  b->behind = (int)one(), b->openings = (int)one(), b->stands = (int)one();
  double *scalars[] = {&b->lengthM, &b->depthM, &b->heightM, &b->insideFilm, &b->outsideFilm, &b->mixingAlong,
                       &b->mixingUp, &b->leakage, &b->evaporation, &b->mixingAlongFitted, &b->mixingUpFitted,
                       &b->stepS, &b->renewS, &b->probeLagS, &b->setDayC, &b->setNightC, &b->bandK, &b->dayStartH,
                       &b->dayEndH, &b->lowC, &b->highC, &b->roomRatio, &b->ratedW, &b->bodyDiameterM,
                       &b->bodyEmissivity, &b->bodyAreaM2, &b->bodyCapacity, &b->readRadiated, &b->bowlNode,
                       &b->bowlDiameterM, &b->shortWaveFrac, &b->readShortWave,
                       &b->heaterRise, &b->startBodyC, &b->startProbeC, &b->startDuty};
  for (unsigned i = 0; i < sizeof scalars / sizeof *scalars; i++) *scalars[i] = one();
  int n = b->patches, row = b->air + n + b->behind;
  b->edgeM = take(b->columns + 1), b->columnXM = take(b->columns), b->first = take(n + 1), b->capacity = take(row);
  b->conductance = take(b->behind), b->airAt = take(n), b->order = take(b->air), b->facing = take(n), b->rise = take(n);
  b->patchColumn = take(n), b->patchLayer = take(n), b->areaM2 = take(n), b->baseResistance = take(n);
  b->exchange = take(n * n), b->airVolume = take(b->air), b->longWave = take(n);
  b->shortWave = take(n), b->plumeAir = take(b->air);
  b->plumePatch = take(n), b->standNode = take(b->stands), b->standWeight = take(b->stands);
  b->readAir = take(b->air), b->readSurface = take(n), b->openZ = take(b->openings), b->openM2 = take(b->openings);
  b->openHeight = take(b->openings), b->openNode = take(b->openings), b->startRow = take(row);
  b->startRatio = take(b->air), b->startLatent = take(b->air + 3 * n);
  fclose(file);
  return b;
}
