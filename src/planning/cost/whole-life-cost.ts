// What a kit costs over the years: the things themselves, lamps as they burn out, and power at the user's tariff.
// Leaves out: inflation, interest, and what is done with the things afterwards.
import { replacementYears } from './lamp-life.ts';

export interface LampCost {
  readonly name: string;
  readonly price: number;
  readonly hoursPerYear: number;
  readonly lifeH: number;
}

export interface CostYear {
  /** 1 = the first year. */
  readonly year: number;
  readonly kit: number;
  readonly lamps: number;
  readonly energy: number;
  /** Names of what is replaced in this year. */
  readonly replaced: readonly string[];
}

export interface WholeLifeCost {
  readonly years: number;
  readonly kit: number;
  readonly lamps: number;
  readonly energy: number;
  readonly total: number;
  readonly byYear: readonly CostYear[];
}

/** @param kitPrice what has to be bought now   @param kWhPerYear power used   @param tariffPerKWh price of a kWh
 *  @param years whole years, 1..30. Checks: planning/costs. */
export function wholeLifeCost(
  kitPrice: number,
  lamps: readonly LampCost[],
  kWhPerYear: number,
  tariffPerKWh: number,
  years: number,
): WholeLifeCost {
  const due = lamps.flatMap((lamp) =>
    replacementYears(lamp.hoursPerYear, lamp.lifeH, years).map((at) => ({ at, name: lamp.name, price: lamp.price })),
  );
  const energy = kWhPerYear * tariffPerKWh;
  const byYear = Array.from({ length: years }, (_, i): CostYear => {
    const now = due.filter((d) => Math.ceil(d.at - 1e-9) === i + 1);
    return {
      year: i + 1,
      kit: i === 0 ? kitPrice : 0,
      lamps: now.reduce((sum, d) => sum + d.price, 0),
      energy,
      replaced: now.map((d) => d.name),
    };
  });
  const lampSum = due.reduce((sum, d) => sum + d.price, 0);
  return {
    years,
    kit: kitPrice,
    lamps: lampSum,
    energy: energy * years,
    total: kitPrice + lampSum + energy * years,
    byYear,
  };
}
