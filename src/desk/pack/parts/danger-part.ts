// Part 7: what can hurt a person or the animal, from data/cautions.json, by topic, each with who decides.
import type { Caution } from '../../../husbandry/fact-tables.ts';
import { rangeOf } from '../../../husbandry/species-facts.ts';
import { type Block, text } from '../blocks.ts';
import type { PackSubject } from '../pack-subject.ts';
import type { Tongue } from '../tongue.ts';

/** Said in other parts of the pack. */
const saidElsewhere = ['power-cut', 'heat-wave', 'vet-now', 'help-order'];
const mildVenom = ['western-hognose', 'garter', 'chequered-garter'];
/** Length from which two people handle it (data/cautions.json, large-constrictor) [cm]. */
const largeCm = 150;

export function dangerPart(subject: PackSubject, tongue: Tongue): readonly Block[] {
  const cautions = cautionsFor(subject);
  const topics = [...new Set(cautions.map((one) => one.topic))];
  const items = topics.map((topic) => ({
    lead: tongue.w.danger.topics[topic] ?? topic,
    text: topicInWords(
      cautions.filter((one) => one.topic === topic),
      tongue,
    ),
  }));
  return [{ kind: 'list', items }, text(tongue.w.danger.household)];
}

/** Every caution that the pack owes this keeper. */
export function cautionsFor({ facts, animal }: PackSubject): readonly Caution[] {
  const { species } = animal;
  const constrictor = ['Boidae', 'Pythonidae'].includes(species.family);
  const large = constrictor && (rangeOf(species, 'adult', 'totalLengthCm')?.high ?? 0) >= largeCm;
  return facts.cautions.filter((one) => {
    if (!one.shownAt.includes('pack') || saidElsewhere.includes(one.id)) return false;
    if (one.id === 'bite-hognose') return mildVenom.includes(species.id);
    return one.id !== 'large-constrictor' || large;
  });
}

function topicInWords(cautions: readonly Caution[], { w, cite, fact, prose }: Tongue): string {
  const said = cautions.map((one) => `${prose(w.danger.cautions[one.id] ?? fact(one.say))}${cite(one)}`);
  const deciders = [...new Set(cautions.map((one) => w.deciders[one.decides] ?? fact(one.decides)))];
  return `${said.join(' ')} ${w.decides(deciders.join(', '))}`;
}
