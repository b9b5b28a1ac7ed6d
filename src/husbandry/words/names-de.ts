// German names of what stands in the blanks of a need's sentence: heaters, thermostats, floors, sides, places.
import type { Told } from '../coded.ts';
import type { FactWords } from '../fact-words.ts';

const heaters: Readonly<Record<string, string>> = {
  'ceramic-emitter': 'Keramikstrahler',
  'infrared-projector': 'Infrarotstrahler',
  'basking-lamp': 'Spotlampe',
  'halogen-lamp': 'Halogenlampe',
  'radiant-panel': 'Strahlungsplatte',
  'heat-mat': 'Heizmatte',
};

const thermostats: Readonly<Record<string, string>> = {
  'on-off': 'Ein/Aus-Thermostat',
  pulse: 'Pulsthermostat',
  dimming: 'Dimmthermostat',
};

const substrates: Readonly<Record<string, string>> = {
  'aspen-chips': 'Espenspäne',
  paper: 'Papier, einige Lagen',
  'loam-sand': 'Lehm mit Sand',
  'sand-dry': 'Sand',
  'bark-chips': 'Rindenstücke',
  'coir-dry': 'Kokosfaser',
  peat: 'Torf',
  'peat-sand': 'Torf mit Sand',
  loam: 'Lehm oder Gartenerde, unbehandelt',
  'loam-leaf-litter': 'Lehm unter Laub',
};

const thermometers: Readonly<Record<string, string>> = {
  'digital-probe': 'digitaler Fühler',
  'infrared-gun': 'Infrarot-Thermometer',
  'stick-on-dial': 'aufgeklebtes Zeigerthermometer',
};

const probePlaces: Readonly<Record<string, string>> = {
  air: 'frei in der Luft',
  wall: 'an der Wand',
  floor: 'am Boden',
  mat: 'an der Matte',
};

const sides: Readonly<Record<string, string>> = {
  length: 'die Länge',
  width: 'die Tiefe',
  height: 'die Höhe',
  floor: 'die Bodenfläche',
  perimeter: 'der Umfang des Bodens',
  sum: 'Länge und Tiefe zusammen',
};

const ends: Readonly<Record<string, string>> = { warm: 'warme', cool: 'kühle' };
const places: Readonly<Record<string, string>> = { 'basking site': 'am Sonnenplatz', 'cool end': 'am kühlen Ende' };
const warmPlaces: Readonly<Record<string, string>> = { hide: 'Versteck', end: 'Ende' };
const zones: Readonly<Record<string, string>> = {
  arid: 'trockener',
  temperate: 'gemäßigter',
  subtropical: 'subtropischer',
  tropical: 'tropischer',
};
const units: Readonly<Record<string, string>> = {
  '% relative humidity': '% relative Luftfeuchte',
  'K above the dew point': 'K über dem Taupunkt',
};

/** Sentence and blank whose word has a translation of its own. */
const wordBlanks: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'hides.add.0': ends,
  'thermometers.missing.0': places,
  'thermometers.dial.0': places,
  'thermometers.good.0': places,
  'thermometers.fix.0': places,
  'substrate.clash.1': zones,
  'space.tolerated.0': sides,
  'probe.placed.0': probePlaces,
  'climate.cold.1': warmPlaces,
  'climate.warm.1': warmPlaces,
  'climate.found.1': units,
  'climate.band.2': units,
};

const anyOf = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;

function namesOf(ids: string, names: Readonly<Record<string, string>>): string | null {
  const found = ids.split(' ').map((id) => names[id]);
  return found.some((name) => name === undefined) ? null : anyOf(found as string[], 'oder');
}

const listOf = (ids: string, names: Readonly<Record<string, string>>): string =>
  ids
    .split(' ')
    .map((id) => names[id] ?? id)
    .join(', ');

/** "length|120 cm|150 cm;…" */
const shortSides = (written: string): string =>
  anyOf(
    written.split(';').map((one) => {
      const [side = '', found, asked] = one.split('|');
      return `${sides[side] ?? side} ist ${found}, gebraucht werden ${asked}`;
    }),
    'und',
  );

const cmOf = (m: string): string => `${Number((Number(m) * 100).toFixed(1))} cm`;

/** Length, width, height [m], floor [m²], way round and sum [m], empty where nothing is asked. */
function asked(parts: string): string {
  const [length, width, height, floor, round, sum] = parts.split('|');
  const box = [length, width, height].filter(Boolean).map((m) => cmOf(m!));
  const alone = [length ? `${cmOf(length)} lang` : '', width ? `${cmOf(width)} tief` : ''].concat(
    height ? `${cmOf(height)} hoch` : '',
  );
  const sizes = length && box.length > 1 ? [box.join(' × ')] : alone.filter(Boolean);
  const floorM2 = Number(floor);
  return anyOf(
    [
      sum ? `${cmOf(sum)} Länge und Tiefe zusammen` : '',
      round ? `${cmOf(round)} um den Boden herum` : '',
      floor ? `${floorM2.toFixed(floorM2 < 0.1 ? 3 : 2)} m² Boden` : '',
      ...sizes,
    ].filter(Boolean),
    'und',
  );
}

/** The German of a name or a blank by its code; null when it has none. */
export function germanName({ code, blanks }: Told, words: FactWords): string | null {
  const [first, , third] = blanks.map(String);
  if (first === undefined) return null;
  if (code === 'name.heater') return heaters[first] === undefined ? null : `${heaters[first]} (${third})`;
  if (code === 'name.thermostat' || code === 'name.thermostats') return namesOf(first, thermostats);
  if (code === 'name.substrate' || code === 'name.substrates') return namesOf(first, substrates);
  // A text of data/ has its German there; what a shop called something stays as it is.
  if (code === 'name.fact') return words[first] ?? first;
  if (code === 'name.thermometers') return listOf(first, thermometers);
  if (code === 'name.asked') return asked(first);
  if (code === 'space.why.1') return shortSides(first);
  return wordBlanks[code]?.[first] ?? null;
}
