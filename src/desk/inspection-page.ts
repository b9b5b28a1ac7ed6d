// The inspector's pages as a PDF, in the language that was asked for.

import { eventsOf } from '../animal/event.ts';
import { type RegisterField, registerFields } from '../animal/register.ts';
import { fieldWords } from '../animal/words/register.ts';
import { bookIn, type Language, spokenIn } from '../shared/languages.ts';
import { filledPattern } from '../shared/pattern.ts';
import { correctionSaid, registerValueSaid, whyMoved } from './correction-said.ts';
import type { InspectedAnimal, Inspection } from './inspect-register.ts';
import { inspectionWords } from './inspection-words.ts';
import { type PaperReader, type PaperUnits, paperReader } from './paper-units.ts';
import { printedPage } from './print/typst-page.ts';

/** What the line under the title tells: whose register, how much of it. */
interface Lead extends Pick<Inspection, 'shopName' | 'branchName' | 'years' | 'search' | 'oneOnly' | 'today'> {
  readonly animals: readonly unknown[];
}

const wordsIn = (language: Language) => bookIn('register', language, inspectionWords);

export function leadOf(inspection: Lead, units: PaperUnits): string {
  const { language } = units;
  const { lead, which } = wordsIn(language);
  const { shopName: shop, branchName: branch, years, search } = inspection;
  const told = inspection.oneOnly ? which.one : search === '' ? which.all : which.some;
  const day = paperReader(units).day(inspection.today);
  const blanks = { shop, branch, count: inspection.animals.length, day };
  return filledPattern(lead, { ...blanks, which: filledPattern(told, { years, search }, language) }, language);
}

/** Whom the pages are for. */
interface For {
  readonly language: Language;
  readonly reader: PaperReader;
}

export function inspectionPdf(inspection: Inspection, units: PaperUnits, at: Date): Buffer {
  const { language } = units;
  const w = wordsIn(language);
  const reader = paperReader(units);
  const to = { language, reader };
  return printedPage(
    'inspection.typ',
    {
      language,
      title: w.title,
      lead: leadOf(inspection, units),
      footer: `${inspection.shopName}, ${reader.day(inspection.today)}`,
      missingTitle: w.missingTitle,
      missingNone: w.missingNone,
      missingHead: w.missingHead,
      missing: inspection.animals.flatMap((animal) => missingRows(animal, inspection, to)),
      fieldHead: w.fieldHead,
      animals: inspection.animals.map((animal) => block(animal, to)),
      notesTitle: w.notesTitle,
      notes: w.notes,
    },
    at,
  );
}

const titleOf = ({ record }: InspectedAnimal): string =>
  `${record.entry.callName || record.row.id.slice(0, 8)} · ${record.species.scientificName}`;

function missingRows(animal: InspectedAnimal, { lawTitles }: Inspection, to: For): readonly (readonly string[])[] {
  return animal.headings
    .filter((finding) => finding.state === 'missing')
    .map(({ heading, law }) => [
      titleOf(animal),
      spokenIn(heading.say, to.language),
      law
        ? [cited(lawTitles[law.source], law.source, to), law.at].filter((part) => part !== '').join(', ')
        : wordsIn(to.language).ours,
    ]);
}

function cited(law: Inspection['lawTitles'][string] | undefined, source: string, { language, reader }: For): string {
  if (law === undefined) return source;
  const { title, lookedAtOn } = law;
  return lookedAtOn === null ? title : `${title}, ${wordsIn(language).lookedAt(reader.day(lookedAtOn))}`;
}

function block(animal: InspectedAnimal, to: For) {
  const { language, reader } = to;
  const { day } = reader;
  const w = wordsIn(language);
  const { record } = animal;
  return {
    title: titleOf(animal),
    state: animal.record.row.gone ? w.gone(day(animal.goneOn ?? '')) : w.enclosure(record.row.enclosure),
    fields: registerFields.map((field) => ({
      name: spokenIn(fieldWords[field], language),
      law: animal.headings.find(({ heading }) => heading.field === field)?.heading.paragraph ?? '',
      value: shownValue(animal, field, to),
    })),
    parts: partsOf(animal, to),
  };
}

function shownValue({ record }: InspectedAnimal, field: RegisterField, { language, reader }: For): string {
  const value = record.entry[field] ?? '';
  if (value === '') return wordsIn(language).notSaid;
  return registerValueSaid(field, value, language, reader);
}

function partsOf({ record, corrections }: InspectedAnimal, { language, reader }: For) {
  const { day } = reader;
  const w = wordsIn(language);
  const line = (...parts: readonly string[]): string => parts.filter((part) => part.trim() !== '').join(', ');
  const parts = [
    {
      title: w.treatment,
      lines: eventsOf(record.events, 'treatment').map(({ on, body, by }) =>
        line(day(on), w.steps[body.step], body.what, body.amount, body.vet, by),
      ),
    },
    {
      title: w.movement,
      lines: eventsOf(record.events, 'movement').map(({ on, body, by }) =>
        line(day(on), body.toPlace, whyMoved(body.why, language), by),
      ),
    },
    {
      title: w.sale,
      lines: eventsOf(record.events, 'sale').map(({ on, body }) =>
        line(day(on), w.outcomes[body.outcome], body.reference),
      ),
    },
    {
      title: w.death,
      lines: eventsOf(record.events, 'death').map(({ on, body }) =>
        line(day(on), body.foundBy, body.signs, body.cause, body.carcass, body.vet),
      ),
    },
    {
      title: w.corrections,
      lines: corrections.map((one) => {
        const { what, was, now } = correctionSaid(one, language, reader);
        return line(day(one.at.slice(0, 10)), one.by, what, now === null ? w.withdrawn : w.was(was, now), one.reason);
      }),
    },
  ];
  // an inspector asks for treatments: that there were none is an answer too
  return parts
    .map((part) => (part.title === w.treatment && part.lines.length === 0 ? { ...part, lines: [w.none] } : part))
    .filter((part) => part.lines.length > 0);
}
