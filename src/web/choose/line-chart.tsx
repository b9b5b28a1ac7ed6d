// Lines over time with levels across them and marks on them: temperatures of a rehearsed fault, cost over years, growth.
// Each line has its own dash as well as its own shade. Leaves out: the title and the table, which stand around it.
export interface ChartLine {
  readonly id: string;
  readonly label: string;
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly dash?: string;
  readonly tone: 'warm' | 'cool' | 'ink' | 'soft';
  /** Widened to a band between two further lines. */
  readonly band?: { readonly low: readonly number[]; readonly high: readonly number[] };
}

export interface ChartLevel {
  readonly at: number;
  readonly label: string;
  readonly tone: 'warm' | 'cool';
}

export interface ChartMark {
  readonly x: number;
  readonly y: number;
  readonly label: string;
}

interface LineChartProps {
  readonly lines: readonly ChartLine[];
  readonly levels?: readonly ChartLevel[];
  readonly marks?: readonly ChartMark[];
  readonly xLabel: string;
  readonly yLabel: string;
  readonly xText: (x: number) => string;
  readonly yText: (y: number) => string;
  readonly width: number;
  /** What the picture shows, for those who do not see it. */
  readonly label: string;
  readonly fromZero?: boolean;
  /** Marks of the lower axis on whole numbers only. */
  readonly wholeX?: boolean;
}

const height = 300;
/** Room that the name of a level takes up [px]. */
const nameHeight = 18;
const edge = { left: 52, right: 12, top: 14, bottom: 36 } as const;

/** Round steps that fit about five into a span. */
export function ticks(low: number, high: number, wanted = 5, least = 0): number[] {
  const span = Math.max(1e-9, high - low);
  const rough = Math.max(least, span / wanted);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((k) => k * power).find((s) => s >= rough) ?? rough;
  const from = Math.ceil(low / step - 1e-9);
  const to = Math.floor(high / step + 1e-9);
  return Array.from({ length: to - from + 1 }, (_, i) => (from + i) * step);
}

export function LineChart(props: LineChartProps) {
  const { lines, levels = [], marks = [], width } = props;
  const xs = lines.flatMap((line) => line.points.map(([x]) => x));
  const ys = [
    ...lines.flatMap((line) => [
      ...line.points.map(([, y]) => y),
      ...(line.band?.low ?? []),
      ...(line.band?.high ?? []),
    ]),
    ...levels.map((level) => level.at),
  ];
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)];
  const bottom = props.fromZero ? 0 : Math.min(...ys);
  const top = Math.max(...ys);
  const pad = (top - bottom) * 0.06 || 1;
  const [y0, y1] = [props.fromZero ? 0 : bottom - pad, top + pad];
  const at = (x: number, y: number): readonly [number, number] => [
    edge.left + ((x - x0) / Math.max(1e-9, x1 - x0)) * (width - edge.left - edge.right),
    height - edge.bottom - ((y - y0) / Math.max(1e-9, y1 - y0)) * (height - edge.top - edge.bottom),
  ];
  // a level close below another is named below its own line
  const under = levels.map(({ at: y }) =>
    levels.some((other) => other.at > y && at(x0, y)[1] - at(x0, other.at)[1] < nameHeight),
  );
  const path = (points: readonly (readonly [number, number])[]) =>
    points
      .map(
        ([x, y], i) =>
          `${i === 0 ? 'M' : 'L'}${at(x, y)
            .map((v) => v.toFixed(1))
            .join(' ')}`,
      )
      .join('');
  const band = (line: ChartLine) => {
    const up = line.points.map(([x], i) => [x, line.band?.high[i] ?? 0] as const);
    const down = line.points.map(([x], i) => [x, line.band?.low[i] ?? 0] as const).reverse();
    return `${path(up)}L${path(down).slice(1)}Z`;
  };
  return (
    <>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={props.label}
        className="chart"
      >
        {ticks(y0, y1).map((y) => (
          <g key={y}>
            <path
              className="chart-grid"
              d={path([
                [x0, y],
                [x1, y],
              ])}
            />
            <text className="chart-tick" x={edge.left - 6} y={at(x0, y)[1] + 4} textAnchor="end">
              {props.yText(y)}
            </text>
          </g>
        ))}
        {ticks(x0, x1, Math.max(3, Math.floor(width / 90)), props.wholeX ? 1 : 0).map((x) => (
          <text key={x} className="chart-tick" x={at(x, y0)[0]} y={height - edge.bottom + 16} textAnchor="middle">
            {props.xText(x)}
          </text>
        ))}
        <text className="chart-axis" x={(edge.left + width - edge.right) / 2} y={height - 4} textAnchor="middle">
          {props.xLabel}
        </text>
        <text className="chart-axis" x={4} y={11}>
          {props.yLabel}
        </text>
        {lines.map(
          (line) => line.band && <path key={line.id} className={`chart-band chart-${line.tone}`} d={band(line)} />,
        )}
        {levels.map((level) => (
          <g key={level.label} className={`chart-level chart-${level.tone}`}>
            <path
              d={path([
                [x0, level.at],
                [x1, level.at],
              ])}
            />
          </g>
        ))}
        {lines.map((line) => (
          <path
            key={line.id}
            className={`chart-line chart-${line.tone}`}
            strokeDasharray={line.dash}
            d={path(line.points)}
          />
        ))}
        {levels.map((level, i) => (
          <text
            key={level.label}
            className="chart-level-name"
            x={width - edge.right - 2}
            y={at(x1, level.at)[1] + (under[i] ? 14 : -4)}
            textAnchor="end"
          >
            {level.label}
          </text>
        ))}
        {marks.map((mark) => {
          const [cx, cy] = at(mark.x, mark.y);
          const left = cx > width * 0.7;
          return (
            <g key={`${mark.label}${mark.x}`} className="chart-mark">
              <circle cx={cx} cy={cy} r={5} />
              <text x={left ? cx - 9 : cx + 9} y={cy - 8} textAnchor={left ? 'end' : 'start'}>
                {mark.label}
              </text>
            </g>
          );
        })}
      </svg>
      <ul className="chart-key">
        {lines.map((line) => (
          <li key={line.id}>
            <svg viewBox="0 0 34 10" width={34} height={10} aria-hidden="true">
              <path className={`chart-line chart-${line.tone}`} strokeDasharray={line.dash} d="M1 5H33" />
            </svg>
            {line.label}
          </li>
        ))}
      </ul>
    </>
  );
}
