/* Air that buoyancy drives through the openings, as in src/physics/ventilation.ts. */
#include "twin.h"
#include <math.h>

static double flowsAt(const Box *b, const double *lift, double roomDensity, double pa, double *flow) {
  double sum = 0;
  for (int i = 0; i < b->openings; i++) {
    double drop = pa - lift[i], sign = (drop > 0) - (drop < 0);
    flow[i] = sign * b->openM2[i] * sqrt(2 * roomDensity * fabs(drop));
    sum += flow[i];
  }
  return sum;
}

static void push(Net *net, int from, int to, double kgPerS) {
  Stream s = {from, to, kgPerS};
  net->stream[net->streams++] = s;
}

static void route(const Box *b, const double *flow, Net *net) {
  double total = 0;
  int c = b->columns;
  for (int i = 0; i < b->openings; i++) total += fmax(0, flow[i]);
  if (total <= 1e-12) return;
  for (int i = 0; i < b->openings; i++)
    for (int j = 0; j < b->openings; j++) {
      if (flow[i] <= 0 || flow[j] >= 0) continue;
      double kgPerS = (flow[i] * -flow[j]) / total;
      if (kgPerS <= 0) continue;
      int node = (int)b->openNode[i], to = (int)b->openNode[j];
      int column = node % c, layer = node / c;
      push(net, -1, node, kgPerS);
      while (column != to % c || layer != to / c) {
        if (column != to % c) column += to % c > column ? 1 : -1;
        else layer += to / c > layer ? 1 : -1;
        push(net, node, layer * c + column, kgPerS);
        node = layer * c + column;
      }
      push(net, node, -1, kgPerS);
    }
}

void ventilation(const Box *b, const double *airC, double roomC, Net *net) {
  int n = b->openings;
  double lift[n], flow[n], roomDensity = 353 / (roomC + 273.15), layerM = b->heightM / b->layers;
  double low = INFINITY, high = -INFINITY;
  net->streams = 0;
  net->fresh = 0;
  for (int a = 0; a < b->air; a++) net->exchange[a] = 0;
  for (int i = 0; i < n; i++) {
    lift[i] = 0;
    for (int k = 0; k < b->layers; k++) {
      double sum = 0;
      for (int c = 0; c < b->columns; c++) sum += airC[k * b->columns + c] * (b->edgeM[c + 1] - b->edgeM[c]);
      double part = fmax(0, fmin(layerM, b->openZ[i] - k * layerM));
      lift[i] += GRAVITY * (roomDensity - 353 / (sum / b->edgeM[b->columns] + 273.15)) * part;
    }
    low = fmin(low, lift[i]);
    high = fmax(high, lift[i]);
  }
  for (int i = 0; i < 60; i++) {
    double middle = (low + high) / 2;
    if (flowsAt(b, lift, roomDensity, middle, flow) > 0) high = middle;
    else low = middle;
  }
  flowsAt(b, lift, roomDensity, (low + high) / 2, flow);
  route(b, flow, net);
  for (int i = 0; i < n; i++) {
    int node = (int)b->openNode[i];
    double through = fabs(flow[i]), inC = airC[node], airK = (inC + roomC) / 2 + 273.15, h = b->openHeight[i];
    if (flow[i] > 0) net->fresh += through;
    double both = 0.2 * h * h * sqrt((GRAVITY * h * fabs(inC - roomC)) / airK) * (353 / airK) * b->leakage;
    double extra = fmax(0, both - through / 2);
    net->exchange[node] += extra;
    net->fresh += extra;
  }
}
