// A pack as numbered parts and as a PDF: 2 to 6 pages whatever is written in it. Rows to write in and the size of the
// drawings give way first; letters never get smaller.

import type { PaperUnits } from '../paper-units.ts';
import { type SetPages, setPages } from '../print/typst-page.ts';
import { type Block, numberOfPart, type PackPart, packParts } from './blocks.ts';
import type { PackFigures } from './pack-job.ts';
import type { PackSubject } from './pack-subject.ts';
import { animalPart } from './parts/animal-part.ts';
import { carePart } from './parts/care-part.ts';
import { dangerPart } from './parts/danger-part.ts';
import { decisionPart } from './parts/decision-part.ts';
import { feedingPart } from './parts/feeding-part.ts';
import { homePart } from './parts/home-part.ts';
import { recordsPart, signaturesPart } from './parts/records-part.ts';
import { signsPart } from './parts/signs-part.ts';
import { troublePart } from './parts/trouble-part.ts';
import { weeksPart } from './parts/weeks-part.ts';
import { allSources } from './sources.ts';
import { type Tongue, tongueFor } from './tongue.ts';

export const mostPages = 6;

/** How much is drawn large, left to write in, and told of overrides and shop values (the record holds the rest); tried
 *  one after the other until it fits. */
const fits = [
  { tight: false, rows: 18, told: { count: 6, letters: 240 } },
  { tight: false, rows: 14, told: { count: 6, letters: 240 } },
  { tight: false, rows: 10, told: { count: 6, letters: 240 } },
  { tight: true, rows: 8, told: { count: 6, letters: 240 } },
  { tight: true, rows: 5, told: { count: 6, letters: 240 } },
  { tight: true, rows: 4, told: { count: 4, letters: 120 } },
  { tight: true, rows: 3, told: { count: 2, letters: 60 } },
] as const;
export type PackFit = (typeof fits)[number];

interface SetPart {
  readonly title: string;
  readonly blocks: readonly Block[];
}

export interface PackPaper {
  readonly language: string;
  readonly title: string;
  readonly lead: string;
  readonly footer: string;
  readonly parts: readonly SetPart[];
}

/** The pages as data for the template. */
export function packPaper(
  subject: PackSubject,
  figures: PackFigures,
  units: PaperUnits,
  fit: PackFit = fits[0],
): PackPaper {
  const { tongue, cited } = tongueFor(units);
  const { w, day, typed } = tongue;
  const blocksOf: Readonly<Record<PackPart, () => readonly Block[]>> = {
    animal: () => animalPart(subject, tongue),
    home: () => homePart(subject, figures, tongue, fit.tight),
    weeks: () => weeksPart(subject, tongue),
    feeding: () => feedingPart(subject, tongue),
    care: () => carePart(subject, figures, tongue),
    trouble: () => troublePart(subject, figures, tongue),
    danger: () => dangerPart(subject, tongue),
    signs: () => signsPart(subject, tongue),
    decision: () => decisionPart(subject, tongue, fit.told),
    records: () => recordsPart(tongue, fit.rows),
    signatures: () => signaturesPart(tongue),
    sources: () => [allSources(cited, subject.facts.sources, tongue)],
  };
  const parts = packParts.map((part) => ({
    title: `${numberOfPart(part)} ${w.sections[part]}`,
    blocks: blocksOf[part](),
  }));
  const name = typed(subject.animal.entry.callName ?? '') || speciesName(subject, tongue);
  const printed = day(subject.printedOn);
  return {
    language: units.language,
    title: w.title,
    lead: w.lead(`${name} · ${speciesName(subject, tongue)}`, printed),
    footer: w.footer(
      [subject.shopName, subject.animal.registerId?.slice(0, 8) ?? '']
        .filter((s) => s !== '')
        .map(typed)
        .join(' · '),
      printed,
    ),
    parts,
  };
}

const speciesName = ({ animal }: PackSubject, { w, fact }: Tongue): string =>
  w.species[animal.species.id] ?? fact(animal.species.commonName);

/** The pages of the first fit that is short enough. Throws when none is: our own bug. */
export function packPages(
  subject: PackSubject,
  figures: PackFigures,
  units: PaperUnits,
): { readonly pages: SetPages; readonly fit: PackFit } {
  for (const fit of fits) {
    const pages = setPages('pack.typ', packPaper(subject, figures, units, fit));
    if (pages.count <= mostPages) return { pages, fit };
  }
  throw new Error(`a pack does not fit on ${mostPages} pages`);
}

export const packPdf = (subject: PackSubject, figures: PackFigures, units: PaperUnits): Buffer =>
  packPages(subject, figures, units).pages.pdf(new Date(`${subject.printedOn}T00:00:00Z`));
