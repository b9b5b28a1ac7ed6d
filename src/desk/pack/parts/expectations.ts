// What is to be read where: from the proof when it stands, else from the plan; and how the home was proven.
import type { ClimateNeeds, SourcedRange } from '../../../husbandry/climate.ts';
import type { PlaceId } from '../../../physics/answer.ts';
import { summerAllowanceK } from '../../../planning/climate-verdicts.ts';
import type { MomentId } from '../../../proving/calibration/moments.ts';
import type { Block } from '../blocks.ts';
import type { PackFigures } from '../pack-job.ts';
import type { PackSubject } from '../pack-subject.ts';
import type { Span, Tongue } from '../tongue.ts';

export type Expected = Readonly<Partial<Record<PlaceId, Span>>>;

export interface Expectations {
  readonly winterNight: Expected;
  readonly winterDay: Expected;
  readonly hottestDay: Expected;
  /** Cool-end humidity of the same moments [%]. */
  readonly rhPct: readonly [number, number, number];
  readonly roomC: readonly [number, number, number];
  /** Fitted to readings of this very box. */
  readonly fitted: boolean;
}

/** Proven and current: the forecast of the fitted model. Else the ensemble of the plan. */
export function expectations({ proof }: PackSubject, { plan }: PackFigures): Expectations {
  const { winter, summer } = plan;
  const own = proof?.current === true && proof.answer.verdict === 'proven' ? proof.answer.moments : [];
  const moment = (id: MomentId) => own.find((one) => one.id === id);
  const [night, day, hot] = [moment('coldest-night'), moment('coldest-day'), moment('hottest-day')];
  if (night && day && hot) {
    return {
      winterNight: night.spreadC,
      winterDay: day.spreadC,
      hottestDay: hot.spreadC,
      rhPct: [night.coolRhPct.median, day.coolRhPct.median, hot.coolRhPct.median],
      roomC: [night.roomC, day.roomC, hot.roomC],
      fitted: true,
    };
  }
  return {
    winterNight: winter.nightInterval,
    winterDay: winter.noonInterval,
    hottestDay: summer.noonInterval,
    rhPct: [winter.night.coolRhPct, winter.noon.coolRhPct, summer.noon.coolRhPct],
    roomC: [winter.night.roomC, winter.noon.roomC, summer.noon.roomC],
    fitted: false,
  };
}

/** What is wanted at a place, in words without a unit, as the verdict counts it; '' where it counts nothing.
 *  @param cited with its source and all it says; a tag on the drawing has room for the band alone */
export function wantedInWords(
  place: PlaceId,
  climate: ClimateNeeds,
  { w, m, bare, cite }: Tongue,
  cited = true,
): string {
  const whole = (valueC: number): string => m.write('temperature', valueC, 0).num;
  const by = (need: Pick<SourcedRange, 'source'>): string => (cited ? cite(need) : '');
  const { baskingSurfaceC, warmAirC, coolAirC, nightMinC, reachableMaxC } = climate;
  switch (place) {
    case 'basking-surface':
      return `${bare(baskingSurfaceC.low, baskingSurfaceC.high)}${by(baskingSurfaceC)}`;
    case 'warm-air':
      return `${w.home.aim(bare(warmAirC.low, warmAirC.high))}${by(warmAirC)}`;
    case 'warm-hide':
      return `${w.home.nightMin(whole(nightMinC.low))}${by(nightMinC)}`;
    case 'cool-air':
      return cited
        ? `${bare(coolAirC.low, coolAirC.high)}, ${w.home.hotDay(whole(coolAirC.high + summerAllowanceK))}${by(coolAirC)}`
        : bare(coolAirC.low, coolAirC.high);
    case 'hottest-reachable':
      return `≤\u00a0${whole(reachableMaxC.target)}${by(reachableMaxC)}`;
    default:
      return '';
  }
}

const tablePlaces: readonly PlaceId[] = [
  'basking-surface',
  'warm-hide',
  'warm-air',
  'cool-hide',
  'cool-air',
  'probe',
  'hottest-reachable',
];

export function expectTable(subject: PackSubject, figures: PackFigures, tongue: Tongue): Block {
  const { w, m, cite, spread } = tongue;
  const { climate } = figures;
  const expected = expectations(subject, figures);
  const read = expected.fitted ? readByKeeper(subject, tongue) : null;
  const unit = ` (°${m.settings.temperature})`;
  const [place, wanted, ...moments] = w.home.table as [string, string, string, string, string];
  const row = (id: PlaceId): string[] => {
    const cell = (of: Expected): string => (of[id] ? spread(of[id]) : '–');
    return [
      w.places[id]!,
      wantedInWords(id, climate, tongue),
      cell(expected.winterNight),
      cell(expected.winterDay),
      cell(expected.hottestDay),
      ...(read ? [read[id] ?? '–'] : []),
    ];
  };
  const rows = tablePlaces.filter((id) => expected.winterDay[id] !== undefined).map(row);
  const room = expected.roomC.map((roomC) => m.write('temperature', roomC, 0).num);
  const humid = expected.rhPct.map((rh) => w.home.best(m.text('percent', rh)));
  const { rhPct } = climate;
  return {
    kind: 'table',
    head: [`${place}${unit}`, wanted, ...moments, ...(read ? [w.home.tableRead] : [])],
    widths: read ? [1.4, 1, 1.3, 1.3, 1.3, 1.1] : [1.4, 1.1, 1.4, 1.4, 1.4],
    rows: [
      ...rows,
      [
        w.home.humidity,
        `${m.span('percent', rhPct.low, rhPct.high)}${cite(rhPct)}`,
        ...humid,
        ...(read ? [read.humidity ?? '–'] : []),
      ],
      [w.home.tableRoom, '', ...room, ...(read ? [''] : [])],
    ],
  };
}

/** Worst settled readings of the proof, corrected, at the places where they were taken. */
function readByKeeper({ proof }: PackSubject, { m }: Tongue): Readonly<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const need of proof?.answer.needs ?? []) {
    if (need.worst === null) continue;
    if (need.quantity === 'rhPct') found.humidity = m.text('percent', need.worst);
    else if (need.place !== null) found[need.place] ??= m.write('temperature', need.worst, 1).num;
  }
  return found;
}

/** Proven or not, and what the plan says, in one paragraph. */
export function proofState(subject: PackSubject, { plan }: PackFigures, { w, m, day }: Tongue): string {
  const { proof } = subject;
  const says =
    proof === null
      ? w.home.proof.none
      : proof.current
        ? w.home.proof[proof.answer.verdict](day(proof.on))
        : w.home.proof.old(day(proof.on));
  const bad = plan.needs.filter((need) => need.group !== 'comfort' && need.verdict === plan.verdict).length;
  const planned = plan.verdict === 'holds' ? w.home.verdict.holds : w.home.verdict[plan.verdict](bad);
  const fitted = proof?.current === true && proof.answer.verdict === 'proven';
  const model = fitted ? w.home.modelFitted(day(proof.on)) : w.home.model(m.number(plan.members, 0));
  return `${says} ${planned} ${model}`;
}
