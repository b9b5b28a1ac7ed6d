// Prices as this person writes them. Leaves out: conversion between currencies, which the program does not do.
import type { Measure } from '../settings/measure.ts';

export const moneyFor =
  (measure: Measure, currency: string) =>
  (value: number, digits = 0): string =>
    new Intl.NumberFormat(measure.locale, {
      style: 'currency',
      currency,
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    }).format(value);
