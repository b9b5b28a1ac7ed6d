// Turns the metric quantities inside a sentence of the pure rooms into the units this person reads.
// Leaves out translation: the sentence itself stays as it was written.
import { type Measure, shownFromStored } from './measure.ts';

/** Square foot [m²] and square inch [cm²], both by definition. */
const footM2 = 0.09290304;
const inchCm2 = 6.4516;
/** Sentences of the pure rooms have a point; one whose figures were written for a language already may have a comma. */
const amount = '[−-]?\\d+(?:[.,]\\d+)?';
const joint = '(?:\\s*(?:to|bis|–|and|und)\\s*)';

function digitsOf(text: string): number {
  return text.split(/[.,]/)[1]?.length ?? 0;
}

/** Rewrites each number of a matched stretch, leaving the words between them alone. */
function rewrite(stretch: string, each: (value: number, digits: number) => string): string {
  return stretch.replace(new RegExp(amount, 'g'), (text) =>
    each(Number(text.replace('−', '-').replace(',', '.')), digitsOf(text)),
  );
}

const temperature = new RegExp(
  `(${amount}(?:${joint}${amount})?)(\\s*)°C((?:\\s*\\(${amount}${joint}${amount}\\))?)`,
  'g',
);
const difference = new RegExp(`(?<![\\w/])(±?\\s*${amount}(?:${joint}${amount})?)(\\s*)K(?![\\w/])`, 'g');
/** A bare number of degrees that closes a sentence of temperatures: "this animal needs 17.", "at most 38 °C, better 35". */
const bareNeed = new RegExp(`(needs |better |besser )(${amount})(?=[.;]|$)`, 'g');
const centimetres = new RegExp(`(${amount}(?:\\s*[×x]\\s*${amount})*(?:${joint}${amount})?)(\\s*)cm(?!\\w|²|³)`, 'g');
const squares = new RegExp(`(${amount}(?:${joint}${amount})?)(\\s*)(c?m)²(?![\\w/])`, 'g');
const grams = new RegExp(`(${amount}(?:${joint}${amount})?)(\\s*)g(?![\\w/])`, 'g');
const millimetres = new RegExp(`(${amount}(?:${joint}${amount})?)(\\s*)mm(?!\\w|²|³)`, 'g');

/** "28.4 °C (27.1 to 29.9)" → "83.1 °F (80.8 to 85.8)" when this person reads °F; cm and mm → in likewise. */
export function proseInUnits(prose: string, measure: Measure): string {
  const { settings } = measure;
  let text = prose;
  if (settings.temperature === 'F') {
    const warm = (value: number, digits: number) =>
      measure.number(shownFromStored('temperature', value, settings), digits);
    text = text.replace(temperature, (_all, numbers: string, gap: string, interval: string) => {
      return `${rewrite(numbers, warm)}${gap}°F${rewrite(interval, warm)}`;
    });
    if (prose.includes('°C')) {
      text = text.replace(bareNeed, (_all, verb: string, n: string) => `${verb}${rewrite(n, warm)} °F`);
    }
    text = text.replace(difference, (_all, numbers: string, gap: string) => {
      return `${rewrite(numbers, (value) => measure.number(value * 1.8, 1))}${gap}°F`;
    });
  }
  if (settings.length === 'in') {
    const inches = (perUnitM: number) => (value: number) =>
      measure.number(shownFromStored('length', value * perUnitM, settings), 1);
    text = text.replace(centimetres, (_all, n: string, gap: string) => `${rewrite(n, inches(0.01))}${gap || ' '}in`);
    text = text.replace(millimetres, (_all, n: string, gap: string) => `${rewrite(n, inches(0.001))}${gap || ' '}in`);
    text = text.replace(squares, (_all, n: string, gap: string, unit: string) => {
      const each = unit === 'm' ? (m2: number) => m2 / footM2 : (cm2: number) => cm2 / inchCm2;
      return `${rewrite(n, (value) => measure.number(each(value), unit === 'm' ? 1 : 0))}${gap || ' '}${unit === 'm' ? 'ft²' : 'in²'}`;
    });
  }
  if (settings.mass === 'oz') {
    // A hundredth of an ounce is about a quarter of a gram.
    const ounces = (value: number) => measure.number(shownFromStored('mass', value, settings), 2);
    text = text.replace(grams, (_all, n: string, gap: string) => `${rewrite(n, ounces)}${gap || ' '}oz`);
  }
  return text;
}
