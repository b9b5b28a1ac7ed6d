// One fault as curves that run into the line that harms, the hours written where they cross, and the table behind.

import { atOnce, type FaultFinding } from '../../planning/faults/fault-answer.ts';
import type { FaultRow } from '../../planning/faults/fault-run.ts';
import type { HarmKind, HarmLine } from '../../planning/faults/harm-lines.ts';
import { faultTitle } from '../messages/kit-words.ts';
import { shownFromStored } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { type ChartLine, LineChart } from './line-chart.tsx';

interface FaultFigureProps {
  readonly finding: FaultFinding;
  readonly lines: Readonly<Record<HarmKind, HarmLine>> | null;
  readonly width: number;
}

type Curve = 'coolest' | 'warmest' | 'surface' | 'probe' | 'room';

const curves: readonly {
  readonly key: Curve;
  readonly read: (r: FaultRow) => number;
  readonly tone: ChartLine['tone'];
  readonly dash?: string;
}[] = [
  { key: 'surface', read: (r) => r.surfaceC, tone: 'warm', dash: '8 3' },
  { key: 'warmest', read: (r) => r.warmestC, tone: 'warm' },
  { key: 'coolest', read: (r) => r.coolestC, tone: 'cool' },
  { key: 'probe', read: (r) => r.probeC, tone: 'ink', dash: '2 3' },
  { key: 'room', read: (r) => r.roomC, tone: 'soft' },
];

/** Rows of the table: every hour at first, then fewer. */
const tableHours = [0, 0.5, 1, 2, 3, 4, 6, 8, 12, 18, 24, 48, 72];

export function FaultFigure({ finding, lines, width }: FaultFigureProps) {
  const { t, measure, settings } = useSheet();
  const { rows, first } = finding;
  const damp = first?.line.unit === '%';
  // a home without a thermostat has no probe to read
  const read = curves.filter((c) => rows.every((row) => Number.isFinite(c.read(row))));
  const shown = (c: number) => shownFromStored('temperature', c, settings);
  const drawn = damp
    ? [
        {
          id: 'rh',
          label: t('faults.curve.rh'),
          points: rows.map((r) => [r.hour, r.rhPct] as const),
          tone: 'cool' as const,
        },
      ]
    : read.map(
        (c): ChartLine => ({
          id: c.key,
          label: t(`faults.curve.${c.key}`),
          points: rows.map((r) => [r.hour, shown(c.read(r))] as const),
          tone: c.tone,
          ...(c.dash ? { dash: c.dash } : {}),
        }),
      );
  const levelOf = (line: HarmLine) => ({
    at: line.unit === '%' ? line.at : shown(line.at),
    label: t(`faults.line.${line.kind}`),
    tone: line.side === 'above' ? ('warm' as const) : ('cool' as const),
  });
  const wanted = first ? [first.line] : lines && !damp ? [lines['too-cold'], lines.burns] : [];
  const hour = first?.hours?.median ?? null;
  const marks =
    first && hour !== null ? [{ x: hour, y: levelOf(first.line).at, label: `${measure.number(hour, 1)} h` }] : [];
  const title =
    first && hour !== null
      ? t('faults.title', {
          name: faultTitle(finding.case, measure).text,
          what: t(`faults.line.${first.line.kind}`),
          when: atOnce(hour) ? t('faults.atOnce') : t('faults.after', { hours: `${measure.number(hour, 1)} h` }),
        })
      : t('faults.titleCalm', { name: faultTitle(finding.case, measure).text, hours: `${finding.hoursWatched} h` });
  return (
    <figure className="figure">
      <figcaption className="figure-title" id="fault-title">
        {title}
      </figcaption>
      <LineChart
        lines={drawn}
        levels={wanted.map(levelOf)}
        marks={marks}
        xLabel={t('faults.x')}
        yLabel={`${damp ? t('faults.humidity') : t('faults.temperature')}, ${damp ? '%' : measure.write('temperature', 0).unit}`}
        xText={(x) => measure.number(x, x % 1 === 0 ? 0 : 1)}
        yText={(y) => measure.number(y, 0)}
        width={width}
        label={`${title}. ${t('faults.pictureSay')}`}
      />
      <details className="table-behind">
        <summary>{t('table.behind')}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('faults.x')}</th>
              {read.map((c) => (
                <th key={c.key} scope="col">
                  {t(`faults.curve.${c.key}`)}
                </th>
              ))}
              <th scope="col">{t('faults.humidity')}</th>
            </tr>
          </thead>
          <tbody>
            {tableHours.flatMap((h) => {
              const row = rows.find((r) => Math.abs(r.hour - h) < 0.13);
              return row ? (
                <tr key={h}>
                  <th scope="row">{measure.number(h, h % 1 === 0 ? 0 : 1)}</th>
                  {read.map((c) => (
                    <td key={c.key}>{measure.text('temperature', c.read(row))}</td>
                  ))}
                  <td>{measure.text('percent', row.rhPct)}</td>
                </tr>
              ) : (
                []
              );
            })}
          </tbody>
        </table>
      </details>
    </figure>
  );
}
