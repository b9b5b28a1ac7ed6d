// What was read, drawn over time: each place a line with its name at the end, nights shaded, suspicious stretches
// hatched. A table of every day stands behind it.
import type { DayPeriod } from '../../physics/enclosure.ts';
import { isDayAt } from '../../physics/room-day.ts';
import type { Evidence } from '../../proving/diagnosis/cause.ts';
import { sentence } from '../messages/need-words.ts';
import { shownFromStored } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { Curves } from './proof-api.ts';
import { wallDay, wallMoment } from './wall-words.ts';

interface CurvesDrawingProps {
  readonly curves: Curves;
  readonly day: DayPeriod;
  readonly evidence: readonly Evidence[];
  readonly width: number;
}

const height = 300;
const frame = { left: 44, top: 14, bottom: 30, names: 120 };
/** Room for "28 Nov" and what parts it from the next. */
const widestDayPx = 58;
/** Line shapes tell the places apart without colour. */
const dashes = ['', '7 3', '2 3', '10 3 2 3', '4 4', '1 4'];

export function CurvesDrawing({ curves, day, evidence, width }: CurvesDrawingProps) {
  const { t, measure, settings } = useSheet();
  const shown = curves.curves.filter((c) => c.quantity === 'tempC' && c.points.some(([, v]) => v !== null));
  const name = (c: (typeof shown)[number]) => (c.place ? t(`proof.place.${c.place}`) : c.label);
  if (shown.length === 0) return null;
  const values = shown.flatMap((c) => c.points.flatMap(([, v]) => (v === null ? [] : [v])));
  const low = Math.floor(Math.min(...values)) - 1;
  const high = Math.ceil(Math.max(...values)) + 1;
  const right = width - frame.names;
  const { fromS, toS } = curves;
  const x = (s: number) => frame.left + ((right - frame.left) * (s - fromS)) / Math.max(1, toS - fromS);
  const y = (v: number) => frame.top + ((height - frame.top - frame.bottom) * (high - v)) / (high - low);
  const step = high - low > 16 ? 5 : 2;
  const ticks = Array.from(
    { length: Math.floor((high - low) / step) + 1 },
    (_, i) => Math.ceil(low / step) * step + i * step,
  ).filter((v) => v <= high);
  const dayS = 86400;
  const dayPx = ((right - frame.left) * dayS) / Math.max(1, toS - fromS);
  const daysApart = Math.max(1, Math.ceil(widestDayPx / dayPx));
  const midnights = Array.from(
    { length: Math.ceil((toS - fromS) / dayS) + 1 },
    (_, i) => Math.ceil(fromS / dayS) * dayS + i * dayS,
  ).filter((s, i) => s < toS && i % daysApart === 0);
  const names = spreadNames(shown.map((c) => y([...c.points].reverse().find(([, v]) => v !== null)?.[1] ?? low)));
  return (
    <figure className="figure">
      <figcaption>
        <strong>{t('proof.curves')}</strong>{' '}
        <span>
          {t('proof.curvesSay', { from: wallMoment(measure.locale, fromS), to: wallMoment(measure.locale, toS) })}
        </span>
      </figcaption>
      <svg
        className="drawing curves"
        viewBox={`0 0 ${width} ${height}`}
        width="100%"
        role="img"
        aria-label={t('proof.curvesLabel', { channels: shown.map(name).join(', ') })}
      >
        {nights(fromS, toS, day).map(([a, b]) => (
          <rect
            key={a}
            className="curve-night"
            x={x(a)}
            y={frame.top}
            width={x(b) - x(a)}
            height={height - frame.top - frame.bottom}
          />
        ))}
        {evidence.map((e) => (
          <rect
            key={`${e.channelId}${e.fromS}${e.say}`}
            className="curve-evidence"
            x={x(Math.max(fromS, e.fromS))}
            y={frame.top}
            width={Math.max(2, x(Math.min(toS, e.toS)) - x(Math.max(fromS, e.fromS)))}
            height={height - frame.top - frame.bottom}
          >
            <title>{sentence(e.told, e.say, measure).text}</title>
          </rect>
        ))}
        {ticks.map((v) => (
          <g key={v}>
            <path className="curve-grid" d={`M${frame.left} ${y(v)}H${right}`} />
            <text className="curve-word curve-scale" x={frame.left - 6} y={y(v) + 4} textAnchor="end">
              {measure.number(shownFromStored('temperature', v, settings), 0)}
            </text>
          </g>
        ))}
        {midnights.map((s) => (
          <text key={s} className="curve-word" x={x(s)} y={height - 10}>
            {wallDay(measure.locale, s)}
          </text>
        ))}
        {shown.map((c, i) => (
          <g key={c.id}>
            {curves.kind === 'hand' ? (
              c.points.map(([s, v]) =>
                v === null ? null : <circle key={s} className="curve-point" cx={x(s)} cy={y(v)} r="3.5" />,
              )
            ) : (
              <path
                className={`curve-line${c.place === 'room' ? ' curve-room' : ''}`}
                strokeDasharray={dashes[i % dashes.length]}
                d={pathOf(c.points, x, y)}
              />
            )}
            <text className="curve-name" x={right + 6} y={names[i]! + 4}>
              {name(c)}
            </text>
          </g>
        ))}
      </svg>
      <details>
        <summary>{t('proof.table')}</summary>
        <table className="figure-table">
          <thead>
            <tr>
              <th scope="col">{t('proof.day')}</th>
              {shown.map((c) => (
                <th key={c.id} scope="col">
                  {name(c)}, {t('proof.lowest')}–{t('proof.highest')}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {daysOf(curves).map((dayS) => (
              <tr key={dayS}>
                <th scope="row">{wallDay(measure.locale, dayS)}</th>
                {shown.map((c) => {
                  const some = c.points.flatMap(([s, v]) =>
                    v !== null && Math.floor(s / 86400) * 86400 === dayS ? [v] : [],
                  );
                  return (
                    <td key={c.id}>
                      {some.length > 0 && measure.span('temperature', Math.min(...some), Math.max(...some), 1)}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

function pathOf(
  points: Curves['curves'][number]['points'],
  x: (s: number) => number,
  y: (v: number) => number,
): string {
  let pen = 'M';
  let d = '';
  for (const [s, v] of points) {
    if (v === null) {
      pen = 'M';
      continue;
    }
    d += `${pen}${x(s).toFixed(1)} ${y(v).toFixed(1)}`;
    pen = 'L';
  }
  return d;
}

function nights(fromS: number, toS: number, day: DayPeriod): [number, number][] {
  const out: [number, number][] = [];
  let start: number | null = null;
  for (let s = fromS; s <= toS + 1800; s += 1800) {
    const night = s < toS && !isDayAt(day, (s % 86400) / 3600);
    if (night) start ??= s;
    else if (start !== null) {
      out.push([start, Math.min(s, toS)]);
      start = null;
    }
  }
  return out;
}

const daysOf = (curves: Curves): number[] => {
  const first = Math.floor(curves.fromS / 86400) * 86400;
  return Array.from({ length: Math.floor((curves.toS - first) / 86400) + 1 }, (_, i) => first + i * 86400);
};

/** Names at the line ends, pushed apart so that none lies on another. */
function spreadNames(wanted: readonly number[]): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const out = [...wanted];
  let last = Number.NEGATIVE_INFINITY;
  for (const i of order) {
    out[i] = Math.max(wanted[i]!, last + 15);
    last = out[i];
  }
  return out;
}
