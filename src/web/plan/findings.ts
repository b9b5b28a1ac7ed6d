// The finding that each picture's title states, from the numbers it shows.
import type { DayAnswer } from '../../physics/answer.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Translate } from '../messages/translate.ts';
import { type DayField, troublesOf } from '../pictures/day-field.ts';
import type { Readings } from '../pictures/readings.ts';
import { kelvinOutside, levelSlackK, type WantedClimate, wantedAtPlace } from '../pictures/wanted.ts';
import { areaText } from '../settings/area.ts';
import type { Measure } from '../settings/measure.ts';
import type { Season } from './moment.ts';

/** "At 14 °C in the room the basking site comes to 28.4 °C, 1.6 K under what is wanted". */
export function sectionFinding(
  readings: Readings,
  climate: WantedClimate | null,
  t: Translate,
  measure: Measure,
): string {
  const place = readings.isDay ? 'basking-surface' : 'cool-floor';
  const valueC = readings.places[place];
  const room = measure.text('temperature', readings.roomC);
  if (typeof valueC !== 'number') return t('finding.noPlace', { room });
  const when =
    readings.hour === null
      ? t('finding.settled', { room })
      : t('finding.hour', { hour: measure.clock(readings.hour), room });
  const value = measure.text('temperature', valueC);
  const name = t(`place.${place}.inSentence`);
  const wanted = climate && wantedAtPlace(place, readings.isDay, climate);
  if (!wanted) return t('finding.plain', { when, place: name, value });
  const outside = kelvinOutside(valueC, wanted);
  if (Math.abs(outside) <= levelSlackK) return t('finding.wanted', { when, place: name, value });
  const gap = measure.text('difference', Math.abs(outside));
  return t(outside < 0 ? 'finding.under' : 'finding.over', { when, place: name, value, gap });
}

/** "Winter: too cold from 02:00 to 07:00 at the warm end". */
export function mapFinding(field: DayField, day: DayAnswer, season: Season, t: Translate, measure: Measure): string {
  const when = t(`season.${season}`);
  const [worst] = troublesOf(field, day.warmEnd);
  if (!worst) return t('finding.mapWanted', { when });
  const part = t(`part.${worst.part}`);
  if (worst.hours >= 24) return t(worst.kind === 'cold' ? 'finding.mapColdAll' : 'finding.mapWarmAll', { when, part });
  return t(worst.kind === 'cold' ? 'finding.mapCold' : 'finding.mapWarm', {
    when,
    part,
    from: measure.clock(worst.fromH),
    to: measure.clock(worst.toH),
  });
}

/** "0.72 m² of floor: longer than the 95 cm animal" */
export function floorFinding(enclosure: Enclosure, t: Translate, measure: Measure): string {
  const { box, animal } = enclosure;
  const area = areaText(box.lengthM * box.depthM, measure);
  if (!animal) return t('finding.floor', { area });
  const length = measure.text('length', animal.totalLengthM);
  return t(animal.totalLengthM <= box.lengthM ? 'finding.floorFits' : 'finding.floorShort', { area, length });
}
