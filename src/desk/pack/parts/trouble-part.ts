// Part 6: power cut, heat wave, cold snap and a thermostat that sticks, with the hours that this very box has.
import type { FaultFinding } from '../../../planning/faults/fault-answer.ts';
import { foam } from '../../../planning/faults/guards.ts';
import { coldSnapK, heatWaveHighC } from '../../../planning/faults/rehearsals.ts';
import { type Block, text } from '../blocks.ts';
import { type PackFigures, packFaults } from '../pack-job.ts';
import type { PackSubject } from '../pack-subject.ts';
import type { Span, Tongue } from '../tongue.ts';

const common = { source: 'COMMON' } as const;

export function troublePart({ facts }: PackSubject, figures: PackFigures, tongue: Tongue): readonly Block[] {
  const { w, m, cite } = tongue;
  const caution = (id: string): string => cite(facts.cautions.find((one) => one.id === id) ?? common);
  const items = [
    { lead: w.trouble.cut, text: `${powerCut(figures, tongue)} ${w.trouble.cutDo}${caution('power-cut')}` },
    { lead: w.trouble.heat, text: `${heatWave(figures, tongue)} ${w.trouble.heatDo}${caution('heat-wave')}` },
    { lead: w.trouble.cold, text: `${coldSnap(figures, tongue)} ${w.trouble.coldDo}${cite(common)}` },
    { lead: w.trouble.stuck, text: `${stuckOn(figures, tongue)} ${w.trouble.stuckDo}${cite(common)}` },
  ];
  return [
    text(w.trouble.note(m.number(figures.rehearsal.versions, 0))),
    { kind: 'list', items: items.slice(0, 1) },
    ...cutTable(figures, tongue),
    { kind: 'list', items: items.slice(1) },
  ];
}

const findingOf = ({ rehearsal }: PackFigures, id: string): FaultFinding | undefined =>
  rehearsal.findings.find((one) => one.id === id && !one.skipped);

const crossingOf = (finding: FaultFinding | undefined, kind: string) =>
  finding?.crossings.find((one) => one.line.kind === kind && one.hours !== null);

function powerCut(figures: PackFigures, tongue: Tongue): string {
  const { w, temp } = tongue;
  const { lines, powerCut: card } = figures.rehearsal;
  const line = temp(lines['too-cold'].at, 0);
  if (card.hoursToLine === null) return w.trouble.cutNever(temp(card.roomC), line);
  return [
    w.trouble.cutIs(temp(card.roomC), line, hours(card.hoursToLine, tongue)),
    ...some(card.shareFrac, tongue),
    ...(card.insulationHours === null
      ? []
      : [w.trouble.foam(thickness(tongue), hours(level(card.insulationHours), tongue))]),
  ].join(' ');
}

const thickness = ({ m }: Tongue): string =>
  m.settings.length === 'in' ? m.text('length', foam.thicknessM, 1) : `${m.number(foam.thicknessM * 1000, 0)}\u00a0mm`;

function cutTable({ rehearsal }: PackFigures, { w, m, temp }: Tongue): readonly Block[] {
  const { after } = rehearsal.powerCut;
  if (after.length === 0) return [];
  return [
    {
      kind: 'table',
      head: [w.trouble.after, ...after.map((row) => m.number(row.hours, 0))],
      widths: [2, ...after.map(() => 1)],
      rows: [
        [w.trouble.warmest, ...after.map((row) => temp(row.warmestC))],
        [w.trouble.coolest, ...after.map((row) => temp(row.coolestC))],
      ],
    },
  ];
}

function heatWave(figures: PackFigures, tongue: Tongue): string {
  const { w, temp } = tongue;
  const room = temp(heatWaveHighC, 0);
  const line = temp(figures.rehearsal.lines['too-hot'].at, 0);
  const crossing = crossingOf(findingOf(figures, packFaults.heatWave), 'too-hot');
  return crossing
    ? [w.trouble.heatIs(room, line, hours(crossing.hours!, tongue)), ...some(crossing.shareFrac, tongue)].join(' ')
    : w.trouble.heatNever(room, line);
}

function coldSnap(figures: PackFigures, tongue: Tongue): string {
  const { w, m, temp } = tongue;
  const kelvin = m.text('difference', coldSnapK, 0);
  const line = temp(figures.rehearsal.lines['too-cold'].at, 0);
  const crossing = crossingOf(findingOf(figures, packFaults.coldSnap), 'too-cold');
  return crossing
    ? [w.trouble.coldIs(kelvin, line, hours(crossing.hours!, tongue)), ...some(crossing.shareFrac, tongue)].join(' ')
    : w.trouble.coldNever(kelvin, line);
}

function stuckOn(figures: PackFigures, tongue: Tongue): string {
  const { w, temp } = tongue;
  const { lines } = figures.rehearsal;
  const finding = findingOf(figures, packFaults.stuckOn);
  if (!finding) return `${w.trouble.none}.`;
  const said = (['burns', 'too-hot'] as const).flatMap((kind) => {
    const crossing = crossingOf(finding, kind);
    if (!crossing) return [];
    const say = kind === 'burns' ? w.trouble.stuckIs : w.trouble.stuckHot;
    return [say(temp(lines[kind].at, 0), hours(crossing.hours!, tongue)), ...some(crossing.shareFrac, tongue)];
  });
  return said.length === 0
    ? w.trouble.stuckNever(temp(lines.burns.at, 0))
    : [...said, ...cutOutWouldDo(finding, tongue), w.trouble.stuckAlarm].join(' ');
}

/** What the rehearsal says of a second cut-out; nothing when it was not played or made no difference. */
function cutOutWouldDo({ guards, first }: FaultFinding, tongue: Tongue): readonly string[] {
  const { w } = tongue;
  const guard = guards.find((one) => one.guard === 'cut-out');
  if (!guard) return [];
  if (guard.hours === null) return [w.trouble.stuckStops];
  return guard.hours > (first?.hours?.median ?? guard.hours) + 0.05
    ? [w.trouble.stuckLater(hours(level(guard.hours), tongue))]
    : [];
}

const some = (shareFrac: number, { w, m }: Tongue): readonly string[] =>
  shareFrac >= 1 ? [] : [w.trouble.cutSome(m.text('percent', shareFrac * 100))];

const level = (value: number): Span => ({ low: value, median: value, high: value });

/** Below an hour in minutes; below a minute at once. */
function hours({ low, median, high }: Span, { w, m }: Tongue): string {
  if (median < 1 / 60) return w.trouble.atOnce;
  const minutes = median < 1;
  const write = (h: number): string => (minutes ? m.number(h * 60, 0) : m.number(h, h < 10 ? 1 : 0));
  const said = high - low < 0.05 ? write(median) : w.range(write(median), write(low), write(high));
  return minutes ? w.trouble.minutes(said) : w.trouble.hours(said);
}
