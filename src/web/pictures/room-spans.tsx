// The room in winter and in summer as two spans on one temperature line, against what the animal wants at both ends.
import { useSheet } from '../settings/settings-context.tsx';
import type { Answers } from '../state/document.ts';
import type { WantedClimate } from './wanted.ts';

interface RoomSpansProps {
  readonly answers: Answers;
  readonly climate: WantedClimate | null;
  readonly width: number;
}

interface Row {
  readonly name: string;
  readonly lowC: number;
  readonly highC: number;
  readonly kind: 'room' | 'warm' | 'cool';
}

export function RoomSpans({ answers, climate, width }: RoomSpansProps) {
  const { t, measure } = useSheet();
  const rows: Row[] = [];
  const add = (name: string, lowC: number | null, highC: number | null, kind: Row['kind']) => {
    if (lowC !== null && highC !== null && lowC <= highC) rows.push({ name, lowC, highC, kind });
  };
  add(t('spans.winter'), answers.winterLowC, answers.winterHighC, 'room');
  add(t('spans.summer'), answers.summerLowC, answers.summerHighC, 'room');
  if (climate) {
    add(t('spans.basking'), climate.baskingLowC, climate.baskingHighC, 'warm');
    add(t('spans.cool'), climate.coolLowC, climate.coolHighC, 'cool');
  }
  if (rows.length === 0) return null;
  const least = Math.min(10, ...rows.map((row) => row.lowC)) - 2;
  const most = Math.max(36, ...rows.map((row) => row.highC)) + 2;
  const left = width < 520 ? 92 : 150;
  const right = width - 66;
  const x = (tempC: number) => left + ((tempC - least) / (most - least)) * (right - left);
  const rowHeight = 26;
  const height = rows.length * rowHeight + 8;
  const room = answers.winterLowC;
  const finding =
    climate && room !== null
      ? t('spans.finding', {
          room: measure.text('temperature', room),
          gap: measure.text('difference', Math.max(0, climate.baskingLowC - room)),
        })
      : t('spans.title');
  return (
    <figure className="figure spans">
      <figcaption className="figure-title">{finding}</figcaption>
      <svg className="drawing" viewBox={`0 0 ${width} ${height}`} width="100%" role="img" aria-label={finding}>
        {rows.map((row, index) => {
          const y = index * rowHeight + rowHeight / 2 + 2;
          return (
            <g key={row.name} className={`span span-${row.kind}`}>
              <text className="tag-name" x={left - 10} y={y + 4} textAnchor="end">
                {row.name}
              </text>
              <line className="span-guide" x1={left} x2={right} y1={y} y2={y} />
              <rect x={x(row.lowC)} y={y - 6} width={Math.max(3, x(row.highC) - x(row.lowC))} height={12} rx={1} />
              <text className="axis-value halo-paper" x={x(row.highC) + 6} y={y + 4}>
                {measure.span('temperature', row.lowC, row.highC)}
              </text>
            </g>
          );
        })}
      </svg>
    </figure>
  );
}
