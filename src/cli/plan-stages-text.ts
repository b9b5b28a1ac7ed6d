// The road of boxes in words: each box with its years, its kit and what is used again, and what both roads cost.
import { neverYears } from '../planning/stages/growth-forecast.ts';
import type { Road, RoadStage, StageRoads } from '../planning/stages/stage-road.ts';
import { kitName } from './found-words.ts';
import { factSaid } from './need-words.ts';
import { type ChooseText, shapeOf } from './plan-search-text.ts';
import { wrapped } from './wrap.ts';

export interface StageText extends ChooseText {
  readonly roads: StageRoads;
}

export function stageLines(input: StageText): string[] {
  const { roads, terminal, words, show } = input;
  const { paint, columns } = terminal;
  const { growth } = roads;
  const basis = growth
    ? growth.maturityRead
      ? words.growthRead(show.number(growth.maturityYears, 1))
      : words.growthChosen
    : '';
  return [
    ...roadLines(words.stages, roads.stepwise, input),
    ...(roads.atOnce ? ['', ...roadLines(words.atOnce, roads.atOnce, input)] : []),
    ...(roads.why ? ['', ...wrapped(noRoadSaid(roads.why, input), columns)] : []),
    '',
    ...wrapped([basis, roads.pricesInvented ? words.invented : ''].join(' '), columns).map((line) => paint.dim(line)),
  ];
}

/** "Digital thermometer × 2" too. */
const namesSaid = (names: readonly string[], show: StageText['show']): string =>
  names
    .map((one) => {
      const [name = '', ...count] = one.split(/(?= × )/);
      return [factSaid(show, name), ...count].join('');
    })
    .join(', ');

function noRoadSaid(why: NonNullable<StageRoads['why']>, { show, words }: StageText): string {
  const standard = factSaid(show, why.standardName);
  if (why.id === 'no-lengths') return words.noRoad['no-lengths'];
  if (why.id === 'no-box' || why.id === 'not-covered') return words.noRoad[why.id](standard);
  return words.noRoad['no-adult-box'](standard, show.length(why.adultLengthM ?? 0));
}

function roadLines(title: string, road: Road, input: StageText): string[] {
  const { show, terminal, roads } = input;
  return [
    terminal.paint.bold(
      `${title}: ${show.number(road.total, 0)} ${roads.currency}, ${roads.years} ${input.words.years}`,
    ),
    ...road.stages.flatMap((stage) => oneStage(stage, input)),
  ];
}

function oneStage(s: RoadStage, { show, terminal, words, roads }: StageText): string[] {
  const { columns } = terminal;
  const n = (v: number) => show.number(v, 1);
  const price = (v: number) => `${show.number(v, 0)} ${roads.currency}`;
  const length = `${show.length(s.lengthM.from)} – ${show.length(s.lengthM.to)}`;
  const end = outgrownText(s, words, n);
  return [
    ...wrapped(
      `${words.stage(factSaid(show, s.box.name), n(s.fromYear), n(s.toYear))}, ${length}, ${end}`,
      columns,
      `  ${shapeOf[s.verdict]} `,
    ),
    ...(s.kit ? wrapped(kitName(s.kit, { show, words }), columns, '      ') : []),
    ...(s.bought.length > 0
      ? wrapped(`${words.bought}: ${namesSaid(s.bought, show)} (${price(s.cost.things)})`, columns, '      ')
      : []),
    ...(s.usedAgain.length > 0 ? wrapped(`${words.again}: ${namesSaid(s.usedAgain, show)}`, columns, '      ') : []),
    ...(s.coverPrice > 0 ? wrapped(words.cover(price(s.coverPrice)), columns, '      ') : []),
  ];
}

function outgrownText({ outgrown }: RoadStage, words: StageText['words'], n: (v: number) => string): string {
  if (!outgrown || outgrown.median >= neverYears) return words.serves;
  if (outgrown.high >= neverYears) return words.outgrownOpen(n(outgrown.low), n(outgrown.median));
  return words.outgrown(n(outgrown.low), n(outgrown.median), n(outgrown.high));
}
