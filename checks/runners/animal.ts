// Ours for the tables about the animal's body.
import { operativeTempOnFloor, snakeFilm } from '../../src/physics/formulas/snake-body.ts';
import {
  metabolismMassRatio,
  metabolismTempRatio,
  performanceFrac,
  skinWaterLossMgPerCm2H,
  snakeSkinAreaCm2,
} from '../../src/physics/formulas/snake-metabolism.ts';
import { thermoregulationIndex } from '../../src/physics/formulas/thermoregulation-index.ts';
import { list, num } from '../inputs.ts';
import type { Runner } from '../table.ts';

export const animalRunners: Readonly<Record<string, Runner>> = {
  snakeFilm: (i) => {
    const film = snakeFilm(num(i, 'massKg'), num(i, 'lengthM'), num(i, 'airC'), num(i, 'deltaK'));
    return {
      diameterMm: film.diameterM * 1000,
      convection: film.convectionWPerM2K,
      radiation: film.radiationWPerM2K,
      timeConstantMin: film.timeConstantS / 60,
      biot: film.biot,
    };
  },
  bellyContact: (i) => {
    const on = operativeTempOnFloor(num(i, 'massKg'), num(i, 'lengthM'), num(i, 'floorC'), num(i, 'airC'));
    return { floorWPerK: on.floorWPerK, airWPerK: on.airWPerK, tempC: on.tempC };
  },
  thermoregulation: (i) => {
    const [low = 0, high = 0] = list(i, 'preferredC');
    return { ...thermoregulationIndex(list(i, 'bodyC'), list(i, 'homeC'), [low, high]) };
  },
  metabolism: () => ({
    from20To30: metabolismTempRatio(30) / metabolismTempRatio(20),
    from30To34: metabolismTempRatio(34) / metabolismTempRatio(30),
    tenfoldMass: metabolismMassRatio(10),
  }),
  skinLoss: (i) => ({
    loss: skinWaterLossMgPerCm2H(num(i, 'tempC'), num(i, 'skinResistanceSPerCm'), num(i, 'rhFrac')),
  }),
  skinLossWhole: (i) => ({
    gPerH:
      (skinWaterLossMgPerCm2H(num(i, 'tempC'), num(i, 'skinResistanceSPerCm'), num(i, 'rhFrac')) *
        snakeSkinAreaCm2(num(i, 'massG'))) /
      1000,
  }),
  skinLossRatio: (i) => {
    const loss = (resistance: number) => skinWaterLossMgPerCm2H(num(i, 'tempC'), resistance, num(i, 'rhFrac'));
    return { ratio: loss(num(i, 'lowSPerCm')) / loss(num(i, 'highSPerCm')) };
  },
  performance: (i) => ({
    share: performanceFrac(num(i, 'tempC'), num(i, 'bestC'), num(i, 'spreadK'), num(i, 'limitC')),
  }),
};
