// Part 1: who and what is handed over, as far as the record knows it.

import { eventsOf, lastOf } from '../../../animal/event.ts';
import { sayPrey } from '../../../animal/words/prey.ts';
import { choiceWords } from '../../../animal/words/register.ts';
import { factOf, rangeOf, wordOf } from '../../../husbandry/species-facts.ts';
import { spokenIn } from '../../../shared/languages.ts';
import { type Block, text } from '../blocks.ts';
import type { PackAnimal, PackSubject } from '../pack-subject.ts';
import { shortened, type Tongue } from '../tongue.ts';

const mealsShown = 5;
const treatmentsShown = 4;
/** A longest life from here on is told in decades; our choice. */
const decadesFromYears = 18;

export function animalPart(subject: PackSubject, tongue: Tongue): readonly Block[] {
  const { w, typed } = tongue;
  const { animal } = subject;
  const seller = [subject.shopName, subject.branchName]
    .filter((name) => name !== '')
    .map(typed)
    .join(', ');
  const blocks: Block[] = [{ kind: 'facts', rows: factsOf(animal, tongue) }];
  const told = signsToTell(subject, tongue);
  if (told !== '') blocks.push(text(`${w.animal.told}: ${told}`));
  return [
    ...blocks,
    {
      kind: 'hand',
      lines: [
        { label: w.animal.seller, value: seller },
        { label: w.animal.keeper, value: '' },
      ],
    },
  ];
}

function factsOf(animal: PackAnimal, tongue: Tongue): (readonly [string, string])[] {
  const { w, day, typed } = tongue;
  const { species, entry, events } = animal;
  const entered = (value: string | undefined): string => {
    if (value === undefined || value === '') return w.notSaid;
    const chosen = choiceWords[value];
    return chosen === undefined ? typed(day(value)) : spokenIn(chosen, tongue.language);
  };
  const mark = [entry.chipNumber, entry.otherMark].filter((one) => one !== undefined && one !== '').join(', ');
  const papers = [entry.paperKind, entry.paperNumber].filter((one) => one !== undefined && one !== '').join(', ');
  const annex = wordOf(species, 'adult', 'euAnnex');
  return [
    [w.animal.species, `${w.species[species.id] ?? tongue.fact(species.commonName)}, ${species.scientificName}`],
    [w.animal.name, entered(entry.callName)],
    [w.animal.register, animal.registerId === null ? w.notSaid : animal.registerId.slice(0, 13)],
    [w.animal.sex, entered(entry.sex)],
    [w.animal.born, entered(entry.hatched)],
    [w.animal.stage, animal.stage === null ? w.notKnown : w.stages[animal.stage]],
    [w.animal.form, entered(entry.colourForm)],
    [w.animal.bred, entered(entry.bred)],
    [w.animal.origin, entered(entry.originCountry)],
    [w.animal.supplier, entered(entry.supplierName)],
    [w.animal.came, entered(entry.acquiredOn)],
    [w.animal.mark, entered(mark)],
    [
      w.animal.papers,
      [entered(papers), annex === 'A' || annex === 'B' ? w.animal.annex(annex) : ''].filter((s) => s !== '').join('. '),
    ],
    [w.animal.mass, measured(animal.massG, 'mass', lastMassDay(animal), tongue)],
    [
      w.animal.length,
      measured(
        animal.totalLengthCm === null ? null : animal.totalLengthCm / 100,
        'length',
        lastOf(events, 'length')?.on ?? null,
        tongue,
      ),
    ],
    [w.animal.adult, grown(animal, tongue)],
    [w.animal.meals, meals(animal, tongue)],
    [w.animal.slough, slough(animal, tongue)],
    [w.animal.treatments, treatments(animal, tongue)],
    [w.animal.examined, examined(animal, tongue)],
    [w.animal.life, life(animal, tongue)],
  ];
}

function measured(value: number | null, kind: 'mass' | 'length', on: string | null, { w, m, day }: Tongue): string {
  if (value === null) return w.notKnown;
  const said = m.text(kind, value, kind === 'mass' && m.settings.mass === 'oz' ? 1 : 0);
  return on === null ? said : w.animal.on(said, day(on));
}

const lastMassDay = ({ events }: PackAnimal): string | null =>
  [...eventsOf(events, 'weighing'), ...eventsOf(events, 'examination').filter((e) => e.body.massG !== null)]
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1)?.on ?? null;

function grown({ species }: PackAnimal, { w, m, cite }: Tongue): string {
  const range = rangeOf(species, 'adult', 'totalLengthCm');
  if (range === null) return w.notKnown;
  return `${m.span('length', range.low / 100, range.high / 100)}${cite(range)}`;
}

function meals({ events }: PackAnimal, { w, day, language, typed }: Tongue): string {
  const last = eventsOf(events, 'feeding').slice(-mealsShown).reverse();
  const said = last.map(({ on, body }) =>
    w.animal.meal(
      day(on),
      (body.count > 1 ? `${body.count} × ` : '') + typed(sayPrey(body.preyId, language)),
      w.animal.outcomes[body.outcome],
    ),
  );
  return said.length === 0 ? w.none : said.join('; ');
}

function slough({ events }: PackAnimal, { w, day }: Tongue): string {
  const last = lastOf(events, 'slough');
  return last === null ? w.none : `${day(last.on)}, ${w.animal.sloughs[last.body.stage]}`;
}

function treatments({ events }: PackAnimal, { w, day, typed }: Tongue): string {
  const all = eventsOf(events, 'treatment');
  if (all.length === 0) return w.none;
  const said = all
    .slice(-treatmentsShown)
    .reverse()
    .map(({ on, body }) =>
      [day(on), w.animal.steps[body.step], typed(shortened(body.what, 160)), typed(shortened(body.vet, 80))]
        .filter((part) => part !== '')
        .join(' '),
    );
  const rest = all.length - said.length;
  return [...said, ...(rest > 0 ? [w.more(rest)] : [])].join('; ');
}

function examined({ events, fitness }: PackAnimal, { w, day, typed }: Tongue): string {
  const last = lastOf(events, 'examination');
  if (last === null) return w.none;
  const verdict = fitness === null || fitness === 'gone' ? '' : `: ${w.animal.fitness[fitness]}`;
  return `${w.animal.on(typed(last.by), day(last.on))}${verdict}`;
}

function life({ species, stage }: PackAnimal, { w, m, cite }: Tongue): string {
  const years = factOf(species, stage ?? 'adult', 'longevityMaxYears');
  return typeof years?.value === 'number'
    ? `${w.animal.lifeIs(m.number(years.value, 0), years.value >= decadesFromYears)}${cite(years)}`
    : w.animal.lifeUnknown;
}

/** Signs of the last examination that whoever takes the animal is told of. */
function signsToTell({ animal, care }: PackSubject, { language, prose }: Tongue): string {
  const answers = lastOf(animal.events, 'examination')?.body.answers ?? {};
  const told = care.examination.flatMap((step) =>
    step.signs.filter((sign) => sign.disclose === true && (answers[step.id] ?? []).includes(sign.id)),
  );
  return told.map((sign) => prose(spokenIn(sign.say, language))).join('; ');
}
