// The two strips at the right edge of the gradient map: the heater's work in watts, and the room's temperature.
import type { DayAnswer } from '../../physics/answer.ts';
import { useSheet } from '../settings/settings-context.tsx';

interface StripProps {
  readonly day: DayAnswer;
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly height: number;
  readonly narrow: boolean;
}

/** Means over each stretch of `stepH` hours, so that a thermostat's switching reads as work done. */
export function meansPerStep(hours: readonly number[], values: readonly number[], stepH: number): readonly number[] {
  const count = Math.round(24 / stepH);
  const sums = new Array<number>(count).fill(0);
  const counts = new Array<number>(count).fill(0);
  hours.forEach((hour, row) => {
    const at = Math.min(count - 1, Math.floor((hour % 24) / stepH));
    sums[at] = (sums[at] ?? 0) + (values[row] ?? 0);
    counts[at] = (counts[at] ?? 0) + 1;
  });
  return sums.map((sum, at) => (counts[at] ? sum / (counts[at] ?? 1) : 0));
}

const stepH = 0.5;

export function HeaterStrip({ day, x, width, top, height, narrow }: StripProps) {
  const { t, measure } = useSheet();
  const means = meansPerStep(day.hours, day.heaterW, stepH);
  const most = Math.max(10, ...means);
  const bar = height / means.length;
  const steps = means.map(
    (watts, at) => `H${(x + (watts / most) * width).toFixed(1)}V${(top + (at + 1) * bar).toFixed(1)}`,
  );
  const workPath = `M${x} ${top}${steps.join('')}H${x}Z`;
  return (
    <g className="strip">
      <line className="strip-zero" x1={x} x2={x} y1={top} y2={top + height} />
      <path className="heater-work" d={workPath} />
      <text className="axis-name" x={x} y={top - 10}>
        {narrow ? t('map.heaterShort') : t('map.heater')}
      </text>
      <text className="axis-value" x={x} y={top + height + 18}>
        {narrow ? measure.write('power', most).num : t('map.upTo', { value: measure.text('power', most) })}
      </text>
    </g>
  );
}

export function RoomStrip({ day, x, width, top, height, narrow }: StripProps) {
  const { t, measure } = useSheet();
  const least = Math.min(...day.roomC);
  const most = Math.max(...day.roomC);
  const span = Math.max(2, most - least);
  const points = day.hours.map((hour, row) => {
    const share = ((day.roomC[row] ?? least) - least) / span;
    return `${(x + share * width).toFixed(1)},${(top + (hour / 24) * height).toFixed(1)}`;
  });
  return (
    <g className="strip">
      <polyline className="room-line" points={points.join(' ')} />
      <text className="axis-name" x={x} y={top - 10}>
        {narrow ? t('map.roomShort') : t('map.room')}
      </text>
      <text className="axis-value" x={x} y={top + height + 18}>
        {measure.span('temperature', least, most)}
      </text>
    </g>
  );
}
