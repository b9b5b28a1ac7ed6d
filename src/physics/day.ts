// One day of a box in its room, after it has run long enough to repeat itself: rows for the pictures, sums for the bill.
import type { DayAnswer, PlaceId } from './answer.ts';
import { placeIds } from './answer.ts';
import type { RoomDay } from './enclosure.ts';
import { formulaNotes } from './formula-notes.ts';
import { dewPointC } from './formulas/dew-point.ts';
import { relativeHumidityFrac, vapourPressurePaFromRatio } from './formulas/moist-air.ts';
import { warmEndOf } from './grid.ts';
import { type BoxModel, columnAt } from './model.ts';
import { columnFloor, readPlaces } from './places.ts';
import { isDayAt, roomAt } from './room-day.ts';
import {
  type Moment,
  type RunOptions,
  type RunTally,
  runBox,
  runStateFrom,
  startTally,
  waterMissShare,
} from './run.ts';
import { shownAt } from './shade.ts';
import { settleBox } from './steady.ts';
import { settlingNotes } from './steady-answer.ts';

export interface DayOptions extends Partial<RunOptions> {
  /** Time between two rows of the answer [s]; default 900. */
  readonly rowS?: number;
  /** Hours run before the day that is shown; default 24. */
  readonly leadH?: number;
}

/** Simulate a repeating day.
 *  @param roomDay one day of the room; the days before it are taken to be the same
 *  @param options step: default 10 s with an on/off thermostat, 60 s otherwise
 *  Balances of heat and water are taken over the day that is shown. */
export function simulateDay(model: BoxModel, roomDay: RoomDay, options: DayOptions = {}): DayAnswer {
  const onOff = model.enclosure.thermostats.some((t) => t.control === 'on-off');
  const stepS = options.stepS ?? (onOff ? 10 : 60);
  const rowS = options.rowS ?? 900;
  const leadH = options.leadH ?? 24;
  const run: RunOptions = { ...options, stepS, renewS: options.renewS ?? 300 };
  const settled = settleBox(model, {
    roomC: roomAt(roomDay, -leadH),
    roomRhPct: roomDay.rhPct,
    sunWPerM2: 0,
    isDay: isDayAt(model.enclosure.day, -leadH),
  });
  let state = runStateFrom(model, settled);
  if (leadH > 0)
    state = runBox(
      model,
      roomDay,
      state,
      -leadH,
      0,
      { ...run, stepS: Math.max(stepS, 60) },
      startTally(model),
      () => {},
    );
  const rows = collectRows(model);
  const tally = startTally(model);
  let done = 0;
  runBox(model, roomDay, state, 0, 24, run, tally, (m) => {
    done += stepS;
    rows.add(m, done % rowS < stepS - 1e-6 && done > 0);
  });
  return rows.answer(roomDay, tally, [...settlingNotes(settled), ...formulaNotes(model, settled)]);
}

/** Collects rows: means of power over each row, everything else at its end. */
function collectRows(model: BoxModel) {
  const { grid, enclosure } = model;
  const L = enclosure.box.lengthM;
  const warmX = warmEndOf(enclosure) === 'left' ? L / 16 : L - L / 16;
  const hours: number[] = [];
  const places = Object.fromEntries(placeIds.map((p) => [p, [] as (number | null)[]])) as Record<
    PlaceId,
    (number | null)[]
  >;
  const floorC: number[][] = [];
  const airC: number[][] = [];
  const heaterW: number[] = [];
  const roomC: number[] = [];
  const warmRhPct: number[] = [];
  const coolRhPct: number[] = [];
  const dewOnGlass: boolean[] = [];
  let powerSum = 0;
  let powerCount = 0;

  const rhAt = (m: Moment, xM: number) => {
    const node = columnAt(grid, xM);
    return Math.min(
      100,
      100 * relativeHumidityFrac(m.state.box.airC[node]!, vapourPressurePaFromRatio(m.state.moisture.ratio[node]!)),
    );
  };

  const add = (m: Moment, atRow: boolean): void => {
    powerSum += m.now.reduce((s, h) => s + h.powerW, 0);
    powerCount++;
    if (!atRow) return;
    const read = readPlaces(model, shownAt(m), m.state.probeC[0] ?? null);
    for (const p of placeIds) places[p].push(read[p]);
    hours.push(m.hour);
    floorC.push(grid.columnXM.map((_, i) => columnFloor(model, m.state.box, i)));
    airC.push(grid.columnXM.map((_, i) => m.state.box.airC[i]!));
    heaterW.push(powerSum / powerCount);
    powerSum = 0;
    powerCount = 0;
    roomC.push(m.roomC);
    warmRhPct.push(rhAt(m, warmX));
    coolRhPct.push(rhAt(m, L - warmX));
    const cool = m.state.moisture.ratio[columnAt(grid, L - warmX)]!;
    dewOnGlass.push(read['front-glass']! < dewPointC(vapourPressurePaFromRatio(cool)));
  };

  const answer = (roomDay: RoomDay, tally: RunTally, notes: DayAnswer['notes']): DayAnswer => {
    const heaterJ = tally.heaterJ.reduce((s, v) => s + v, 0);
    const installedW = enclosure.heaters.reduce((s, h) => s + h.powerW * model.parameters.heaterPower, 0);
    const shown = Object.fromEntries(placeIds.map((p) => [p, places[p].includes(null) ? null : places[p]]));
    return {
      hours,
      places: shown as DayAnswer['places'],
      warmEnd: warmEndOf(enclosure),
      columnXM: grid.columnXM,
      floorC,
      airC,
      heaterW,
      roomC,
      warmRhPct,
      coolRhPct,
      dewOnGlass,
      kWhPerDay: heaterJ / 3.6e6,
      dutyFrac: installedW > 0 ? heaterJ / (installedW * 86400) : 0,
      switchesPerDay: tally.switches,
      balance: {
        heatIn: tally.heatInJ,
        heatOut: tally.heatOutJ + tally.directJ - tally.latentJ,
        stored: tally.storedJ,
        relative: Math.abs(tally.heatMissJ) / Math.max(1, tally.heatInJ, Math.abs(tally.heatOutJ)),
        waterInGPerH: (tally.waterInKg * 1000) / 24,
        waterOutGPerH: ((tally.waterOutKg + tally.condensedKg) * 1000) / 24,
        waterRelative: waterMissShare(tally),
      },
      roomDay,
      notes,
    };
  };
  return { add, answer };
}
