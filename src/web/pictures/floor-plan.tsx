// The enclosure seen from above, to scale: hides, bowl, heater, probe, the floor's temperature and the animal stretched out.
import { useMemo } from 'react';
import type { Enclosure } from '../../physics/enclosure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { Dimension } from './dimension.tsx';
import { DragHandle } from './drag-handle.tsx';
import { fromWarmFrac, type Readings } from './readings.ts';
import { columnEdges } from './section-field.tsx';
import { keyStepOf, type SectionMoves } from './section-handles.tsx';
import { kelvinOutside, levelClass, levelOf, type WantedClimate, wantedAt } from './wanted.ts';

interface FloorPlanProps {
  readonly enclosure: Enclosure;
  readonly readings: Readings | null;
  readonly climate: WantedClimate | null;
  readonly width: number;
  readonly mostInsideHeight: number;
  readonly describedBy: string;
  readonly moves: SectionMoves | null;
}

/** The animal as one gentle wave whose length along its back is the body's length. */
export function stretchedPath(x: number, y: number, length: number): string {
  const waves = 4;
  const step = length / waves / 2;
  let path = `M${x} ${y}`;
  for (let i = 0; i < waves * 2; i++) path += `q${step / 2} ${i % 2 === 0 ? -3.5 : 3.5} ${step} 0`;
  return path;
}

export function FloorPlan(props: FloorPlanProps) {
  const { enclosure, readings, climate, width, mostInsideHeight, moves } = props;
  const { t, measure } = useSheet();
  const { box, animal } = enclosure;
  const narrow = width < 520;
  const frame = useMemo(() => {
    const marginLeft = narrow ? 46 : 74;
    const marginRight = narrow ? 26 : 44;
    const longest = Math.max(box.lengthM, animal?.totalLengthM ?? 0);
    const scale = Math.min((width - marginLeft - marginRight) / longest, mostInsideHeight / box.depthM);
    const left = marginLeft + Math.max(0, (width - marginLeft - marginRight - longest * scale) / 2);
    const top = 36;
    return { scale, left, top, right: left + box.lengthM * scale, front: top + box.depthM * scale };
  }, [box.lengthM, box.depthM, animal?.totalLengthM, width, mostInsideHeight, narrow]);
  const x = (xM: number) => frame.left + xM * frame.scale;
  const y = (yM: number) => frame.front - yM * frame.scale;
  const edges = readings ? columnEdges(readings.xM, box.lengthM) : [];
  const animalY = frame.front + 44;
  const height = frame.front + (animal ? 74 : 30);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing that holds movable points; a fieldset cannot hold it
    <svg
      className="drawing floor-plan"
      viewBox={`0 0 ${width} ${height}`}
      width="100%"
      role="group"
      aria-label={t('floor.label')}
      aria-describedby={props.describedBy}
    >
      <rect
        className="inside"
        x={frame.left}
        y={frame.top}
        width={frame.right - frame.left}
        height={frame.front - frame.top}
      />
      {readings &&
        climate &&
        readings.floorC.map((tempC, column) => {
          const frac = fromWarmFrac(readings.xM[column] ?? 0, box.lengthM, readings.warmEnd);
          const level = levelOf(kelvinOutside(tempC, wantedAt(frac, readings.isDay, climate)));
          if (level === 0) return null;
          const from = x(edges[column] ?? 0);
          const area = {
            x: from,
            y: frame.top,
            width: x(edges[column + 1] ?? box.lengthM) - from + 0.4,
            height: frame.front - frame.top,
          };
          return (
            <g key={readings.xM[column]}>
              <rect {...area} className={levelClass(level)} />
              <rect {...area} fill={level < 0 ? 'url(#hatch-cold)' : 'url(#dots-warm)'} />
            </g>
          );
        })}
      {enclosure.hides.map((hide) => (
        <rect
          key={`${hide.xM}-${hide.yM}`}
          className="hide"
          x={x(hide.xM - hide.lengthM / 2)}
          y={y(hide.yM + hide.depthM / 2)}
          width={hide.lengthM * frame.scale}
          height={hide.depthM * frame.scale}
          rx={10}
        />
      ))}
      {enclosure.bowl && (
        <g>
          <circle
            className="bowl"
            cx={x(enclosure.bowl.xM)}
            cy={y(enclosure.bowl.yM)}
            r={(enclosure.bowl.diameterM / 2) * frame.scale}
          />
          <circle
            className="water"
            cx={x(enclosure.bowl.xM)}
            cy={y(enclosure.bowl.yM)}
            r={(enclosure.bowl.diameterM / 2) * frame.scale * 0.75}
          />
        </g>
      )}
      {enclosure.heaters.map((heater) =>
        heater.lengthM && heater.depthM ? (
          <rect
            key={heater.id}
            className="heater-area"
            x={x(heater.xM - heater.lengthM / 2)}
            y={y(heater.yM + heater.depthM / 2)}
            width={heater.lengthM * frame.scale}
            height={heater.depthM * frame.scale}
          />
        ) : (
          <circle
            key={heater.id}
            className="heater-area"
            cx={x(heater.xM)}
            cy={y(heater.yM)}
            r={0.06 * frame.scale + 6}
          />
        ),
      )}
      <rect
        className="walls"
        x={frame.left}
        y={frame.top}
        width={frame.right - frame.left}
        height={frame.front - frame.top}
      />
      <line className="front-glass" x1={frame.left} x2={frame.right} y1={frame.front + 3} y2={frame.front + 3} />
      <text className="tag-name" x={frame.right} y={frame.front + 20} textAnchor="end">
        {t('floor.front')}
      </text>
      <Dimension x1={frame.left} x2={frame.right} y1={18} y2={18} text={measure.text('length', box.lengthM)} />
      <Dimension
        x1={frame.left - (narrow ? 18 : 30)}
        x2={frame.left - (narrow ? 18 : 30)}
        y1={frame.top}
        y2={frame.front}
        text={measure.text('length', box.depthM)}
      />
      {animal && (
        <g className="animal">
          <path className="animal-body" d={stretchedPath(frame.left, animalY, animal.totalLengthM * frame.scale)} />
          <text className="tag-name" x={frame.left} y={animalY + 22}>
            {t('floor.animal', { length: measure.text('length', animal.totalLengthM) })}
          </text>
        </g>
      )}
      {moves &&
        enclosure.heaters.map((heater, index) => (
          <DragHandle
            key={heater.id}
            id={`floor-heater-${index}`}
            label={t('handle.heater', { kind: t(`heater.${heater.kind}`) })}
            valueNow={Math.round(heater.xM * 100)}
            valueMin={0}
            valueMax={Math.round(box.lengthM * 100)}
            valueText={t('handle.floor', {
              x: measure.text('length', heater.xM),
              y: measure.text('length', heater.yM),
            })}
            x={x(heater.xM)}
            y={y(heater.yM)}
            onPointerTo={(toX, toY) =>
              moves.heater(index, { xM: (toX - frame.left) / frame.scale, yM: (frame.front - toY) / frame.scale })
            }
            onStep={(right, up, large) =>
              moves.heater(index, { xM: heater.xM + right * keyStepOf(large), yM: heater.yM + up * keyStepOf(large) })
            }
          >
            <circle className="handle-ring" cx={x(heater.xM)} cy={y(heater.yM)} r={14} />
          </DragHandle>
        ))}
      {enclosure.thermostats.map(({ id, probe }, index) => {
        const mark = (
          <g className="probe">
            <circle className="probe-dot" cx={x(probe.xM)} cy={y(probe.yM)} r={5} />
            <path
              className="probe-cross"
              d={`M${x(probe.xM) - 9} ${y(probe.yM)}h18M${x(probe.xM)} ${y(probe.yM) - 9}v18`}
            />
          </g>
        );
        if (!moves) return <g key={id}>{mark}</g>;
        return (
          <DragHandle
            key={id}
            id={`floor-probe-${index}`}
            label={t('handle.probe')}
            valueNow={Math.round(probe.xM * 100)}
            valueMin={0}
            valueMax={Math.round(box.lengthM * 100)}
            valueText={t('handle.floor', { x: measure.text('length', probe.xM), y: measure.text('length', probe.yM) })}
            x={x(probe.xM)}
            y={y(probe.yM)}
            onPointerTo={(toX, toY) =>
              moves.probe(index, { xM: (toX - frame.left) / frame.scale, yM: (frame.front - toY) / frame.scale })
            }
            onStep={(right, up, large) =>
              moves.probe(index, { xM: probe.xM + right * keyStepOf(large), yM: probe.yM + up * keyStepOf(large) })
            }
          >
            {mark}
          </DragHandle>
        );
      })}
    </svg>
  );
}
