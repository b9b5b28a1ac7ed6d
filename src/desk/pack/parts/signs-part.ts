// Part 8: which signs send it to the vet at once, which soon, and whom to call.
import { spokenIn } from '../../../shared/languages.ts';
import { type Block, text } from '../blocks.ts';
import type { PackSubject } from '../pack-subject.ts';
import type { Tongue } from '../tongue.ts';

export function signsPart(subject: PackSubject, tongue: Tongue): readonly Block[] {
  const { w, cite, language, typed, prose } = tongue;
  const { redFlags, complaints } = subject.care.triage;
  const order = subject.facts.cautions.find((one) => one.id === 'help-order');
  return [
    {
      kind: 'notice',
      title: `${w.signs.now}${cite(...redFlags)}`,
      lines: [],
      bullets: redFlags.map((flag) => prose(spokenIn(flag.say, language))),
    },
    text(`${w.signs.soon}${cite(...complaints)}:`),
    {
      kind: 'list',
      items: complaints.map((one) => ({
        lead: spokenIn(one.title, language),
        text: prose(spokenIn(one.vet, language)),
      })),
    },
    text(`${w.signs.order}${order ? cite(order) : ''}`),
    {
      kind: 'hand',
      lines: [
        { label: w.signs.vet, value: typed(subject.vetName) },
        { label: w.signs.emergency, value: '' },
        { label: `${w.signs.shop}, ${w.signs.phone}`, value: '' },
      ],
    },
  ];
}
