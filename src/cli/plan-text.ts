// A plan's answer for a person at a terminal: the verdict first, then why and what to do, then the numbers.
// Leaves out: computing anything; every number stands in the answer.

import type { ClimateNeeds } from '../husbandry/climate.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import type { UsedShopValues } from '../husbandry/used-shop-values.ts';
import { thermostatNameIn } from '../husbandry/words/names.ts';
import { type PlaceId, placeIds } from '../physics/answer.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import type { DialAdvice, Interval, PlanAnswer } from '../planning/plan-answer.ts';
import type { Verdict } from '../shared/verdict.ts';
import type { Display } from './display.ts';
import { noteSaid } from './faults-text.ts';
import { gradientMapLines } from './gradient-map.ts';
import type { Messages, Season } from './messages/en.ts';
import { needSaid, saidIn } from './need-words.ts';
import { ownValueLines } from './shop-values.ts';
import type { Terminal } from './terminal.ts';
import { padEnd, widthOf, wrapped } from './wrap.ts';

export interface PlanTextInput {
  readonly enclosure: Enclosure;
  readonly climate: ClimateNeeds;
  readonly answer: PlanAnswer;
  readonly used: UsedShopValues;
  /** Leaves out the needs that hold. */
  readonly brief: boolean;
  readonly maps: readonly Season[];
  readonly show: Display;
  readonly terminal: Terminal;
  readonly messages: Messages;
}

/** Fails first: what is wrong is what the reader came for. */
const order: readonly Verdict[] = ['fails', 'not-known', 'holds'];
/** Shape beside the word, so that colour is never alone. */
const shapes: Readonly<Record<Verdict, string>> = { fails: 'x', 'not-known': '?', holds: '+' };

export function planLines(input: PlanTextInput): string[] {
  const { answer, enclosure, terminal, messages } = input;
  const { paint, columns } = terminal;
  const head = [
    paint.bold(enclosure.name),
    ...wrapped(headlineOf(input), columns, `${verdictWord(answer.verdict, terminal, messages)}  `),
  ];
  const sections = [
    head,
    needLines(input),
    temperatureLines(input),
    dialLines(input),
    powerLines(input),
    ...input.maps.map((season) => mapLines(input, season)),
    ownValueLines(input.used, terminal, messages, input.show),
    noteLines(input),
    wrapped(messages.plan.basis(answer.members, answer.seed), columns).map((line) => paint.dim(line)),
  ];
  return sections.filter((lines) => lines.length > 0).flatMap((lines, i) => (i === 0 ? lines : ['', ...lines]));
}

/** The headline without the verdict it starts with: that stands before it already, with its shape. */
function headlineOf({ answer, show, messages }: PlanTextInput): string {
  if (show.language !== 'en') {
    const first = answer.needs.find((need) => need.verdict === answer.verdict && need.verdict !== 'holds');
    const names = answer.needs.filter((need) => need.verdict === answer.verdict).length - 1;
    return first === undefined
      ? messages.plan.headlineHolds
      : messages.plan.headline(needSaid(first, show).title, names);
  }
  const rest = answer.headline.replace(/^(Holds|Fails|Not known): /, '');
  return rest.charAt(0).toUpperCase() + rest.slice(1);
}

function verdictWord(verdict: Verdict, terminal: Terminal, messages: Messages): string {
  const { paint } = terminal;
  const word = `${shapes[verdict]} ${messages.verdicts[verdict]}`;
  if (verdict === 'holds') return paint.green(word);
  return paint.bold(verdict === 'fails' ? paint.red(word) : paint.yellow(word));
}

function needLines({ answer, brief, show, terminal, messages }: PlanTextInput): string[] {
  const { plan } = messages;
  const lines = [terminal.paint.bold(plan.needs)];
  for (const verdict of order) {
    const needs = answer.needs.filter((need) => need.verdict === verdict);
    if (verdict === 'holds' && brief) {
      if (needs.length > 0) lines.push(`  ${shapes.holds} ${plan.othersHold(needs.length)}`);
      continue;
    }
    for (const need of needs) lines.push(...oneNeed(need, show, terminal, messages));
  }
  const foot = [answer.needs.some((need) => need.read === 'memory' && !need.own) ? plan.memory : ''];
  const feet = foot.filter(Boolean).flatMap((text) => wrapped(text, terminal.columns, '  '));
  return [...lines, ...feet.map((line) => terminal.paint.dim(line))];
}

/** A need that holds takes a line; one that does not says why, what to do and what would settle it. */
function oneNeed(need: NeedVerdict, show: Display, terminal: Terminal, messages: Messages): string[] {
  const { paint, columns } = terminal;
  const { wanted, settle } = messages.plan;
  const word = padEnd(verdictWord(need.verdict, terminal, messages), longestVerdict(messages));
  const said = needSaid(need, show);
  const found = said.found === '' ? '' : `: ${said.found}`;
  const aim = said.wanted === '' ? '' : ` [${wanted} ${said.wanted}]`;
  const mark = need.own ? ` (${messages.own.sign})` : need.read === 'memory' ? ' *' : '';
  const lines = wrapped(`${said.title}${found}${aim}${mark}`, columns, `  ${word}  `);
  if (need.verdict === 'holds') return lines;
  for (const reason of new Set(said.reasons))
    lines.push(...wrapped(reason, columns, '      ').map((line) => paint.dim(line)));
  for (const fix of new Set(said.fixes)) lines.push(...wrapped(fix, columns, '      -> '));
  if (said.settledBy) lines.push(...wrapped(`${settle}: ${said.settledBy}`, columns, '      ? '));
  return lines;
}

const longestVerdict = (messages: Messages): number => Math.max(...Object.values(messages.verdicts).map(widthOf)) + 2;

function temperatureLines({ answer, show, terminal, messages }: PlanTextInput): string[] {
  const { plan, places } = messages;
  const { winter, mid, summer } = answer;
  const columns = [
    [plan.winterNight(show.temp(winter.night.roomC)), winter.nightInterval],
    [plan.winterDay(show.temp(winter.noon.roomC)), winter.noonInterval],
    ...(mid ? ([[plan.midDay(show.temp(mid.noon.roomC)), mid.noonInterval]] as const) : []),
    [plan.summerDay(show.temp(summer.noon.roomC)), summer.noonInterval],
  ] as const;
  const placeWidth = Math.max(...placeIds.map((id) => widthOf(places[id]))) + 2;
  const used = placeIds.filter((id) => columns.some(([, intervals]) => intervals[id] !== undefined));
  const cell = (interval: Interval | undefined): string => (interval === undefined ? '' : show.spread(interval));
  const widths = columns.map(([, intervals]) => Math.max(...used.map((id) => widthOf(cell(intervals[id]))), 12) + 2);
  const heads = columns.map(([title], c) => wrapped(title, (widths[c] ?? 14) - 2));
  const lines = [terminal.paint.bold(`${plan.temperatures} [${show.tempUnit}]`)];
  for (let row = 0; row < Math.max(...heads.map((h) => h.length)); row++) {
    const titles = heads.map((head, c) => padEnd(head[row] ?? '', widths[c] ?? 14));
    lines.push(`  ${padEnd(row === 0 ? plan.place : '', placeWidth)}${titles.join('')}`.trimEnd());
  }
  for (const id of used)
    lines.push(
      placeLine(
        id,
        columns.map(([, intervals]) => cell(intervals[id])),
      ),
    );
  return lines;

  function placeLine(id: PlaceId, cells: readonly string[]): string {
    return `  ${padEnd(places[id], placeWidth)}${cells.map((text, c) => padEnd(text, widths[c] ?? 14)).join('')}`.trimEnd();
  }
}

function dialLines({ answer, enclosure, show, terminal, messages }: PlanTextInput): string[] {
  if (answer.dial.length === 0) return [];
  const lines = [terminal.paint.bold(messages.plan.dial)];
  for (const dial of answer.dial) {
    lines.push(...oneDial(dial, dialName(enclosure.thermostats, dial.thermostatId, show), show, terminal, messages));
  }
  return lines;
}

/** As the plan on the screen names it: by how it controls, and by its number among several. */
function dialName(all: Enclosure['thermostats'], id: string, show: Display): string {
  const place = all.findIndex((one) => one.id === id);
  const name = thermostatNameIn(all[place]?.control ?? '', show.language) ?? id;
  const titled = name.charAt(0).toUpperCase() + name.slice(1);
  return all.length > 1 ? `${titled} ${place + 1}` : titled;
}

function oneDial(dial: DialAdvice, name: string, show: Display, terminal: Terminal, messages: Messages): string[] {
  const { plan } = messages;
  const unit = show.tempUnit;
  const advised =
    dial.advisedDayC === null
      ? dial.reachesWanted
        ? ''
        : plan.dialNone
      : plan.dialAdvised(`${show.spread(dial.advisedDayC)} ${unit}`);
  const expect = plan.dialExpect(
    `${show.spread(dial.expectBaskingC)} ${unit}`,
    `${show.spread(dial.expectProbeC)} ${unit}`,
  );
  const set = plan.dialSet(name, show.temp(dial.setDayC), show.temp(dial.setNightC));
  return [set, expect, advised, saidIn(show, dial.told, dial.say)]
    .filter(Boolean)
    .flatMap((text, i) => wrapped(text, terminal.columns, i === 0 ? '  ' : '    '));
}

function powerLines({ answer, enclosure, show, terminal, messages }: PlanTextInput): string[] {
  const { plan } = messages;
  const installedW = enclosure.heaters.reduce((sum, heater) => sum + heater.powerW, 0);
  const season = (name: Season, kWh: number): string =>
    plan.powerSeason(
      messages.season(name),
      show.watts((kWh * 1000) / 24),
      show.percent(installedW > 0 ? (kWh * 100_000) / 24 / installedW : 0),
      show.kWh(kWh),
    );
  const year = answer.kWhPerYear;
  const spread = `${show.number(year.median, 0)} (${show.number(year.low, 0)}–${show.number(year.high, 0)}) kWh`;
  return [
    terminal.paint.bold(plan.power),
    ...wrapped(season('winter', answer.kWhPerDayWinter), terminal.columns, '  '),
    ...wrapped(season('summer', answer.kWhPerDaySummer), terminal.columns, '  '),
    `  ${plan.powerYear(spread)}`,
  ];
}

function mapLines({ answer, enclosure, climate, show, terminal, messages }: PlanTextInput, season: Season): string[] {
  const { day, roomDay } = answer[season];
  const title = messages.plan.map(messages.season(season), show.temp(roomDay.lowC), show.temp(roomDay.highC));
  return [terminal.paint.bold(title), ...gradientMapLines(day, enclosure, climate, show, terminal, messages)];
}

function noteLines({ answer, terminal, messages, show }: PlanTextInput): string[] {
  if (answer.notes.length === 0) return [];
  const notes = answer.notes.flatMap((note) => wrapped(noteSaid(note, show.language), terminal.columns, '  - '));
  return [terminal.paint.bold(messages.plan.notes), ...notes];
}
