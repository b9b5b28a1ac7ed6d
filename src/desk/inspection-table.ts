// The register as a table for a spreadsheet: one line an animal. Where numbers are written with a decimal
// comma, cells are parted by semicolons, as spreadsheets there expect.
import Papa from 'papaparse';
import { eventsOf } from '../animal/event.ts';
import { registerFields } from '../animal/register.ts';
import { fieldWords } from '../animal/words/register.ts';
import type { AnimalLanguage } from '../animal/words/say.ts';
import { withDecimals } from '../proving/words/say-told.ts';
import { bookIn, spokenIn } from '../shared/languages.ts';
import type { InspectedAnimal, Inspection } from './inspect-register.ts';
import { inspectionColumns } from './inspection-words.ts';

const writesComma = (language: AnimalLanguage): boolean => withDecimals('0.5', language) === '0,5';

/** With a byte order mark, so that spreadsheets read the letters right. */
export function inspectionCsv(inspection: Inspection, language: AnimalLanguage): string {
  const fields = [
    ...registerFields.map((field) => spokenIn(fieldWords[field], language)),
    ...bookIn('register.columns', language, inspectionColumns),
  ];
  const data = inspection.animals.map((animal) => rowOf(animal, language));
  const delimiter = writesComma(language) ? ';' : ',';
  // A cell that begins like a formula gets a quotation mark, or a spreadsheet would run it.
  return `\uFEFF${Papa.unparse({ fields, data }, { delimiter, escapeFormulae: true })}\r\n`;
}

function rowOf({ record, corrections, headings }: InspectedAnimal, language: AnimalLanguage): readonly string[] {
  const days = (kind: 'sale' | 'death'): string =>
    eventsOf(record.events, kind)
      .map((event) => event.on)
      .join('; ');
  const treatments = eventsOf(record.events, 'treatment').map(({ on, body }) =>
    `${on} ${body.step}: ${body.what} ${body.amount}`.trim(),
  );
  const missing = headings
    .filter(({ state }) => state === 'missing')
    .map(({ heading }) => spokenIn(heading.say, language));
  return [
    ...registerFields.map((field) =>
      field === 'speciesId' ? record.species.scientificName : (record.entry[field] ?? ''),
    ),
    record.row.id,
    record.row.enclosure,
    treatments.join('; '),
    days('sale'),
    days('death'),
    String(corrections.length),
    missing.join('; '),
  ];
}
