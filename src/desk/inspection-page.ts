// The inspector's pages as a PDF, in the language that was asked for.

import { eventsOf } from '../animal/event.ts';
import { type RegisterField, registerFields } from '../animal/register.ts';
import { choiceWords, fieldWords } from '../animal/words/register.ts';
import type { AnimalLanguage } from '../animal/words/say.ts';
import { sayDay } from '../animal/words/say.ts';
import { factWord } from '../husbandry/fact-words.ts';
import { factWords } from '../records/fact-words.ts';
import type { InspectedAnimal, Inspection } from './inspect-register.ts';
import { printedPage } from './print/typst-page.ts';

/** What the line under the title tells: whose register, how much of it. */
interface Lead extends Pick<Inspection, 'shopName' | 'branchName' | 'years' | 'search' | 'oneOnly' | 'today'> {
  readonly animals: readonly unknown[];
}

const words = {
  en: {
    title: 'Register of animals',
    lead: (i: Lead) =>
      `${i.shopName}, ${i.branchName}. ${i.animals.length} ${i.animals.length === 1 ? 'animal' : 'animals'}: ${
        i.oneOnly
          ? 'the one that was asked for, not the whole register'
          : i.search === ''
            ? `all that are here, and those gone in the last ${i.years} years`
            : `only those with “${i.search}” in their entry, here or gone in the last ${i.years} years`
      }. Printed ${sayDay(i.today, 'en')}.`,
    none: 'none on record',
    steps: { start: 'started', given: 'given', end: 'ended' },
    outcomes: { sold: 'sold', rehomed: 'rehomed', returned: 'came back' },
    missingTitle: 'What is missing',
    missingNone: 'Nothing is missing under any heading that is asked for.',
    missingHead: ['Animal', 'Heading', 'Asked for by'],
    ours: 'our own default',
    lookedAt: (day: string) => `looked at ${day}`,
    fieldHead: ['Field', 'Value'],
    notSaid: 'not entered',
    treatment: 'Treatments',
    movement: 'Movements',
    sale: 'Sale or rehoming',
    death: 'Death',
    corrections: 'Corrections',
    was: (was: string, now: string) => `was “${was}”, now “${now}”`,
    withdrawn: 'withdrawn',
    gone: (on: string) => `Gone since ${on}.`,
    enclosure: (at: string) => `In ${at}.`,
    notesTitle: 'How to read this',
    notes: [
      'A mark beside a field names the sub-paragraph of schedule 3 paragraph 2(1) of the English licensing regulations of 2018 that asks for it.',
      'Corrections never erase: the old value, who changed it, when and why stay in the register.',
      'Treatments are written as staff or vet wrote them.',
    ],
  },
  de: {
    title: 'Tierregister',
    lead: (i: Lead) =>
      `${i.shopName}, ${i.branchName}. ${i.animals.length} ${i.animals.length === 1 ? 'Tier' : 'Tiere'}: ${
        i.oneOnly
          ? 'das eine, nach dem gefragt war, nicht das ganze Register'
          : i.search === ''
            ? `alle, die hier sind, und die in den letzten ${i.years} Jahren abgegangenen`
            : `nur die mit „${i.search}“ im Eintrag, hier oder in den letzten ${i.years} Jahren abgegangen`
      }. Gedruckt ${sayDay(i.today, 'de')}.`,
    none: 'keine eingetragen',
    steps: { start: 'begonnen', given: 'gegeben', end: 'beendet' },
    outcomes: { sold: 'verkauft', rehomed: 'vermittelt', returned: 'zurückgekommen' },
    missingTitle: 'Was fehlt',
    missingNone: 'Unter keiner verlangten Überschrift fehlt etwas.',
    missingHead: ['Tier', 'Überschrift', 'Verlangt von'],
    ours: 'unsere eigene Vorgabe',
    lookedAt: (day: string) => `nachgesehen ${day}`,
    fieldHead: ['Feld', 'Wert'],
    notSaid: 'nicht eingetragen',
    treatment: 'Behandlungen',
    movement: 'Ortswechsel',
    sale: 'Verkauf oder Vermittlung',
    death: 'Tod',
    corrections: 'Berichtigungen',
    was: (was: string, now: string) => `vorher „${was}“, jetzt „${now}“`,
    withdrawn: 'zurückgenommen',
    gone: (on: string) => `Abgegangen am ${on}.`,
    enclosure: (at: string) => `In ${at}.`,
    notesTitle: 'Lesehilfe',
    notes: [
      'Ein Zeichen neben einem Feld nennt den Buchstaben von Anhang 3 Absatz 2(1) der englischen Lizenzverordnung von 2018, der es verlangt.',
      'Berichtigungen löschen nichts: alter Wert, wer, wann und warum bleiben im Register.',
      'Behandlungen stehen so da, wie Personal oder Tierarzt sie schrieben.',
    ],
  },
} as const;

export const leadOf = (inspection: Lead, language: AnimalLanguage): string => words[language].lead(inspection);

export function inspectionPdf(inspection: Inspection, language: AnimalLanguage, at: Date): Buffer {
  const w = words[language];
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
      heading.say[language],
      law
        ? [cited(lawTitles[law.source], law.source, language), law.at].filter((part) => part !== '').join(', ')
        : words[language].ours,
    ]);
}

function cited(law: Inspection['lawTitles'][string] | undefined, source: string, language: AnimalLanguage): string {
  if (law === undefined) return source;
  const { title, lookedAtOn } = law;
  return lookedAtOn === null ? title : `${title}, ${words[language].lookedAt(sayDay(lookedAtOn, language))}`;
}

function block(animal: InspectedAnimal, language: AnimalLanguage) {
  const w = words[language];
  const { record } = animal;
  return {
    title: titleOf(animal),
    state: animal.record.row.gone ? w.gone(sayDay(animal.goneOn ?? '', language)) : w.enclosure(record.row.enclosure),
    fields: registerFields.map((field) => ({
      name: fieldWords[field][language],
      law: animal.headings.find(({ heading }) => heading.field === field)?.heading.paragraph ?? '',
      value: shownValue(animal, field, language),
    })),
    parts: partsOf(animal, language),
  };
}

export function shownValue({ record }: InspectedAnimal, field: RegisterField, language: AnimalLanguage): string {
  const value = record.entry[field] ?? '';
  if (value === '') return words[language].notSaid;
  if (field === 'speciesId')
    return `${factWord(factWords(language), record.species.commonName)} (${record.species.scientificName})`;
  return choiceWords[value]?.[language] ?? sayDay(value, language);
}

function partsOf({ record, corrections }: InspectedAnimal, language: AnimalLanguage) {
  const w = words[language];
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
