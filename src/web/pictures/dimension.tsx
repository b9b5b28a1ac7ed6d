// A dimension line as on a technical drawing: two ticks, a hairline, the measure upon it.

interface DimensionProps {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly text: string;
  /** Where the text stands: upon the line, or beside a short one. */
  readonly beside?: 'left' | 'right';
}

export function Dimension({ x1, y1, x2, y2, text, beside }: DimensionProps) {
  const upright = x1 === x2;
  const tick = 4;
  const midX = (x1 + x2) / 2;
  const midY = (y1 + y2) / 2;
  return (
    <g className="dimension">
      <line x1={x1} y1={y1} x2={x2} y2={y2} />
      {[
        [x1, y1],
        [x2, y2],
      ].map(([x = 0, y = 0]) => (
        <line key={`${x},${y}`} x1={x - tick} y1={y + tick} x2={x + tick} y2={y - tick} className="dimension-tick" />
      ))}
      {beside ? (
        <text x={midX + (beside === 'left' ? -7 : 7)} y={midY + 4} textAnchor={beside === 'left' ? 'end' : 'start'}>
          {text}
        </text>
      ) : (
        <text
          x={midX}
          y={midY}
          dy={upright ? -6 : -6}
          textAnchor="middle"
          transform={upright ? `rotate(-90 ${midX} ${midY})` : undefined}
        >
          {text}
        </text>
      )}
    </g>
  );
}
