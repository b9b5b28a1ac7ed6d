// Colours the air and the floor of the front view by how far each column is from what this animal wants.
import type { Enclosure } from '../../physics/enclosure.ts';
import { layersForHeight } from '../../physics/grid.ts';
import { fromWarmFrac, type Readings } from './readings.ts';
import type { SectionFrame } from './section-frame.ts';
import { kelvinOutside, levelClass, levelOf, type WantedClimate, wantedAt } from './wanted.ts';

interface FieldProps {
  readonly enclosure: Enclosure;
  readonly frame: SectionFrame;
  readonly readings: Readings;
  readonly climate: WantedClimate;
}

/** Edges between columns: half way between neighbouring centres, the walls at both ends [m]. */
export function columnEdges(centresM: readonly number[], lengthM: number): readonly number[] {
  const edges = [0];
  for (let i = 1; i < centresM.length; i++) edges.push(((centresM[i - 1] ?? 0) + (centresM[i] ?? 0)) / 2);
  edges.push(lengthM);
  return edges;
}

export function SectionField({ enclosure, frame, readings, climate }: FieldProps) {
  const { lengthM, heightM } = enclosure.box;
  const floorM = enclosure.substrate?.depthM ?? 0;
  const edges = columnEdges(readings.xM, lengthM);
  const layers = readings.airC;
  // A simulated day keeps the lowest layer only; it is drawn as thick as the model cuts it.
  const layerM = heightM / (readings.kind === 'settled' ? layers.length : layersForHeight(heightM));
  const levelAt = (tempC: number, column: number) => {
    const frac = fromWarmFrac(readings.xM[column] ?? 0, lengthM, readings.warmEnd);
    return levelOf(kelvinOutside(tempC, wantedAt(frac, readings.isDay, climate)));
  };
  const stripY = frame.z(floorM);
  const stripHeight = Math.max(6, floorM * frame.scale);
  return (
    <g>
      <g className="air-field">
        {layers.map((row, layer) =>
          row.map((tempC, column) => {
            const level = levelAt(tempC, column);
            if (level === 0) return null;
            const x = frame.x(edges[column] ?? 0);
            const fromM = Math.max(floorM, layer * layerM);
            return (
              <rect
                key={`${layer}-${readings.xM[column]}`}
                className={levelClass(level)}
                x={x}
                y={frame.z((layer + 1) * layerM)}
                width={frame.x(edges[column + 1] ?? lengthM) - x + 0.4}
                height={((layer + 1) * layerM - fromM) * frame.scale + 0.4}
              />
            );
          }),
        )}
      </g>
      {readings.floorC.map((tempC, column) => {
        const level = levelAt(tempC, column);
        const x = frame.x(edges[column] ?? 0);
        const width = frame.x(edges[column + 1] ?? lengthM) - x;
        return (
          <g key={readings.xM[column]}>
            <rect className={levelClass(level)} x={x} y={stripY} width={width + 0.4} height={stripHeight} />
            {level !== 0 && (
              <rect
                fill={level < 0 ? 'url(#hatch-cold)' : 'url(#dots-warm)'}
                x={x}
                y={stripY}
                width={width + 0.4}
                height={stripHeight}
              />
            )}
          </g>
        );
      })}
      <line className="substrate-top" x1={frame.left} x2={frame.right} y1={stripY} y2={stripY} />
    </g>
  );
}
