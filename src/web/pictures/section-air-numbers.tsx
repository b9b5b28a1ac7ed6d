// The air temperatures of both ends, written in the air where they are.
import type { PlaceId } from '../../physics/answer.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { Readings } from './readings.ts';
import { perchReachM, perchThickness } from './section-fittings.tsx';
import type { SectionFrame } from './section-frame.ts';
import { kelvinOutside, levelOf, type WantedClimate, wantedAtPlace } from './wanted.ts';

interface AirNumbersProps {
  readonly enclosure: Enclosure;
  readonly frame: SectionFrame;
  readonly readings: Readings;
  readonly climate: WantedClimate | null;
}

/** From the name's letters down to the foot of the number [units], and half the width of the number. */
const block = { above: 12, below: 22, half: 30, gap: 6 } as const;

/** Where a number would lie across the perch it stands over it, or under it where the lid is near. */
function clearOfPerch({ perch }: Enclosure, frame: SectionFrame, x: number, y: number): number {
  if (!perch) return y;
  const beside = x + block.half < frame.x(perch.xM - perchReachM) || x - block.half > frame.x(perch.xM + perchReachM);
  const top = frame.z(perch.zM) - block.gap - perchThickness;
  const foot = frame.z(perch.zM) + 8 + perchThickness;
  if (beside || y + block.below < top || y - block.above > foot) return y;
  const over = top - block.below;
  return over - block.above > frame.top ? over : foot + block.gap + block.above;
}

export function SectionAirNumbers({ enclosure, frame, readings, climate }: AirNumbersProps) {
  const { t, measure } = useSheet();
  const { lengthM, heightM } = enclosure.box;
  if (heightM * frame.scale < (frame.narrow ? 110 : 90)) return null;
  const left = readings.warmEnd === 'left';
  const heaterX = enclosure.heaters[0]?.xM ?? (left ? 0.25 : 0.75) * lengthM;
  // Beside the heater, on the side away from its wall, so that neither covers the other.
  const warmX = left
    ? Math.max(heaterX + 0.2 * lengthM, 0.42 * lengthM)
    : Math.min(heaterX - 0.2 * lengthM, 0.58 * lengthM);
  const places: readonly { place: PlaceId; xM: number; share: number }[] = [
    { place: 'warm-air', xM: warmX, share: 0.62 },
    { place: 'cool-air', xM: (left ? 0.84 : 0.16) * lengthM, share: 0.62 },
  ];
  return (
    <g className="air-numbers">
      {places.map(({ place, xM, share }) => {
        const valueC = readings.places[place];
        if (typeof valueC !== 'number') return null;
        const wanted = climate && wantedAtPlace(place, readings.isDay, climate);
        const level = wanted ? levelOf(kelvinOutside(valueC, wanted)) : 0;
        const { num, unit } = measure.write('temperature', valueC);
        const x = frame.x(xM);
        const y = clearOfPerch(enclosure, frame, x, frame.z(heightM * share));
        return (
          <g key={place} data-place={place}>
            <text className="tag-name halo" x={x} y={y} textAnchor="middle">
              {t(`place.${place}`)}
            </text>
            <text
              className={`air-number halo ${level < 0 ? 'tone-cool' : level > 0 ? 'tone-warm' : ''}`}
              x={x}
              y={y + 20}
              textAnchor="middle"
            >
              {level !== 0 && <tspan className="tag-mark">{level < 0 ? '▼\u2009' : '▲\u2009'}</tspan>}
              {num}
              <tspan className="tag-unit" dx="3">
                {unit}
              </tspan>
            </text>
          </g>
        );
      })}
    </g>
  );
}
