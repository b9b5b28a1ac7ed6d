import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import { buildModel, simulateDay } from '../../physics/simulate.ts';
import { kitPowers } from '../search/judge-kit.ts';
import { behaviourOf } from '../search/kit-search.ts';
import { prepareSearch } from '../search/prepare-search.ts';
import { burningHoursPerYear, replacements, replacementYears } from './lamp-life.ts';
import { wholeLifeCost } from './whole-life-cost.ts';
import { yearlyEnergy } from './yearly-energy.ts';

describe('lamps', () => {
  it('burn as long as they are alight: dimmed ones all their hours, switched ones their share', () => {
    expect(burningHoursPerYear(12, 0.5, 'dimming')).toBe(4380);
    expect(burningHoursPerYear(12, 0.5, 'pulse')).toBe(2190);
    expect(burningHoursPerYear(24, 0.25, 'on-off')).toBe(2190);
    expect(burningHoursPerYear(12, 0, 'dimming')).toBe(0);
  });
  it.each([
    // hours a year, life, years -> new lamps after the first
    [4380, 1000, 1, 4],
    [4380, 1000, 5, 21],
    [1000, 1000, 1, 0],
    [1000, 1000, 2, 1],
    [0, 1000, 30, 0],
  ])('%s h a year of %s h over %s years need %s new ones', (hours, life, years, wanted) => {
    expect(replacements(hours, life, years)).toBe(wanted);
    expect(replacementYears(hours, life, years)).toHaveLength(wanted);
  });
});

it('the years add up to the whole, whatever the kit', () => {
  fc.assert(
    fc.property(
      fc.record({
        kit: fc.integer({ min: 0, max: 2000 }),
        kWh: fc.double({ min: 0, max: 3000, noNaN: true }),
        tariff: fc.double({ min: 0, max: 1, noNaN: true }),
        years: fc.integer({ min: 1, max: 30 }),
        hours: fc.double({ min: 0, max: 8760, noNaN: true }),
        price: fc.integer({ min: 1, max: 90 }),
      }),
      ({ kit, kWh, tariff, years, hours, price }) => {
        const cost = wholeLifeCost(
          kit,
          [{ name: 'lamp', price, hoursPerYear: hours, lifeH: 1000 }],
          kWh,
          tariff,
          years,
        );
        const sum = cost.byYear.reduce((s, y) => s + y.kit + y.lamps + y.energy, 0);
        expect(sum).toBeCloseTo(cost.total, 6);
        expect(cost.byYear.flatMap((y) => y.replaced)).toHaveLength(replacements(hours, 1000, years));
      },
    ),
  );
});

it('the power of a year lies near that of simulated days', () => {
  const input = searchInputOf('wood-1200', { members: 1 });
  const prepared = prepareSearch(input);
  const index = prepared.candidates.arrangements.findIndex((a) => a.id === 'drawn | ceramic-emitter');
  const surface = prepared.solve({ arrangement: index, from: 0, to: 1 })[0]!;
  const arrangement = prepared.candidates.arrangements[index]!;
  const kit = prepared.candidates.kits[index]!.find(
    (k) => k.heater.powerW === 150 && k.thermostat.control === 'pulse',
  )!;
  const b = { ...behaviourOf(kit, surface, input.climate), setNightC: 22 };
  const year = yearlyEnergy(surface, b, arrangement.enclosure);
  const { dialC } = kitPowers(surface, b);
  const enclosure = {
    ...arrangement.enclosure,
    heaters: arrangement.enclosure.heaters.map((h) => ({ ...h, powerW: 150 })),
    thermostats: arrangement.enclosure.thermostats.map((t) => ({
      ...t,
      control: 'pulse' as const,
      bandK: b.bandK,
      setDayC: dialC,
      setNightC: 22,
    })),
  };
  const model = buildModel(enclosure, input.facts.materials);
  const { winter, summer } = enclosure.room;
  const mid = { ...winter, lowC: (winter.lowC + summer.lowC) / 2, highC: (winter.highC + summer.highC) / 2 };
  const day = (room: typeof winter) => simulateDay(model, room).kWhPerDay;
  const simulated = 365 * (0.25 * day(winter) + 0.5 * day(mid) + 0.25 * day(summer));
  // Warming up in the morning and cooling at night take heat from and give it to the walls: a few per cent.
  expect(Math.abs(year.kWh / simulated - 1)).toBeLessThan(0.1);
}, 60_000);
