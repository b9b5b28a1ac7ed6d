// A simulation as tables for a spreadsheet: the settled state as one quantity a line, a day as one time a line.
import { type DayAnswer, placeIds, type SteadyAnswer } from '../physics/answer.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { type CsvCell, csvLines } from './csv.ts';

const metres = (xM: number): string => `x${xM.toFixed(3)}m`;

export function steadyCsv(answer: SteadyAnswer, enclosure: Enclosure): string[] {
  const rows: CsvCell[][] = [['room', '°C', answer.roomC]];
  for (const id of placeIds) rows.push([id, '°C', answer.places[id]]);
  answer.heaterW.forEach((watts, i) => {
    rows.push([`heater ${enclosure.heaters[i]?.id ?? i}`, 'W', watts]);
  });
  rows.push(['duty', 'share', answer.dutyFrac]);
  rows.push(
    ['warm-end relative humidity', '%', answer.warmRhPct],
    ['cool-end relative humidity', '%', answer.coolRhPct],
  );
  rows.push(
    ['dew on front glass', 'yes or no', answer.dewOnGlass ? 'yes' : 'no'],
    ['front glass above dew point', 'K', answer.glassDewMarginK],
  );
  rows.push(['evaporation', 'g/h', answer.evaporationGPerH], ['air change', '1/h', answer.airChangePerH]);
  for (const [panel, watts] of Object.entries(answer.lossByPanelW)) rows.push([`loss ${panel}`, 'W', watts]);
  answer.columns.xM.forEach((xM, c) => {
    rows.push([`floor ${metres(xM)}`, '°C', answer.columns.floorC[c] ?? null]);
  });
  answer.columns.airC.forEach((layer, k) => {
    answer.columns.xM.forEach((xM, c) => {
      rows.push([`air layer ${k + 1} ${metres(xM)}`, '°C', layer[c] ?? null]);
    });
  });
  rows.push(
    ['heat balance left over', 'share', answer.balance.relative],
    ['water balance left over', 'share', answer.balance.waterRelative],
  );
  return csvLines(['quantity', 'unit', 'value'], rows);
}

export function dayCsv(answer: DayAnswer): string[] {
  const places = placeIds.filter((id) => answer.places[id] !== null);
  const head = [
    'hour_h',
    'room_C',
    'heaters_W',
    ...places.map((id) => `${id}_C`),
    'warm_rh_pct',
    'cool_rh_pct',
    'dew_on_glass',
    ...answer.columnXM.map((xM) => `floor_${metres(xM)}_C`),
    ...answer.columnXM.map((xM) => `air_${metres(xM)}_C`),
  ];
  const rows = answer.hours.map((hour, r): CsvCell[] => [
    hour,
    answer.roomC[r] ?? null,
    answer.heaterW[r] ?? null,
    ...places.map((id) => answer.places[id]?.[r] ?? null),
    answer.warmRhPct[r] ?? null,
    answer.coolRhPct[r] ?? null,
    answer.dewOnGlass[r] === true ? 1 : 0,
    ...answer.columnXM.map((_, c) => answer.floorC[r]?.[c] ?? null),
    ...answer.columnXM.map((_, c) => answer.airC[r]?.[c] ?? null),
  ]);
  return csvLines(head, rows);
}
