// From data/standards.json and data/law.json to checked rows.
import type { Fault } from '../shared/fault.ts';
import { type CheckContext, dataFault, isRecord, sourceFaults } from './fact-check.ts';
import type { Rows } from './facts-kit.ts';
import { dateFaults, wordFaults } from './facts-tables.ts';
import { type LawRule, places } from './law-rule.ts';
import type { Standard } from './standard.ts';

type Row = Readonly<Record<string, unknown>>;
type NumberSpec = Readonly<Record<string, readonly [low: number, high: number, optional?: 'optional' | 'nullable']>>;

const ruleNumbers: Readonly<Record<string, NumberSpec>> = {
  shares: {
    lengthShare: [0.3, 2],
    widthShare: [0.1, 2, 'nullable'],
    heightShare: [0.1, 2, 'nullable'],
    heightCapM: [0.5, 4, 'optional'],
    underFrac: [0, 0.3, 'optional'],
    animals: [1, 10, 'optional'],
    extraVolumeFrac: [0, 1, 'optional'],
  },
  bands: { animals: [1, 10, 'optional'] },
  perimeter: {
    perimeterShare: [0.3, 3],
    widthMinM: [0.05, 1],
    widthShare: [0.05, 1],
    widthCapM: [0.3, 3],
    animals: [1, 10],
    extraPerimeterFrac: [0, 1],
  },
  sum: { sumShare: [0.5, 3] },
  fixed: { lengthM: [0.2, 4], widthM: [0.1, 3], heightM: [0.1, 3], fullStretchAboveM: [0.5, 6, 'optional'] },
};
const bandNumbers: NumberSpec = {
  maxLengthM: [0.1, 8, 'nullable'],
  floorM2: [0.01, 10],
  heightM: [0.05, 3, 'nullable'],
  extraFloorM2: [0, 5],
};

function numberFaults(ctx: CheckContext, at: string, x: Row, spec: NumberSpec): Fault[] {
  const faults: Fault[] = [];
  for (const [key, [low, high, soft]] of Object.entries(spec)) {
    const v = x[key];
    if ((v === undefined && soft === 'optional') || (v === null && soft === 'nullable')) continue;
    if (typeof v !== 'number' || v < low || v > high)
      faults.push(
        dataFault(ctx, `${at}.${key}`, 'DATA_RANGE', v, `${low} to ${high}`, `${key} is missing or cannot be.`),
      );
  }
  for (const key of Object.keys(x))
    if (!(key in spec) && key !== 'kind' && key !== 'bands')
      faults.push(
        dataFault(ctx, `${at}.${key}`, 'DATA_FORM', key, Object.keys(spec).join(', '), `Unknown part "${key}".`),
      );
  return faults;
}

function bandFaults(ctx: CheckContext, at: string, bands: unknown): Fault[] {
  if (!Array.isArray(bands) || bands.length === 0)
    return [dataFault(ctx, `${at}.bands`, 'DATA_FORM', bands, 'a list of bands', 'The bands are missing.')];
  let reached = 0;
  return bands.flatMap((band: unknown, i) => {
    const path = `${at}.bands[${i}]`;
    if (!isRecord(band)) return [dataFault(ctx, path, 'DATA_FORM', band, 'a band', 'Not a band.')];
    const max = band.maxLengthM === null ? Infinity : Number(band.maxLengthM);
    const order =
      max > reached ? [] : [dataFault(ctx, path, 'DATA_ORDER', max, `above ${reached}`, 'Bands are not in order.')];
    reached = max;
    return [...order, ...numberFaults(ctx, path, band, bandNumbers)];
  });
}

export function standardFrom(ctx: CheckContext, at: string, row: Row): Rows<Standard> {
  const rule = isRecord(row.rule) ? row.rule : {};
  const kind = String(rule.kind);
  const spec = ruleNumbers[kind];
  const faults = [
    ...wordFaults(ctx, at, row, ['name', 'place', 'status'], {
      writtenFor: ['sale-stock', 'home', 'laboratory', 'keepers'],
      habit: ['null', 'ground', 'climbing'],
    }),
    ...sourceFaults(ctx, at, row),
    ...numberFaults(
      ctx,
      at,
      { fromLengthM: row.fromLengthM, toLengthM: row.toLengthM },
      {
        fromLengthM: [0, 8, 'nullable'],
        toLengthM: [0, 8, 'nullable'],
      },
    ),
    ...(spec
      ? numberFaults(ctx, `${at}.rule`, rule, spec)
      : [
          dataFault(
            ctx,
            `${at}.rule.kind`,
            'DATA_FORM',
            kind,
            Object.keys(ruleNumbers).join(', '),
            'Unknown kind of rule.',
          ),
        ]),
    ...(kind === 'bands' ? bandFaults(ctx, `${at}.rule`, rule.bands) : []),
  ];
  const lastBand: unknown = Array.isArray(rule.bands) ? rule.bands.at(-1) : null;
  if (kind === 'bands' && isRecord(lastBand) && lastBand.maxLengthM !== row.toLengthM)
    faults.push(
      dataFault(
        ctx,
        `${at}.toLengthM`,
        'DATA_ORDER',
        row.toLengthM,
        `the end of the last band (${String(lastBand.maxLengthM)})`,
        'The standard covers another length than its bands.',
      ),
    );
  if (row.speciesIds !== null && !Array.isArray(row.speciesIds))
    faults.push(
      dataFault(
        ctx,
        `${at}.speciesIds`,
        'DATA_FORM',
        row.speciesIds,
        'null or a list',
        'Which species it covers is missing.',
      ),
    );
  return { rows: faults.length > 0 ? [] : [row as unknown as Standard], faults };
}

const effectKinds = [
  'buyer-age',
  'under-treatment',
  'species-ban',
  'species-ask',
  'annex',
  'both-licensed',
  'keep-records',
  'written-information',
  'duty',
];

function effectFaults(ctx: CheckContext, at: string, effect: Row): Fault[] {
  const path = `${at}.effect`;
  const kind = String(effect.kind);
  const wants: Readonly<Record<string, (e: Row) => boolean>> = {
    'buyer-age': (e) =>
      typeof e.years === 'number' && e.years >= 10 && e.years <= 25 && typeof e.withGuardian === 'boolean',
    'under-treatment': (e) => e.answer === 'blocked' || e.answer === 'vet-advice',
    'species-ban': (e) => Array.isArray(e.speciesIds) && e.speciesIds.length > 0,
    'species-ask': (e) => e.speciesIds === null || Array.isArray(e.speciesIds),
    annex: (e) => e.annex === 'A' || e.annex === 'B',
    'keep-records': (e) => typeof e.years === 'number' && e.years >= 1 && e.years <= 30,
  };
  if (!effectKinds.includes(kind))
    return [dataFault(ctx, path, 'DATA_FORM', kind, effectKinds.join(', '), 'Unknown effect.')];
  return (wants[kind]?.(effect) ?? true)
    ? []
    : [dataFault(ctx, path, 'DATA_FORM', effect, `the parts of "${kind}"`, 'The effect is not whole.')];
}

export function lawRuleFrom(ctx: CheckContext, at: string, row: Row): Rows<LawRule> {
  const faults = [
    ...wordFaults(ctx, at, row, ['title', 'say', 'decides'], { places: [...places] }),
    ...dateFaults(ctx, at, row, ['dateChecked', 'reviewBy']),
    ...sourceFaults(ctx, at, row),
    ...effectFaults(ctx, at, isRecord(row.effect) ? row.effect : {}),
  ];
  if (typeof row.secondHand !== 'boolean')
    faults.push(
      dataFault(
        ctx,
        `${at}.secondHand`,
        'DATA_FORM',
        row.secondHand,
        'true or false',
        'First or second hand is missing.',
      ),
    );
  if (String(row.reviewBy) <= String(row.dateChecked))
    faults.push(
      dataFault(
        ctx,
        `${at}.reviewBy`,
        'DATA_ORDER',
        row.reviewBy,
        'after dateChecked',
        'The review is not after the check.',
      ),
    );
  return { rows: faults.length > 0 ? [] : [row as unknown as LawRule], faults };
}
