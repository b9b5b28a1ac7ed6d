/* Factor once, solve many: the same order of work as src/physics/dense.ts and dense-band.ts. */
#include "twin.h"

void factorDense(double *restrict a, int n) {
  int k = 0;
  for (; k + 1 < n; k += 2) {
    double *top = a + k * n, *under = top + n;
    double inverse = 1 / top[k];
    top[k] = inverse;
    double first = under[k] * inverse;
    under[k] = first;
    for (int j = k + 1; j < n; j++) under[j] -= first * top[j];
    double inverseUnder = 1 / under[k + 1];
    under[k + 1] = inverseUnder;
    double across = top[k + 1];
    for (int i = k + 2; i < n; i++) {
      double *restrict row = a + i * n;
      double f = row[k] * inverse, g = (row[k + 1] - f * across) * inverseUnder;
      if (f == 0 && g == 0) continue;
      row[k] = f;
      row[k + 1] = g;
      for (int j = k + 2; j < n; j++) row[j] = row[j] - f * top[j] - g * under[j];
    }
  }
  if (k < n) a[k * n + k] = 1 / a[k * n + k];
}

void solveDense(const double *restrict lu, int n, double *restrict b) {
  int whole = n & ~3;
  for (int i = 0; i < whole; i += 4) {
    const double *r0 = lu + i * n, *r1 = r0 + n, *r2 = r1 + n, *r3 = r2 + n;
    double s0 = b[i], s1 = b[i + 1], s2 = b[i + 2], s3 = b[i + 3];
    for (int j = 0; j < i; j++) {
      double v = b[j];
      s0 -= r0[j] * v;
      s1 -= r1[j] * v;
      s2 -= r2[j] * v;
      s3 -= r3[j] * v;
    }
    s1 -= r1[i] * s0;
    s2 -= r2[i] * s0;
    s3 -= r3[i] * s0;
    s2 -= r2[i + 1] * s1;
    s3 -= r3[i + 1] * s1;
    s3 -= r3[i + 2] * s2;
    b[i] = s0;
    b[i + 1] = s1;
    b[i + 2] = s2;
    b[i + 3] = s3;
  }
  for (int i = whole; i < n; i++) {
    double s = b[i];
    for (int j = 0; j < i; j++) s -= lu[i * n + j] * b[j];
    b[i] = s;
  }
  for (int i = n - 1; i >= whole; i--) {
    double s = b[i];
    for (int j = i + 1; j < n; j++) s -= lu[i * n + j] * b[j];
    b[i] = s * lu[i * n + i];
  }
  for (int i = whole - 4; i >= 0; i -= 4) {
    const double *r0 = lu + i * n, *r1 = r0 + n, *r2 = r1 + n, *r3 = r2 + n;
    double s0 = b[i], s1 = b[i + 1], s2 = b[i + 2], s3 = b[i + 3];
    for (int j = i + 4; j < n; j++) {
      double v = b[j];
      s0 -= r0[j] * v;
      s1 -= r1[j] * v;
      s2 -= r2[j] * v;
      s3 -= r3[j] * v;
    }
    s3 *= r3[i + 3];
    s2 = (s2 - r2[i + 3] * s3) * r2[i + 2];
    s1 = (s1 - r1[i + 2] * s2 - r1[i + 3] * s3) * r1[i + 1];
    s0 = (s0 - r0[i + 1] * s1 - r0[i + 2] * s2 - r0[i + 3] * s3) * r0[i];
    b[i] = s0;
    b[i + 1] = s1;
    b[i + 2] = s2;
    b[i + 3] = s3;
  }
}

void factorBand(double *a, int n, int w) {
  int wide = 2 * w + 1;
  for (int k = 0; k < n; k++) {
    int top = k * wide + w;
    double inverse = 1 / a[top];
    a[top] = inverse;
    int reach = w < n - 1 - k ? w : n - 1 - k;
    for (int d = 1; d <= reach; d++) {
      int row = (k + d) * wide + w - d;
      double f = a[row] * inverse;
      a[row] = f;
      for (int e = 1; e <= reach; e++) a[row + e] -= f * a[top + e];
    }
  }
}

void solveBand(const double *restrict a, int n, int w, double *restrict b) {
  int wide = 2 * w + 1;
  for (int i = 1; i < n; i++) {
    int row = i * wide + w, reach = w < i ? w : i;
    double s = b[i];
    for (int d = reach; d >= 1; d--) s -= a[row - d] * b[i - d];
    b[i] = s;
  }
  for (int i = n - 1; i >= 0; i--) {
    int row = i * wide + w, reach = w < n - 1 - i ? w : n - 1 - i;
    double s = b[i];
    for (int d = 1; d <= reach; d++) s -= a[row + d] * b[i + d];
    b[i] = s * a[row];
  }
}

static void takeRow(double *restrict to, const double *restrict from, int many, double f) {
  for (int k = 0; k < many; k++) to[k] -= f * from[k];
}

/* many right sides at once, a row for each unknown */
void solveBandRows(const double *a, int n, int w, double *b, int many) {
  int wide = 2 * w + 1;
  for (int i = 1; i < n; i++)
    for (int d = w < i ? w : i; d >= 1; d--) {
      double f = a[i * wide + w - d];
      if (f != 0) takeRow(b + i * many, b + (i - d) * many, many, f);
    }
  for (int i = n - 1; i >= 0; i--) {
    int reach = w < n - 1 - i ? w : n - 1 - i;
    for (int d = 1; d <= reach; d++) {
      double f = a[i * wide + w + d];
      if (f != 0) takeRow(b + i * many, b + (i + d) * many, many, f);
    }
    for (int k = 0; k < many; k++) b[i * many + k] *= a[i * wide + w];
  }
}
