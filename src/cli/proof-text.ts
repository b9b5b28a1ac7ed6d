// A proof for a person at a terminal: the verdict and the next thing to do first, then what was understood, then why.
import type { LoggerFile } from '../desk/logger-file.ts';
import type { UsedShopValues } from '../husbandry/used-shop-values.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import type { NextReading } from '../proving/calibration/next-reading.ts';
import { wallText } from '../proving/files/stamp.ts';
import type { ProofAnswer } from '../proving/verdict/proof-answer.ts';
import { forecastSentence, needSentence } from '../proving/verdict/words.ts';
import type { Display } from './display.ts';
import type { Messages } from './messages/en.ts';
import { saidIn } from './need-words.ts';
import type { ProofMessages } from './proof-messages.ts';
import { proofSaid } from './proof-said.ts';
import { ownValueLines } from './shop-values.ts';
import type { Terminal } from './terminal.ts';
import { wrapped } from './wrap.ts';

export interface ProofTextInput {
  readonly read: readonly { readonly name: string; readonly file: LoggerFile }[];
  readonly answer: ProofAnswer;
  readonly used: UsedShopValues;
  readonly enclosure: Enclosure;
  readonly show: Display;
  readonly terminal: Terminal;
  readonly words: ProofMessages;
  readonly messages: Messages;
}

const delimiterNames: Readonly<Record<string, string>> = { ',': '","', ';': '";"', '\t': 'TAB', '|': '"|"' };

export function proofLines(input: ProofTextInput): string[] {
  const { answer, enclosure, terminal, words, show } = input;
  const { paint, columns } = terminal;
  const said = proofSaid(answer, show);
  const text = (s: string, indent = '  ') => wrapped(s, columns, indent);
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', paint.bold(title), ...lines];
  const own = ownValueLines(input.used, terminal, input.messages, show);
  return [
    paint.bold(enclosure.name),
    ...wrapped(said.reason(answer.ground, answer.reason), columns, `${paint.bold(words.verdicts[answer.verdict])}  `),
    ...wrapped(said.next(), columns, `${words.next}: `),
    ...section(
      words.understood,
      input.read.flatMap((r) => understoodLines(r, input)),
    ),
    ...section(
      words.why,
      answer.reasons.flatMap((r, i) => text(said.reason(answer.grounds?.[i], r))),
    ),
    ...section(
      words.needs,
      answer.needs.flatMap((n) =>
        text(said.reason({ about: 'need', id: n.id }, needSentence(n)), `  ${words.states[n.state]}  `),
      ),
    ),
    ...section(words.forecast, momentLines(input)),
    ...section(
      '',
      answer.forecastNeeds.flatMap((n) => text(said.reason({ about: 'forecast', id: n.id }, forecastSentence(n)))),
    ).slice(2),
    ...section(
      words.suspects,
      answer.diagnosis.suspects.slice(0, 2).flatMap((s) => text(said.suspect(s))),
    ),
    ...section(words.learned, learnedLines(input)),
    ...section(
      words.more,
      answer.nextReadings
        .slice(0, 3)
        .map((n) => `  ${readingName(n, input)}: ${words.widthLeft(show.percent(100 * n.widthLeftFrac))}`),
    ),
    ...(own.length > 0 ? ['', ...own] : []),
    '',
    ...wrapped(words.basis(said.rule()), columns).map((l) => paint.dim(l)),
    ...wrapped(words.model, columns).map((l) => paint.dim(l)),
  ];
}

function understoodLines({ name, file }: ProofTextInput['read'][number], input: ProofTextInput): string[] {
  const { words, terminal, messages, show } = input;
  const said = proofSaid(input.answer, show);
  const u = file.understood;
  const aside = Object.entries(u.rejectedByReason).filter(([reason]) => reason !== 'empty');
  const times = u.log.timesS;
  const place = (p: string | null) =>
    p === null
      ? words.unknownPlace
      : p === 'room'
        ? words.room('').trim()
        : (messages.places[p as keyof Messages['places']] ?? p);
  const lines = [
    words.file(
      name,
      u.rowsRead,
      u.rowsInFile,
      aside.reduce((s, [, n]) => s + (n ?? 0), 0),
    ),
    words.layout(
      delimiterNames[u.delimiter] ?? u.delimiter,
      said.order(u.dateOrder),
      u.decimal === '.' ? '"."' : '","',
      saidIn(show, u.clock.told, u.clock.say),
    ),
    words.span(wallText(times[0]!), wallText(times.at(-1)!), (u.intervalS / 60).toFixed(0)),
    ...u.log.channels.map((c) => words.channel(c.label, place(c.place))),
    ...aside.map(([reason, n]) => `${n} ${words.aside[reason as keyof ProofMessages['aside']]}`),
    ...u.findings.map((f) => saidIn(show, f.told, f.say)),
    ...u.questions.map((q) => `${words.questions}: ${said.question(q)}`),
  ];
  return lines.flatMap((l) => wrapped(l, terminal.columns, '  '));
}

function momentLines({ answer, words, show, messages }: ProofTextInput): string[] {
  return answer.moments.flatMap((m) => {
    const places = (['basking-surface', 'warm-hide', 'warm-air', 'cool-air'] as const).flatMap((p) => {
      const s = m.spreadC[p];
      return s === undefined ? [] : [`    ${messages.places[p].padEnd(18)} ${show.spread(s)} ${show.tempUnit}`];
    });
    return [`  ${words.moments[m.id]}, ${words.room(show.temp(m.roomC))}`, ...places];
  });
}

function learnedLines({ answer, words, show }: ProofTextInput): string[] {
  const said = proofSaid(answer, show);
  const names = answer.learned.map(said.learned);
  const width = Math.max(24, ...names.map((one) => one.length + 1));
  return answer.learned.map(
    (l, i) =>
      `  ${names[i]!.padEnd(width)} ${words.marks[l.mark].padEnd(12)} ${words.widthLeft(show.percent(100 * l.widthLeftFrac))}`,
  );
}

const readingName = (n: NextReading, { messages }: ProofTextInput): string =>
  n.kind === 'power' ? 'W' : `${messages.places[n.place!]}${n.kind === 'check' ? ' (0 °C)' : ''}`;
