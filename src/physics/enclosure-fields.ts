// What may stand in an enclosure file: one row a field, with its kind, unit, limits and words.
// The validator, the published schema and the table in docs/formats.md are all made from these rows, so a
// limit lives here and nowhere else. Limits are our choice: wide enough for any real home of a snake, narrow
// enough to catch centimetres taken for metres. Leaves out: rules between fields (enclosure-cross.ts).
import { controlKinds, enclosureFormat, enclosureVersion, heaterKinds, panelNames } from './enclosure.ts';

export type FieldKind = 'object' | 'list' | 'number' | 'text' | 'id' | 'word' | 'flag' | 'constant';
export type FieldUnit = 'm' | 'm²' | 'W' | '°C' | 'K' | '%' | 'h' | 's' | 'g' | 'W/m²' | '°' | 'share 0 to 1' | '';

export interface Field {
  /** Dotted path; "[]" stands for each entry of a list: "heaters[].powerW". "" is the whole file. */
  readonly path: string;
  readonly kind: FieldKind;
  readonly unit: FieldUnit;
  /** Lowest and highest: the value of a number, the entries of a list, the characters of a text. */
  readonly low?: number;
  readonly high?: number;
  /** Allowed words, or the one allowed value of a constant. */
  readonly words?: readonly (string | number)[];
  /** May be left out. */
  readonly optional: boolean;
  /** May be null, which says "there is none" or "nobody knows". */
  readonly nullable: boolean;
  /** What the field is, as a noun phrase. */
  readonly say: string;
  /** What to do when it is wrong, beyond keeping to the limits; "" when the limits say it all. */
  readonly fix: string;
}

type Extra = Partial<Pick<Field, 'optional' | 'nullable' | 'fix'>>;

const row = (path: string, kind: FieldKind, unit: FieldUnit, say: string, more: Partial<Field>): Field => ({
  path,
  kind,
  unit,
  say,
  optional: false,
  nullable: false,
  fix: '',
  ...more,
});
const num = (path: string, unit: FieldUnit, low: number, high: number, say: string, extra: Extra = {}): Field =>
  row(path, 'number', unit, say, { low, high, ...extra });
const share = (path: string, say: string, extra: Extra = {}): Field => num(path, 'share 0 to 1', 0, 1, say, extra);
const object = (path: string, say: string, extra: Extra = {}): Field => row(path, 'object', '', say, extra);
const list = (path: string, low: number, high: number, say: string, extra: Extra = {}): Field =>
  row(path, 'list', '', say, { low, high, ...extra });
const word = (path: string, words: readonly string[], say: string, extra: Extra = {}): Field =>
  row(path, 'word', '', say, { words, ...extra });
const id = (path: string, say: string, extra: Extra = {}): Field =>
  row(path, 'id', '', say, { low: 1, high: 60, ...extra });

const optional = { optional: true } as const;
const nullable = { nullable: true } as const;

const place = (path: string, what: string, highZ = 3): Field[] => [
  num(`${path}.xM`, 'm', 0, 4, `${what}: distance from the left inside wall`),
  num(`${path}.yM`, 'm', 0, 2, `${what}: distance from the front glass`),
  num(`${path}.zM`, 'm', 0, highZ, `${what}: height above the inside of the bottom panel`),
];

const fileFields: readonly Field[] = [
  object('', 'the enclosure file'),
  row('format', 'constant', '', 'the mark of an enclosure file', { words: [enclosureFormat] }),
  row('version', 'constant', '', 'the version of this layout', { words: [enclosureVersion] }),
  row('name', 'text', '', 'the name of this enclosure', { low: 1, high: 120 }),
];

const boxFields: readonly Field[] = [
  object('box', 'the box: size, panels, openings'),
  num('box.lengthM', 'm', 0.2, 4, 'inside length, left wall to right wall', { fix: 'Measure inside.' }),
  num('box.depthM', 'm', 0.15, 2, 'inside depth, front glass to back wall', { fix: 'Measure inside.' }),
  num('box.heightM', 'm', 0.1, 3, 'inside height, bottom to lid', { fix: 'Measure inside.' }),
  object('box.panels', 'the six panels'),
  ...panelNames.flatMap((panel) => [
    object(`box.panels.${panel}`, `the ${panel} panel`),
    list(`box.panels.${panel}.layers`, 1, 6, `layers of the ${panel} panel, inside to outside`),
    object(`box.panels.${panel}.layers[]`, 'one layer'),
    id(`box.panels.${panel}.layers[].materialId`, 'material of the layer'),
    num(`box.panels.${panel}.layers[].thicknessM`, 'm', 0.0005, 0.2, 'thickness of the layer'),
    share(`box.panels.${panel}.meshShareFrac`, 'share of the panel that is mesh', optional),
    share(`box.panels.${panel}.meshOpenFrac`, 'open share of the mesh itself', {
      ...optional,
      fix: 'Fine fly mesh is about 0.6 (common practice).',
    }),
    num(`box.panels.${panel}.meshWireM`, 'm', 0.00005, 0.005, 'diameter of the wires of the mesh', {
      ...optional,
      fix: 'Fly mesh about 0.0003, coarse mesh 0.0005, welded wire 0.001 (common practice).',
    }),
    share(`box.panels.${panel}.meshCoveredFrac`, 'share of the mesh that is covered over', optional),
  ]),
  list('box.vents', 0, 20, 'planned openings'),
  object('box.vents[]', 'one opening'),
  word('box.vents[].panel', panelNames, 'panel the opening is in'),
  num('box.vents[].alongM', 'm', 0, 4, 'centre of the opening along its panel, from the left or from the front'),
  num('box.vents[].heightM', 'm', 0, 3, 'centre of the opening above the bottom'),
  num('box.vents[].areaM2', 'm²', 0.00001, 1, 'area of the opening', { fix: '100 cm² is 0.01.' }),
  share('box.vents[].openFrac', 'open share of its grille'),
  num('box.gapAreaM2', 'm²', 0, 0.1, 'all unplanned gaps together', {
    fix: '10 cm² is 0.001; about that is usual for sliding glass doors (our estimate).',
  }),
  num('box.widestGapM', 'm', 0, 0.5, 'widest single gap', { ...nullable, fix: 'null when nobody measured it.' }),
  object('box.base', 'what the box stands on'),
  word('box.base.kind', ['shelf', 'legs', 'floor', 'stacked'], 'kind of base'),
  num('box.base.belowC', '°C', -10, 50, 'temperature of the box below', optional),
];

const heaterFields: readonly Field[] = [
  list('heaters', 0, 8, 'heaters'),
  object('heaters[]', 'one heater'),
  id('heaters[].id', 'name of the heater in this file'),
  word('heaters[].kind', heaterKinds, 'kind of heater'),
  num('heaters[].powerW', 'W', 1, 500, 'rated power', { fix: 'Read it off the label.' }),
  word('heaters[].mount', ['inside', 'ceiling', 'above-mesh', 'on-floor', 'under-floor'], 'where the heater sits'),
  ...place('heaters[]', 'centre of the heater', 3.5),
  num('heaters[].lengthM', 'm', 0.03, 4, 'size of a mat or panel along the box', optional),
  num('heaters[].depthM', 'm', 0.03, 2, 'size of a mat or panel from front to back', optional),
  num('heaters[].beamDeg', '°', 5, 180, 'full beam angle of a lamp or reflector', optional),
  row('heaters[].guarded', 'flag', '', 'whether a guard keeps the animal off it', {}),
  id('heaters[].thermostatId', 'thermostat that drives it', { ...nullable, fix: 'null says: no thermostat.' }),
  word('heaters[].period', ['all', 'day'], 'when it may heat'),
  word('heaters[].holder', ['ceramic', 'plastic', 'none'], 'material of the lampholder', optional),
];

const thermostatFields: readonly Field[] = [
  list('thermostats', 0, 8, 'thermostats'),
  object('thermostats[]', 'one thermostat'),
  id('thermostats[].id', 'name of the thermostat in this file'),
  word('thermostats[].control', controlKinds, 'kind of control'),
  object('thermostats[].probe', 'its probe'),
  ...place('thermostats[].probe', 'probe'),
  word('thermostats[].probe.at', ['air', 'wall', 'floor', 'mat'], 'what the probe touches'),
  num('thermostats[].setDayC', '°C', 5, 50, 'set point by day'),
  num('thermostats[].setNightC', '°C', 5, 50, 'set point by night'),
  num('thermostats[].bandK', 'K', 0.05, 10, 'switching differential or proportional band'),
  num('thermostats[].cycleS', 's', 0.1, 600, 'cycle of a pulse thermostat', optional),
  num('thermostats[].ratingW', 'W', 1, 5000, 'largest load it may switch'),
  num('thermostats[].cutOutC', '°C', 20, 70, 'second, independent cut-out', { ...nullable, fix: 'null says: none.' }),
];

const furnishingFields: readonly Field[] = [
  object('day', 'the lit part of the day'),
  num('day.startH', 'h', 0, 24, 'start of the day, hours since midnight'),
  num('day.endH', 'h', 0, 24, 'end of the day, hours since midnight'),
  object('substrate', 'the substrate', nullable),
  id('substrate.materialId', 'material of the substrate'),
  num('substrate.depthM', 'm', 0.001, 0.4, 'depth of the substrate', { fix: 'substrate: null says there is none.' }),
  share('substrate.wetFrac', 'share of its surface kept wet'),
  list('hides', 0, 12, 'hides'),
  object('hides[]', 'one hide'),
  num('hides[].xM', 'm', 0, 4, 'centre of the hide from the left wall'),
  num('hides[].yM', 'm', 0, 2, 'centre of the hide from the front glass'),
  num('hides[].lengthM', 'm', 0.03, 2, 'hide along the box'),
  num('hides[].depthM', 'm', 0.03, 2, 'hide from front to back'),
  num('hides[].heightM', 'm', 0.02, 1, 'height of the hide'),
  object('bowl', 'the water bowl', nullable),
  num('bowl.xM', 'm', 0, 4, 'centre of the bowl from the left wall'),
  num('bowl.yM', 'm', 0, 2, 'centre of the bowl from the front glass'),
  num('bowl.diameterM', 'm', 0.02, 1.2, 'diameter of the water surface'),
  object('perch', 'the highest perch', nullable),
  ...place('perch', 'perch'),
  object('misting', 'misting', nullable),
  num('misting.waterGPerDay', 'g', 0, 5000, 'water sprayed in a day'),
  list('misting.atHours', 0, 24, 'hours at which it happens'),
  num('misting.atHours[]', 'h', 0, 24, 'one misting, hours since midnight'),
  share('coverFrac', 'share of the floor under plants, leaf litter or other cover'),
  word('lock', ['lock', 'catch', 'none'], 'how the doors are kept shut'),
  list('thermometers', 0, 12, 'thermometers'),
  object('thermometers[]', 'one thermometer'),
  word('thermometers[].place', ['basking', 'warm-end', 'cool-end'], 'where it reads'),
  word('thermometers[].kind', ['digital-probe', 'infrared-gun', 'stick-on-dial'], 'kind of thermometer'),
];

const roomFields: readonly Field[] = [
  object('room', 'the room through the year'),
  ...(['winter', 'summer'] as const).flatMap((season) => [
    object(`room.${season}`, season === 'winter' ? 'the coldest day' : 'the hottest day'),
    num(`room.${season}.lowC`, '°C', -10, 50, `lowest room temperature of that day`),
    num(`room.${season}.highC`, '°C', -10, 50, `highest room temperature of that day`),
    num(`room.${season}.rhPct`, '%', 5, 100, 'relative humidity of the room'),
    num(`room.${season}.sunPeakWPerM2`, 'W/m²', 0, 1200, 'strongest sun on the outside of the front', {
      fix: '0 when the front never gets sun.',
    }),
    num(`room.${season}.sunFromH`, 'h', 0, 24, 'hour at which the sun reaches the front', optional),
    num(`room.${season}.sunToH`, 'h', 0, 24, 'hour at which the sun leaves the front', optional),
    list(`room.${season}.hourlyC`, 24, 24, 'room temperature at 0:00, 1:00 ... 23:00', optional),
    num(`room.${season}.hourlyC[]`, '°C', -10, 50, 'room temperature of one hour'),
  ]),
];

const animalFields: readonly Field[] = [
  object('animal', 'the animal this home is for', nullable),
  id('animal.speciesId', 'species'),
  word('animal.stage', ['hatchling', 'young', 'adult'], 'life stage'),
  num('animal.totalLengthM', 'm', 0.05, 8, 'length, snout to tail tip'),
  num('animal.massG', 'g', 1, 150_000, 'body mass', { ...nullable, fix: 'null when it has not been weighed.' }),
];

/** Every field of an enclosure file, parents before children. */
export const enclosureFields: readonly Field[] = [
  ...fileFields,
  ...boxFields,
  ...heaterFields,
  ...thermostatFields,
  ...furnishingFields,
  ...roomFields,
  ...animalFields,
];
