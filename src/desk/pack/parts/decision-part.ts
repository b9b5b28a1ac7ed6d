// Part 9: how it came to this: released by whom, what was overridden and why, whose own values were used, and where each
// heading that the law of the place asks for stands.
import { spokenIn } from '../../../shared/languages.ts';
import { type Block, numberOfPart, type PackPart, text } from '../blocks.ts';
import type { PackSubject } from '../pack-subject.ts';
import { shortened, type Tongue } from '../tongue.ts';
import { shopValueInWords } from './shop-value.ts';

/** How many overrides and shop values are told, and how much of a reason; the record holds the rest. */
export interface Told {
  readonly count: number;
  readonly letters: number;
}

export function decisionPart(subject: PackSubject, tongue: Tongue, told: Told): readonly Block[] {
  const { w, day, typed } = tongue;
  const { state, ended } = subject;
  const states = w.decision.states;
  const by = ended === null ? null : ([day(ended.on), typed(ended.by)] as const);
  const stands = by === null || state === 'open' ? states.open : states[state](...by);
  return [
    text(stands),
    ...listed(w.decision.overridden, w.decision.noOverride, overrides(subject, tongue, told)),
    ...listed(w.decision.values, w.decision.noValue, values(subject, tongue, told)),
    ...subject.places.flatMap((place) => headings(subject, place, tongue)),
    text(w.decision.rights),
  ];
}

const listed = (lead: string, none: string, lines: readonly string[]): readonly Block[] =>
  lines.length === 0 ? [text(none)] : [{ kind: 'list', items: [{ lead, text: `${lines.join('. ')}.` }] }];

function overrides(
  { overrides: all }: PackSubject,
  { w, language, day, typed }: Tongue,
  { count, letters }: Told,
): readonly string[] {
  const said = all
    .slice(0, count)
    .map((one) =>
      w.decision.override(
        one.what[language] ?? one.what.en ?? '',
        typed(shortened(one.why, letters)),
        typed(one.by),
        day(one.on),
      ),
    );
  return all.length > said.length ? [...said, w.more(all.length - said.length)] : said;
}

function values({ shopValues }: PackSubject, tongue: Tongue, { count, letters }: Told): readonly string[] {
  const said = shopValues.slice(0, count).map((one) => shopValueInWords(one, tongue, letters));
  return shopValues.length > said.length ? [...said, tongue.w.more(shopValues.length - said.length)] : said;
}

function headings(
  { care, facts }: PackSubject,
  place: PackSubject['places'][number],
  tongue: Tongue,
): readonly Block[] {
  const { w, language, cite, day } = tongue;
  const asked = care.careHeadings.filter((one) => one.laws[place] !== undefined);
  const name = w.lawPlaces[place] ?? place;
  const shown = asked.length > 0 ? asked : care.careHeadings;
  const rows = shown.map(
    (one) => `${spokenIn(one.say, language)}: ${one.parts.map((part) => numberOfPart(part as PackPart)).join(', ')}`,
  );
  const rule = facts.law.find((one) => one.effect.kind === 'written-information' && one.places.includes(place));
  const checked = rule ? ` (${w.sources.checked(day(rule.dateChecked))})` : '';
  const sources = asked.length > 0 ? cite(...asked.map((one) => one.laws[place]!)) : cite({ source: 'OUR-CHOICE' });
  const lead = asked.length > 0 ? w.decision.laws(name) : w.decision.lawNone(name);
  return [{ kind: 'list', items: [{ lead, text: `${w.decision.lawParts(rows.join('; '))}${checked}${sources}` }] }];
}
