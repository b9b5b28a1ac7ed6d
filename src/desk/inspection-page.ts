// The inspector's pages as a PDF, in the language that was asked for.

import { eventsOf } from '../animal/event.ts';
import { type RegisterField, registerFields } from '../animal/register.ts';
import { choiceWords, fieldWords } from '../animal/words/register.ts';
import type { AnimalLanguage } from '../animal/words/say.ts';
import { sayDay } from '../animal/words/say.ts';
import { factWord } from '../husbandry/fact-words.ts';
import { factWords } from '../records/fact-words.ts';
import { bookIn, spokenIn } from '../shared/languages.ts';
import { filledPattern } from '../shared/pattern.ts';
import type { InspectedAnimal, Inspection } from './inspect-register.ts';
import { inspectionWords } from './inspection-words.ts';
import { printedPage } from './print/typst-page.ts';

/** What the line under the title tells: whose register, how much of it. */
interface Lead extends Pick<Inspection, 'shopName' | 'branchName' | 'years' | 'search' | 'oneOnly' | 'today'> {
  readonly animals: readonly unknown[];
}

const wordsIn = (language: AnimalLanguage) => bookIn('register', language, inspectionWords);

export function leadOf(inspection: Lead, language: AnimalLanguage): string {
  const { lead, which } = wordsIn(language);
  const { shopName: shop, branchName: branch, years, search } = inspection;
  const told = inspection.oneOnly ? which.one : search === '' ? which.all : which.some;
  const day = sayDay(inspection.today, language);
  const blanks = { shop, branch, count: inspection.animals.length, day };
  return filledPattern(lead, { ...blanks, which: filledPattern(told, { years, search }, language) }, language);
}

export function inspectionPdf(inspection: Inspection, language: AnimalLanguage, at: Date): Buffer {
  const w = wordsIn(language);
  return printedPage(
    'inspection.typ',
    {
      language,
      title: w.title,
      lead: leadOf(inspection, language),
      footer: `${inspection.shopName}, ${sayDay(inspection.today, language)}`,
      missingTitle: w.missingTitle,
      missingNone: w.missingNone,
      missingHead: w.missingHead,
      missing: inspection.animals.flatMap((animal) => missingRows(animal, inspection, language)),
      fieldHead: w.fieldHead,
      animals: inspection.animals.map((animal) => block(animal, language)),
      notesTitle: w.notesTitle,
      notes: w.notes,
    },
    at,
  );
}

const titleOf = ({ record }: InspectedAnimal): string =>
  `${record.entry.callName || record.row.id.slice(0, 8)} · ${record.species.scientificName}`;

function missingRows(
  animal: InspectedAnimal,
  { lawTitles }: Inspection,
  language: AnimalLanguage,
): readonly (readonly string[])[] {
  return animal.headings
    .filter((finding) => finding.state === 'missing')
    .map(({ heading, law }) => [
      titleOf(animal),
      spokenIn(heading.say, language),
      law
        ? [cited(lawTitles[law.source], law.source, language), law.at].filter((part) => part !== '').join(', ')
        : wordsIn(language).ours,
    ]);
}

function cited(law: Inspection['lawTitles'][string] | undefined, source: string, language: AnimalLanguage): string {
  if (law === undefined) return source;
  const { title, lookedAtOn } = law;
  return lookedAtOn === null ? title : `${title}, ${wordsIn(language).lookedAt(sayDay(lookedAtOn, language))}`;
}

function block(animal: InspectedAnimal, language: AnimalLanguage) {
  const w = wordsIn(language);
  const { record } = animal;
  return {
    title: titleOf(animal),
    state: animal.record.row.gone ? w.gone(sayDay(animal.goneOn ?? '', language)) : w.enclosure(record.row.enclosure),
    fields: registerFields.map((field) => ({
      name: spokenIn(fieldWords[field], language),
      law: animal.headings.find(({ heading }) => heading.field === field)?.heading.paragraph ?? '',
      value: shownValue(animal, field, language),
    })),
    parts: partsOf(animal, language),
  };
}

export function shownValue({ record }: InspectedAnimal, field: RegisterField, language: AnimalLanguage): string {
  const value = record.entry[field] ?? '';
  if (value === '') return wordsIn(language).notSaid;
  if (field === 'speciesId')
    return `${factWord(factWords(language), record.species.commonName)} (${record.species.scientificName})`;
  const chosen = choiceWords[value];
  return chosen === undefined ? sayDay(value, language) : spokenIn(chosen, language);
}

function partsOf({ record, corrections }: InspectedAnimal, language: AnimalLanguage) {
  const w = wordsIn(language);
  const day = (on: string): string => sayDay(on, language);
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
      lines: eventsOf(record.events, 'movement').map(({ on, body, by }) => line(day(on), body.toPlace, body.why, by)),
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
      lines: corrections.map((one) =>
        line(
          day(one.at.slice(0, 10)),
          one.by,
          one.what,
          one.now === '' ? w.withdrawn : w.was(one.was, one.now),
          one.reason,
        ),
      ),
    },
  ];
  // an inspector asks for treatments: that there were none is an answer too
  return parts
    .map((part) => (part.title === w.treatment && part.lines.length === 0 ? { ...part, lines: [w.none] } : part))
    .filter((part) => part.lines.length > 0);
}
