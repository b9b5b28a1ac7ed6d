// The box turned by hand: where the heater, the probe and the hides stand to each other in all three directions, with
// the air on the far walls and the floor coloured as in the section. Explains what no flat view can; nothing depends on it.
import { useMemo } from 'react';
import type { Enclosure } from '../../../physics/enclosure.ts';
import { fromWarmFrac, type Readings } from '../readings.ts';
import { columnEdges } from '../section-field.tsx';
import { kelvinOutside, type Level, levelClass, levelOf, type WantedClimate, wantedAt } from '../wanted.ts';
import { type Line, thingsInside } from './things.ts';
import { farSides, type Point, type Seen, type Side, seenFrom, sidesOf, type Turn } from './turn.ts';

interface TurnedBoxProps {
  readonly enclosure: Enclosure;
  readonly readings: Readings | null;
  readonly climate: WantedClimate | null;
  readonly turn: Turn;
  readonly width: number;
  readonly label: string;
  readonly describedBy: string;
}

interface Patch {
  readonly key: string;
  readonly corners: readonly Point[];
  readonly level: Level;
}

export function TurnedBox({ enclosure, readings, climate, turn, width, label, describedBy }: TurnedBoxProps) {
  const { lengthM, depthM, heightM } = enclosure.box;
  const size = useMemo(() => ({ x: lengthM, y: depthM, z: heightM }), [lengthM, depthM, heightM]);
  const see = seenFrom(turn, size);
  // Fits whatever way round it is turned, so that walking round never changes its size.
  const flatM = Math.hypot(lengthM, depthM);
  const above = (turn.aboveDeg * Math.PI) / 180;
  const tallM = heightM * Math.cos(above) + flatM * Math.sin(above);
  const height = Math.min(width * 0.6, 400);
  const scale = Math.min((width - 24) / flatM, (height - 24) / tallM);
  const onSheet = (seen: Seen): string =>
    `${(width / 2 + seen.x * scale).toFixed(1)},${(height / 2 + seen.y * scale).toFixed(1)}`;
  const path = (corners: readonly Point[]): string => corners.map((one) => onSheet(see(one))).join(' ');
  const far = farSides(turn, size);
  const sides = sidesOf(size);
  const patches = useMemo(
    () => (readings && climate ? far.flatMap((side) => patchesOf(side, size, readings, climate)) : []),
    [readings, climate, size, far],
  );
  const things = useMemo(() => thingsInside(enclosure), [enclosure]);
  const depthOf = (corners: readonly Point[]): number =>
    corners.reduce((sum, one) => sum + see(one).depth, 0) / corners.length;
  const back = [...things].sort((a, b) => depthOf(b.points) - depthOf(a.points));
  return (
    <svg
      className="drawing turned-box"
      viewBox={`0 0 ${width} ${height}`}
      width="100%"
      role="img"
      aria-label={label}
      aria-describedby={describedBy}
    >
      {far.map((side) => (
        <polygon key={side} className="inside" points={path(sides[side])} />
      ))}
      {patches.map(({ key, corners, level }) => (
        <g key={key}>
          <polygon className={levelClass(level)} points={path(corners)} />
          <polygon fill={level < 0 ? 'url(#hatch-cold)' : 'url(#dots-warm)'} points={path(corners)} />
        </g>
      ))}
      {far.map((side) => (
        <polygon key={side} className="turned-edge" points={path(sides[side])} />
      ))}
      {back.map((thing) => (
        <Thing key={thing.key} thing={thing} path={path} />
      ))}
      {(Object.keys(sides) as Side[])
        .filter((side) => !far.includes(side))
        .map((side) => (
          <polygon
            key={side}
            className={side === 'front' ? 'turned-near turned-front' : 'turned-near'}
            points={path(sides[side])}
          />
        ))}
    </svg>
  );
}

function Thing({ thing, path }: { readonly thing: Line; readonly path: (corners: readonly Point[]) => string }) {
  const points = path(thing.points);
  return thing.closed ? (
    <polygon className={thing.className} points={points} />
  ) : (
    <polyline className={thing.className} points={points} />
  );
}

/** The coloured patches of one side: columns by layers of air on the walls, columns on the floor; none on the lid. */
function patchesOf(side: Side, size: Point, readings: Readings, climate: WantedClimate): Patch[] {
  const edges = columnEdges(readings.xM, size.x);
  const levelAt = (tempC: number, column: number): Level => {
    const frac = fromWarmFrac(readings.xM[column] ?? 0, size.x, readings.warmEnd);
    return levelOf(kelvinOutside(tempC, wantedAt(frac, readings.isDay, climate)));
  };
  const found: Patch[] = [];
  const add = (key: string, corners: readonly Point[], level: Level): void => {
    if (level !== 0) found.push({ key: `${side}-${key}`, corners, level });
  };
  const column = (at: number): readonly [number, number] => [edges[at] ?? 0, edges[at + 1] ?? size.x];
  if (side === 'bottom') {
    readings.floorC.forEach((tempC, at) => {
      const [from, to] = column(at);
      add(`${at}`, rect(from, to, 0, size.y, 'z', 0), levelAt(tempC, at));
    });
    return found;
  }
  if (side === 'top' || readings.kind !== 'settled') return found;
  const layerM = size.z / Math.max(1, readings.airC.length);
  readings.airC.forEach((row, layer) => {
    const [low, high] = [layer * layerM, (layer + 1) * layerM];
    if (side === 'front' || side === 'back')
      row.forEach((tempC, at) => {
        const [from, to] = column(at);
        add(`${layer}-${at}`, rect(from, to, low, high, 'y', side === 'back' ? size.y : 0), levelAt(tempC, at));
      });
    else {
      const at = side === 'left' ? 0 : row.length - 1;
      add(
        `${layer}`,
        rect(0, size.y, low, high, 'x', side === 'left' ? 0 : size.x),
        levelAt(row[at] ?? Number.NaN, at),
      );
    }
  });
  return found;
}

/** A rectangle square to one direction, `at` along it. */
function rect(a0: number, a1: number, b0: number, b1: number, square: 'x' | 'y' | 'z', at: number): readonly Point[] {
  const corner = (a: number, b: number): Point => {
    if (square === 'x') return { x: at, y: a, z: b };
    return square === 'y' ? { x: a, y: at, z: b } : { x: a, y: b, z: at };
  };
  return [corner(a0, b0), corner(a1, b0), corner(a1, b1), corner(a0, b1)];
}
