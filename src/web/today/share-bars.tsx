// Shares with their intervals on one scale from nothing up; a row without a share says so instead of drawing one.
import type { OwnShare } from '../../proving/aftercare/own-share.ts';
import { useSheet } from '../settings/settings-context.tsx';

interface ShareBarsProps {
  readonly rows: readonly { readonly name: string; readonly share: OwnShare }[];
  readonly width: number;
}

const rowPx = 40;
const top = 30;
/** Ends of the scale to choose from; the smallest that holds every interval [share]. */
const ends = [0.05, 0.1, 0.2, 0.5, 1];

export function ShareBars({ rows, width }: ShareBarsProps) {
  const { t, measure } = useSheet();
  const highest = Math.max(0, ...rows.map((row) => row.share.share?.high ?? 0));
  const end = ends.find((one) => one >= highest) ?? 1;
  const narrow = width < 520;
  const left = narrow ? 8 : 190;
  const across = Math.max(80, width - left - 24);
  const x = (share: number) => left + (share / end) * across;
  const height = top + rows.length * rowPx * (narrow ? 1.5 : 1) + 8;
  const pct = (share: number) => `${(100 * share).toLocaleString(measure.locale, { maximumFractionDigits: 1 })} %`;
  const step = rowPx * (narrow ? 1.5 : 1);
  return (
    <svg
      className="share-bars"
      width="100%"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={t('figures.picture')}
    >
      {[0, 0.5, 1].map((part) => (
        <g key={part}>
          <line className="share-rule" x1={x(part * end)} x2={x(part * end)} y1={top - 8} y2={height} />
          <text
            className="share-scale"
            x={x(part * end)}
            y={top - 14}
            textAnchor={part === 0 ? 'start' : part === 1 ? 'end' : 'middle'}
          >
            {pct(part * end)}
          </text>
        </g>
      ))}
      {rows.map(({ name, share }, i) => {
        const y = top + i * step + (narrow ? step * 0.72 : step / 2);
        return (
          <g key={name}>
            <text
              className={i === 0 ? 'share-name share-all' : 'share-name'}
              x={narrow ? left : left - 12}
              y={narrow ? y - 14 : y + 5}
              textAnchor={narrow ? 'start' : 'end'}
            >
              {name.length > 24 ? `${name.slice(0, 23)}…` : name}
            </text>
            {share.share === null ? (
              <text className="share-few" x={left + 10} y={y + 5}>
                {t('figures.fewOf', { count: share.count, followed: share.followed })}
              </text>
            ) : (
              <>
                <line className="share-interval" x1={x(share.share.low)} x2={x(share.share.high)} y1={y} y2={y} />
                <line className="share-end" x1={x(share.share.low)} x2={x(share.share.low)} y1={y - 7} y2={y + 7} />
                <line className="share-end" x1={x(share.share.high)} x2={x(share.share.high)} y1={y - 7} y2={y + 7} />
                <circle className="share-middle" cx={x(share.share.middle)} cy={y} r={6} />
              </>
            )}
          </g>
        );
      })}
    </svg>
  );
}
