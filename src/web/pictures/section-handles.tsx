// The heaters and probes of the front view as points that can be moved by pointer or by arrow keys.
import type { Enclosure } from '../../physics/enclosure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { Dimension } from './dimension.tsx';
import { DragHandle } from './drag-handle.tsx';
import { heaterHeightM } from './heater-shape.tsx';
import { heaterHasHeight, type Place } from './move.ts';
import type { Readings } from './readings.ts';
import type { SectionFrame } from './section-frame.ts';

export interface SectionMoves {
  readonly heater: (index: number, to: Partial<Place>) => void;
  readonly probe: (index: number, to: Partial<Place>) => void;
}

interface HandlesProps {
  readonly enclosure: Enclosure;
  readonly frame: SectionFrame;
  readonly moves: SectionMoves | null;
}

/** One press of an arrow key moves this far; with Shift five times as far [m]. */
export const keyStepM = 0.01;
export const keyStepOf = (large: boolean): number => (large ? 5 : 1) * keyStepM;

export function HeaterHandles({ enclosure, frame, moves }: HandlesProps) {
  const { t, measure } = useSheet();
  const { box, substrate, heaters } = enclosure;
  const floorM = substrate?.depthM ?? 0;
  if (!moves) return null;
  return heaters.map((heater, index) => {
    const zM = heaterHeightM(heater, box.heightM, floorM);
    return (
      <DragHandle
        key={heater.id}
        id={`heater-${index}`}
        label={t('handle.heater', { kind: t(`heater.${heater.kind}`) })}
        valueNow={Math.round(heater.xM * 100)}
        valueMin={0}
        valueMax={Math.round(box.lengthM * 100)}
        valueText={t(heaterHasHeight(heater) ? 'handle.at' : 'handle.along', {
          x: measure.text('length', heater.xM),
          z: measure.text('length', Math.max(0, zM - floorM)),
        })}
        x={frame.x(heater.xM)}
        y={frame.z(zM)}
        onPointerTo={(x, y) => moves.heater(index, { xM: frame.xM(x), zM: frame.zM(y) })}
        onStep={(right, up, large) =>
          moves.heater(index, { xM: heater.xM + right * keyStepOf(large), zM: heater.zM + up * keyStepOf(large) })
        }
      >
        <circle className="handle-ring" cx={frame.x(heater.xM)} cy={frame.z(zM)} r={17} />
      </DragHandle>
    );
  });
}

export function ProbeHandles({
  enclosure,
  frame,
  readings,
  moves,
}: HandlesProps & { readonly readings: Readings | null }) {
  const { t, measure } = useSheet();
  const { box, substrate, thermostats } = enclosure;
  const floorM = substrate?.depthM ?? 0;
  return thermostats.map((thermostat, index) => {
    const { probe } = thermostat;
    const flat = probe.at === 'floor' || probe.at === 'mat';
    const x = frame.x(probe.xM);
    const y = probe.at === 'mat' ? frame.floor + frame.wall.bottom / 2 : frame.z(flat ? floorM : probe.zM);
    const aboveM = probe.zM - floorM;
    const away = probe.xM < box.lengthM / 2 ? -1 : 1;
    const lineX = x + away * (frame.narrow ? 16 : 20);
    const heightText = measure.text('length', aboveM);
    const roomBeside = away < 0 ? lineX - frame.left : frame.right - lineX;
    const valueC = index === 0 ? readings?.places.probe : undefined;
    const body = (
      <g className="probe">
        {!flat && (
          <path
            className="probe-cable"
            d={`M${x} ${y}C${x + away * 26} ${y - 20},${x + away * 4} ${frame.top + 30},${x + away * 12} ${frame.top}`}
          />
        )}
        <circle className="probe-dot" cx={x} cy={y} r={5} />
        <path className="probe-cross" d={`M${x - 9} ${y}h18M${x} ${y - 9}v18`} />
        {typeof valueC === 'number' && (
          <text className="probe-number halo" x={x - away * 10} y={y - 9} textAnchor={away < 0 ? 'start' : 'end'}>
            {t('place.probe')} {measure.text('temperature', valueC)}
          </text>
        )}
      </g>
    );
    return (
      <g key={thermostat.id} data-place="probe">
        {!flat && index === 0 && aboveM * frame.scale > 18 && roomBeside > 10 + 7.5 * heightText.length && (
          <Dimension
            x1={lineX}
            x2={lineX}
            y1={frame.z(floorM)}
            y2={y}
            text={heightText}
            beside={away < 0 ? 'left' : 'right'}
          />
        )}
        {moves ? (
          <DragHandle
            id={`probe-${index}`}
            label={t('handle.probe')}
            valueNow={Math.round(probe.xM * 100)}
            valueMin={0}
            valueMax={Math.round(box.lengthM * 100)}
            valueText={t(flat ? 'handle.along' : 'handle.at', {
              x: measure.text('length', probe.xM),
              z: measure.text('length', Math.max(0, aboveM)),
            })}
            x={x}
            y={y}
            onPointerTo={(toX, toY) => moves.probe(index, { xM: frame.xM(toX), zM: frame.zM(toY) })}
            onStep={(right, up, large) =>
              moves.probe(index, { xM: probe.xM + right * keyStepOf(large), zM: probe.zM + up * keyStepOf(large) })
            }
          >
            {body}
          </DragHandle>
        ) : (
          body
        )}
      </g>
    );
  });
}
