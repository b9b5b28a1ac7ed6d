// Day and night bands of a species on one temperature line; under each band, thin, what other sources say.
import type { Fact, Species } from '../../husbandry/fact.ts';
import { rangeOfFact } from '../../husbandry/species-facts.ts';
import { factText } from '../controls/parts-text.ts';
import { shownFromStored, unitText } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useWidth } from '../settings/use-width.ts';
import { useFactName } from './fact-row.tsx';
import { type Reference, standingAt } from './reference-api.ts';

export const heatKeys = ['baskingSurfaceC', 'warmAirC', 'coolAirC', 'nightMinC'] as const;
const stages = ['all', 'hatchling', 'young', 'adult'] as const;
const tierPx = 58;
const [fromC, toC] = [10, 40];

interface Band {
  readonly key: string;
  readonly stage: (typeof stages)[number];
  readonly fact: Fact;
  /** As it stands: the shop's own numbers when it has set some. */
  readonly low: number;
  readonly high: number;
  readonly own: boolean;
}

export function bandsOf(all: Reference, species: Species): readonly Band[] {
  return heatKeys.flatMap((key) =>
    stages.flatMap((stage) => {
      const fact = species[stage][key];
      const own = standingAt(all, `species.${species.id}.${stage}.${key}`);
      const range = rangeOfFact(fact && own ? ({ ...fact, ...own.value } as Fact) : fact);
      return fact && range ? [{ key, stage, fact, low: range.low, high: range.high, own: own !== null }] : [];
    }),
  );
}

export function HeatLine({ all, species }: { readonly all: Reference; readonly species: Species }) {
  const { t, measure } = useSheet();
  const [ref, width] = useWidth<HTMLDivElement>(700);
  const nameOf = useFactName();
  const bands = bandsOf(all, species);
  const x = (c: number): number => 14 + ((Math.min(toC, Math.max(fromC, c)) - fromC) / (toC - fromC)) * (width - 28);
  const bask = bands.find(({ key }) => key === 'baskingSurfaceC');
  const night = bands.find(({ key }) => key === 'nightMinC');
  const say = (band: Band | undefined): string =>
    band ? factText(band.key, { low: band.low, high: band.high }, measure, t) : t('ref.unknown');
  const title = t('ref.heat', {
    bask: say(bask),
    night: night ? measure.text('temperature', night.low, Number.isInteger(night.low) ? 0 : 1) : t('ref.unknown'),
  });
  const days = bands.filter(({ key }) => key !== 'nightMinC');
  const nights = bands.filter(({ key }) => key === 'nightMinC');
  const lineY = 8 + days.length * tierPx;
  const height = lineY + 40 + nights.length * tierPx;
  const label = (band: Band): string =>
    [nameOf(band.key), band.stage === 'all' ? '' : t(`ref.stage.${band.stage}`), say(band)].filter(Boolean).join(' · ');
  const drawn = (band: Band, y: number) => {
    const middle = (x(band.low) + x(band.high)) / 2;
    const anchor = middle > width * 0.66 ? 'end' : middle < width * 0.33 ? 'start' : 'middle';
    const at = anchor === 'end' ? x(band.high) : anchor === 'start' ? x(band.low) : middle;
    const wide = Math.max(3, x(band.high) - x(band.low));
    return (
      <g key={`${band.key}-${band.stage}`}>
        <text x={at} y={y + 15} textAnchor={anchor} className="heat-word">
          {label(band)}
          {band.own && ' *'}
        </text>
        <rect x={x(band.low)} y={y + 21} width={wide} height={16} className={`heat-band heat-${band.key}`} />
        {(band.fact.alternatives ?? []).map((other, i) => {
          const range = rangeOfFact(other);
          if (!range) return null;
          const lineAt = y + 41 + i * 4;
          return (
            <line
              key={`${other.source}-${i}`}
              x1={x(range.low) - (range.low === range.high ? 3 : 0)}
              x2={x(range.high) + (range.low === range.high ? 3 : 0)}
              y1={lineAt}
              y2={lineAt}
              className="heat-other"
            />
          );
        })}
      </g>
    );
  };
  const ticks = Array.from({ length: 7 }, (_, i) => fromC + i * 5);
  return (
    <figure className="ref-figure">
      <figcaption>
        <h2>{title}</h2>
        <p>{t('ref.heatLead')}</p>
      </figcaption>
      <div ref={ref}>
        <svg
          viewBox={`0 0 ${width} ${height}`}
          className="ref-drawing"
          role="img"
          aria-label={`${title}. ${bands.map(label).join('; ')}`}
        >
          {days.map((band, i) => drawn(band, i * tierPx))}
          <line x1={0} x2={width} y1={lineY} y2={lineY} className="heat-axis" />
          <text x={2} y={lineY - 5} className="heat-word heat-side">
            {t('ref.day')}
          </text>
          <text x={2} y={lineY + 38} className="heat-word heat-side">
            {t('ref.night')}
          </text>
          {ticks.map((c) => (
            <g key={c}>
              <line x1={x(c)} x2={x(c)} y1={lineY} y2={lineY + 6} className="heat-axis" />
              <text x={x(c)} y={lineY + 20} textAnchor="middle" className="heat-tick">
                {measure.number(shownFromStored('temperature', c, measure.settings), 0)}
                {c === toC ? unitText('temperature', measure.settings).slice(0, 1) : ''}
              </text>
            </g>
          ))}
          {nights.map((band, i) => drawn(band, lineY + 30 + i * tierPx))}
        </svg>
      </div>
    </figure>
  );
}
