// A search for kits in words: the choices, why cheaper ones fell out, what is not allowed, what would help.

import type { ClimateNeeds } from '../husbandry/climate.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import type { KitChoice, SearchAnswer } from '../planning/search/search-answer.ts';
import type { HelpingChange } from '../planning/search/what-helps.ts';
import type { Verdict } from '../shared/verdict.ts';
import type { ChooseWords } from './choose-words.ts';
import type { Display } from './display.ts';
import { fellOutSaid, kitName, noneSaid, refusalSaid, titleAndReason } from './found-words.ts';
import { helpStepSaid } from './help-words.ts';
import type { Messages } from './messages/en.ts';
import { factSaid, needTitle } from './need-words.ts';
import type { Terminal } from './terminal.ts';
import { wrapped } from './wrap.ts';

export interface ChooseText {
  readonly show: Display;
  readonly terminal: Terminal;
  readonly messages: Messages;
  readonly words: ChooseWords;
  readonly climate: ClimateNeeds;
  readonly enclosure: Enclosure;
}

export interface SearchText extends ChooseText {
  readonly answer: SearchAnswer;
  readonly helps: readonly HelpingChange[];
}

export const shapeOf: Readonly<Record<Verdict, string>> = { fails: 'x', 'not-known': '?', holds: '+' };
const shownHelps = 5;
const shownRefusals = 6;

export function searchLines(input: SearchText): string[] {
  const { answer, terminal, words, enclosure, helps } = input;
  const { paint, columns } = terminal;
  const sections: string[][] = [
    [paint.bold(`${words.choices}: ${enclosure.name}`)],
    answer.none ? wrapped(noneSaid(input), columns, `${words.none}: `) : [],
    ...answer.choices.slice(0, 4).map((choice, i) => choiceLines(choice, i + 1, input)),
    helps.length > 0
      ? [
          paint.bold(words.helps),
          ...helps
            .slice(0, shownHelps)
            .flatMap((h) => wrapped(helpSaid(h, input), columns, `  ${shapeOf[h.verdict]} `)),
          ...wrapped(words.helpNote, columns, '    '),
        ]
      : [],
    answer.homeNeeds.length > 0
      ? [
          paint.bold(words.home),
          ...answer.homeNeeds.flatMap((n) => wrapped(titleAndReason(n, input), columns, `  ${shapeOf[n.verdict]} `)),
        ]
      : [],
    answer.fellOut.length > 0
      ? [
          paint.bold(words.fellOut(answer.fellOutCount)),
          ...answer.fellOut
            .slice(0, 8)
            .flatMap((f) =>
              wrapped(
                `${money(f.cost, input)}  ${kitName(f, input)}${changesOf(f, words)}: ${fellOutSaid(f, input)}`,
                columns,
                `  ${shapeOf[f.verdict]} `,
              ),
            ),
        ]
      : [],
    answer.refusals.length > 0
      ? [
          paint.bold(words.refused(answer.kitsRefused)),
          ...answer.refusals
            .slice(0, shownRefusals)
            .flatMap((r) => wrapped(`${refusalSaid(r, input.show)} (${r.kits})`, columns, '  - ')),
        ]
      : [],
    wrapped(
      [
        words.work(answer.kitsTried, answer.work.solved, answer.work.all),
        words.tariff(input.show.number(answer.tariffPerKWh, 4), answer.currency),
        ...(answer.pricesInvented ? [words.invented] : []),
        input.messages.plan.basis(answer.members, answer.seed),
      ].join(' '),
      columns,
    ).map((line) => paint.dim(line)),
  ];
  return sections.filter((s) => s.length > 0).flatMap((s, i) => (i === 0 ? s : ['', ...s]));
}

export const money = (
  value: number,
  { show, answer }: { readonly show: Display; readonly answer: { readonly currency: string } },
): string => `${show.number(value, 0)} ${answer.currency}`;

/** "Foam outside. And: … (45 GBP)". */
const helpSaid = (help: HelpingChange, input: SearchText): string =>
  `${help.steps.map((step) => helpStepSaid(step, input)).join(` ${input.words.and}: `)} (${
    help.cost === null ? input.words.noPrice : input.words.costs(money(help.cost, input))
  })`;

const changesOf = ({ changes, spot }: Pick<KitChoice, 'changes' | 'spot'>, words: ChooseWords): string =>
  [...(spot === 'usual' ? [] : [words.spots[spot]]), ...changes.map((c) => words.changes[c])]
    .map((w) => `, ${w}`)
    .join('');

function choiceLines(choice: KitChoice, number: number, input: SearchText): string[] {
  const { show, terminal, words, messages, answer } = input;
  const { paint, columns } = terminal;
  const { dial, cost, weakest } = choice;
  const margin =
    weakest.unit === 'K' ? show.span(weakest.margin, 1) : `${show.number(weakest.margin, 1)} ${weakest.unit}`;
  const hide = dial.night.warmHideC ?? dial.night.warmAirC;
  const parts = choice.parts.map(
    (p) =>
      `${factSaid(show, p.name)}${p.count > 1 && p.role !== 'insulation' ? ` × ${show.number(p.count, 1)}` : ''} ${p.owned ? words.there : show.number(p.price, 0)}`,
  );
  return [
    ...wrapped(
      `${kitName(choice, input)}${changesOf(choice, words)}`,
      columns,
      `${number}  ${shapeOf[choice.verdict]} ${messages.verdicts[choice.verdict]}  `,
    ).map((line, i) => (i === 0 ? paint.bold(line) : line)),
    ...wrapped(
      `${words.chance(show.percent(choice.chanceFrac * 100))}; ${words.weakest(needTitle(show, weakest.id, weakest.title), margin)}`,
      columns,
      '     ',
    ),
    ...wrapped(
      `${words.dial(show.temp(dial.setDayC), show.temp(dial.setNightC))}; ${words.expect(show.spread(dial.day.baskingC), show.spread(hide), show.spread(dial.day.coolAirC))}`,
      columns,
      '     ',
    ),
    ...wrapped(
      words.cost(
        cost.years,
        money(cost.total, input),
        show.number(cost.kit, 0),
        show.number(cost.lamps, 0),
        show.number(cost.energy, 0),
        `${show.number(choice.kWhPerYear.median, 0)} (${show.number(choice.kWhPerYear.low, 0)}–${show.number(choice.kWhPerYear.high, 0)})`,
      ),
      columns,
      '     ',
    ),
    ...wrapped(`${words.parts}: ${parts.join(', ')}`, columns, '     '),
    ...(answer.settled ? [] : ['     …']),
  ];
}
