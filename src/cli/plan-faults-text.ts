// Rehearsed faults in words: worst first, with the hours, what the instruments would show, and which guard stops it.
import { atOnce, type FaultFinding, type FaultRehearsal } from '../planning/faults/fault-answer.ts';
import type { Interval } from '../planning/plan-answer.ts';
import { factSaid, saidIn } from './need-words.ts';
import type { ChooseText } from './plan-search-text.ts';
import { wrapped } from './wrap.ts';

export interface FaultText extends ChooseText {
  readonly rehearsal: FaultRehearsal;
}

export function faultLinesOf(input: FaultText): string[] {
  const { rehearsal, terminal, words, enclosure, messages, show } = input;
  const { paint, columns } = terminal;
  const played = rehearsal.findings.filter((f) => !f.skipped);
  const skipped = rehearsal.findings.filter((f) => f.skipped);
  return [
    paint.bold(`${words.faults}: ${enclosure.name}`),
    ...played.flatMap((f) => ['', ...findingLines(f, input)]),
    '',
    ...cutLines(input),
    ...(skipped.length > 0
      ? [
          '',
          paint.bold(words.skipped),
          ...skipped.flatMap((f) =>
            wrapped(`${factSaid(show, f.case.title)}. ${saidIn(show, f.told, f.played)}`, columns, `  ${f.id}  `),
          ),
        ]
      : []),
    '',
    ...wrapped(messages.plan.basis(rehearsal.versions, rehearsal.seed), columns).map((line) => paint.dim(line)),
  ];
}

function findingLines(f: FaultFinding, input: FaultText): string[] {
  const { show, terminal, words } = input;
  const { paint, columns } = terminal;
  const indent = '      ';
  const hours = (i: Interval) => `${show.number(i.median, 1)} h (${show.number(i.low, 1)}–${show.number(i.high, 1)})`;
  const when = (latestH: number, said: string) => (atOnce(latestH) ? words.onceIt : words.when(said));
  const reading = (value: number, unit: '°C' | '%') =>
    unit === '°C' ? show.temp(value) : `${show.number(value, 0)} %`;
  const first = f.first;
  const found = first?.hours
    ? words.after(
        words.lines[first.line.kind],
        when(first.hours.high, hours(first.hours)),
        show.number(first.shareFrac * f.versions, 0),
        show.number(f.versions, 0),
      )
    : words.harmless(f.hoursWatched);
  const worst = f.shows?.atWorst;
  const guards = f.guards.map((g) => {
    const unit = first?.line.unit ?? '°C';
    const end = g.stops
      ? words.stops
      : words.delays(words.h(show.number(g.hours ?? 0, 1)), reading(g.worstWith, unit), reading(g.worstWithout, unit));
    return wrapped(`${saidIn(show, g.told, g.say)} ${end}`, columns, `${indent}> `);
  });
  return [
    paint.bold(`${f.id.padEnd(4)}${factSaid(show, f.case.title)}`),
    ...wrapped(saidIn(show, f.told, f.played), columns, indent),
    ...wrapped(found, columns, indent),
    ...(worst && first
      ? wrapped(
          words.shows(
            show.temp(worst.surfaceC),
            show.temp(worst.baskingC),
            show.temp(worst.coolAirC),
            Number.isFinite(worst.probeC) ? show.temp(worst.probeC) : null,
          ),
          columns,
          indent,
        )
      : []),
    ...(first
      ? wrapped(
          f.alarm
            ? words.alarm(
                words.instruments[f.alarm.instrument] ?? f.alarm.instrument,
                reading(f.alarm.atReading, f.alarm.unit),
                when(f.alarm.afterH, words.h(show.number(f.alarm.afterH, 1))),
              )
            : words.noAlarm,
          columns,
          indent,
        )
      : []),
    ...guards.flat(),
    ...wrapped(show.prose(factSaid(show, f.case.guard)), columns, `${indent}> `),
  ];
}

function cutLines({ rehearsal, show, terminal, words }: FaultText): string[] {
  const { paint, columns } = terminal;
  const card = rehearsal.powerCut;
  const h = (v: number) => words.h(show.number(v, 1));
  const after = card.after.map((a) => `${h(a.hours)}: ${show.temp(a.warmestC)}`).join('   ');
  return [
    paint.bold(words.cut),
    ...wrapped(
      card.hoursToLine
        ? words.cutHours(
            atOnce(card.hoursToLine.high)
              ? words.onceIt
              : words.when(
                  `${h(card.hoursToLine.median)} (${show.number(card.hoursToLine.low, 1)}–${show.number(card.hoursToLine.high, 1)})`,
                ),
            show.temp(card.roomC),
          )
        : words.cutNever,
      columns,
      '  ',
    ),
    ...wrapped(after, columns, '  '),
    ...(card.insulationHours !== null ? wrapped(words.cutFoam(h(card.insulationHours)), columns, '  ') : []),
    ...card.steps.flatMap((step, i) => wrapped(saidIn(show, card.toldSteps[i], step), columns, `  ${i + 1} `)),
  ];
}
