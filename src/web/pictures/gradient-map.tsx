// The gradient map: the floor of the box across, the 24 hours down, coloured for this animal; the heater's work and the
// room beside it; an hour line that can be moved. Its title and its table stand in gradient-figure.tsx.
import { type KeyboardEvent, type PointerEvent, useMemo, useRef } from 'react';
import type { DayAnswer } from '../../physics/answer.ts';
import type { DayPeriod } from '../../physics/enclosure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { cellPath, type DayField, dayField } from './day-field.ts';
import { HeaterStrip, RoomStrip } from './gradient-strips.tsx';
import { contourTemperatures, isolines } from './isolines.ts';
import { levelClass, levels, type WantedClimate } from './wanted.ts';

interface GradientMapProps {
  readonly lengthM: number;
  /** The day period of the enclosure, for the bar beside the hours. */
  readonly period: DayPeriod;
  readonly day: DayAnswer;
  readonly climate: WantedClimate | null;
  readonly hour: number | null;
  readonly onHour: (hour: number) => void;
  readonly width: number;
  readonly mapHeight: number;
  readonly describedBy: string;
}

/** Kelvin between contour lines: the finer while they are few (our choice). */
const contourSteps = { fineK: 2, coarseK: 4, mostFine: 7 } as const;

function contourTemperaturesOf(field: DayField): readonly number[] {
  const fine = contourTemperatures(field, contourSteps.fineK);
  return fine.length <= contourSteps.mostFine ? fine : contourTemperatures(field, contourSteps.coarseK);
}

export function GradientMap(props: GradientMapProps) {
  const { lengthM, period, day, climate, hour, onHour, width, mapHeight } = props;
  const { t, measure } = useSheet();
  const held = useRef(false);
  const field = useMemo(() => dayField(day, lengthM, period, climate), [day, lengthM, period, climate]);
  const paths = useMemo(
    () => ({
      levels: levels.map((level) => ({ level, path: cellPath(field, (at) => at === level) })),
      cold: cellPath(field, (level) => level < 0),
      warm: cellPath(field, (level) => level > 0),
      lines: isolines(field, contourTemperaturesOf(field)),
    }),
    [field],
  );
  const narrow = width < 520;
  // A clock with AM and PM needs more room beside the map.
  const left = (narrow ? 46 : 58) + (measure.locale === 'en-US' ? 12 : 0);
  const top = 30;
  const strips = narrow ? 84 : 168;
  const right = width - strips;
  const bottom = top + mapHeight;
  const scaleX = (right - left) / field.columns;
  const scaleY = mapHeight / field.rows;
  const y = (atHour: number) => top + (atHour / 24) * mapHeight;
  const shownHour = hour;
  const labels = contourLabels(
    paths.lines.map((line) => ({
      tempC: line.tempC,
      reach: line.reach,
      x: Math.min(right - 14, Math.max(left + 14, left + line.label.x * scaleX)),
      y: Math.min(bottom - 4, Math.max(top + 12, top + line.label.y * scaleY + 4)),
    })),
  );

  const hourFrom = (event: PointerEvent<SVGSVGElement>): number | null => {
    const matrix = event.currentTarget.getScreenCTM();
    if (!matrix) return null;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return clampHour(((at.y - top) / mapHeight) * 24);
  };
  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    const at = hourFrom(event);
    if (at === null) return;
    held.current = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    onHour(at);
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const at = held.current ? hourFrom(event) : null;
    if (at !== null) onHour(at);
  };
  const release = () => {
    held.current = false;
  };
  const onKeyDown = (event: KeyboardEvent<SVGGElement>) => {
    const step = hourSteps[event.key];
    const now = shownHour ?? 0;
    if (step !== undefined) onHour(clampHour(now + step));
    else if (event.key === 'Home') onHour(0);
    else if (event.key === 'End') onHour(lastHour);
    else return;
    event.preventDefault();
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing that holds movable points; a fieldset cannot hold it
    <svg
      className="drawing gradient-map"
      viewBox={`0 0 ${width} ${bottom + 26}`}
      width="100%"
      role="group"
      aria-label={t('map.label')}
      aria-describedby={props.describedBy}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={release}
      onPointerCancel={release}
    >
      <g transform={`translate(${left} ${top}) scale(${scaleX} ${scaleY})`}>
        {paths.levels.map(({ level, path }) => path && <path key={level} className={levelClass(level)} d={path} />)}
        <g className="contours">
          {paths.lines.map((line) => (
            <path key={line.tempC} d={line.path} vectorEffect="non-scaling-stroke" />
          ))}
        </g>
      </g>
      <PatternCover d={paths.cold} fill="url(#hatch-cold)" x={left} y={top} scaleX={scaleX} scaleY={scaleY} />
      <PatternCover d={paths.warm} fill="url(#dots-warm)" x={left} y={top} scaleX={scaleX} scaleY={scaleY} />
      {labels.map((label) => (
        <text key={label.tempC} className="contour-label halo" x={label.x} y={label.y} textAnchor="middle">
          {measure.write('temperature', label.tempC, 0).num}
        </text>
      ))}
      <rect className="frame" x={left} y={top} width={right - left} height={mapHeight} />
      <g className="hours">
        {[0, 6, 12, 18, 24].map((at) => (
          <g key={at}>
            <line className="hour-tick" x1={left - 5} x2={left} y1={y(at)} y2={y(at)} />
            <text x={left - 9} y={y(at) + (at === 0 ? 9 : at === 24 ? 0 : 4)} textAnchor="end">
              {measure.clock(at)}
            </text>
          </g>
        ))}
        <line className="day-bar" x1={left - 2.5} x2={left - 2.5} y1={y(period.startH)} y2={y(period.endH)} />
      </g>
      <text className="axis-name" x={left} y={bottom + 18}>
        {t(day.warmEnd === 'left' ? 'map.warmEnd' : 'map.coolEnd')}
      </text>
      <text className="axis-name" x={right} y={bottom + 18} textAnchor="end">
        {t(day.warmEnd === 'left' ? 'map.coolEnd' : 'map.warmEnd')}
      </text>
      <HeaterStrip day={day} x={right + 12} width={narrow ? 26 : 62} top={top} height={mapHeight} narrow={narrow} />
      <RoomStrip
        day={day}
        x={right + (narrow ? 48 : 92)}
        width={narrow ? 30 : 60}
        top={top}
        height={mapHeight}
        narrow={narrow}
      />
      <g
        className={shownHour === null ? 'scrubber scrubber-idle' : 'scrubber'}
        role="slider"
        tabIndex={0}
        aria-orientation="vertical"
        aria-label={t('map.hour')}
        aria-valuemin={0}
        aria-valuemax={lastHour}
        aria-valuenow={shownHour ?? 0}
        aria-valuetext={shownHour === null ? t('map.hourNone') : measure.clock(shownHour)}
        onKeyDown={onKeyDown}
      >
        <rect className="handle-target" x={0} y={y(shownHour ?? 0) - 22} width={width - 4} height={44} />
        <line x1={left - 6} x2={width - 4} y1={y(shownHour ?? 0)} y2={y(shownHour ?? 0)} />
        {shownHour !== null && (
          <g>
            <rect className="scrubber-tab" x={0} y={y(shownHour) - 11} width={left - 6} height={22} rx={2} />
            <text className="scrubber-text" x={(left - 6) / 2} y={y(shownHour) + 4.5} textAnchor="middle">
              {measure.clock(shownHour)}
            </text>
          </g>
        )}
      </g>
    </svg>
  );
}

interface ContourLabel {
  readonly tempC: number;
  readonly reach: number;
  readonly x: number;
  readonly y: number;
}

/** Labels that do not touch one another; the longer lines are named first. */
export function contourLabels(wanted: readonly ContourLabel[]): readonly ContourLabel[] {
  const placed: ContourLabel[] = [];
  for (const label of [...wanted].sort((a, b) => b.reach - a.reach)) {
    if (placed.every((other) => Math.abs(other.x - label.x) > 26 || Math.abs(other.y - label.y) > 15))
      placed.push(label);
  }
  return placed;
}

const lastHour = 23.75;
const hourSteps: Readonly<Record<string, number>> = {
  ArrowDown: 0.25,
  ArrowRight: 0.25,
  ArrowUp: -0.25,
  ArrowLeft: -0.25,
  PageDown: 3,
  PageUp: -3,
};

/** To the quarter hour, inside the day. */
function clampHour(hour: number): number {
  return Math.min(lastHour, Math.max(0, Math.round(hour * 4) / 4));
}

interface CoverProps {
  readonly d: string;
  readonly fill: string;
  readonly x: number;
  readonly y: number;
  readonly scaleX: number;
  readonly scaleY: number;
}

/** A pattern laid over cells at its own size, not stretched with them. */
function PatternCover({ d, fill, x, y, scaleX, scaleY }: CoverProps) {
  const scaled = useMemo(() => scaledPath(d, x, y, scaleX, scaleY), [d, x, y, scaleX, scaleY]);
  return scaled ? <path d={scaled} fill={fill} /> : null;
}

/** A cell path (M x y H x V y H x Z) moved and scaled in its numbers. */
export function scaledPath(d: string, x: number, y: number, scaleX: number, scaleY: number): string {
  return d.replace(/M(\d+) (\d+)H(\d+)V(\d+)H(\d+)Z/g, (_all, x0: string, y0: string, x1: string, y1: string) => {
    const ax = (x + Number(x0) * scaleX).toFixed(1);
    const bx = (x + Number(x1) * scaleX).toFixed(1);
    return `M${ax} ${(y + Number(y0) * scaleY).toFixed(1)}H${bx}V${(y + Number(y1) * scaleY).toFixed(1)}H${ax}Z`;
  });
}
