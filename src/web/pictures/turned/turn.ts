// How does a point inside the box appear when the box is turned? Parallel lines stay parallel, so lengths along one
// direction can be compared. Leaves out what is drawn (turned-box.tsx).

/** x along the length, y from the front to the back, z up [m]. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface Seen {
  /** Right and down on the sheet [m]. */
  readonly x: number;
  readonly y: number;
  /** Away from the eye [m]. */
  readonly depth: number;
}

export interface Turn {
  /** 0 looks at the front; positive walks round to the right [deg]. */
  readonly aroundDeg: number;
  /** How far from above, 0 level to 90 straight down [deg]. */
  readonly aboveDeg: number;
}

const radians = (deg: number): number => (deg * Math.PI) / 180;

/** @param size of the box; it turns about its middle [m] */
export function seenFrom(turn: Turn, size: Point): (point: Point) => Seen {
  const [c, s] = [Math.cos(radians(turn.aroundDeg)), Math.sin(radians(turn.aroundDeg))];
  const [cosUp, sinUp] = [Math.cos(radians(turn.aboveDeg)), Math.sin(radians(turn.aboveDeg))];
  return ({ x, y, z }) => {
    const [dx, dy, dz] = [x - size.x / 2, y - size.y / 2, z - size.z / 2];
    const right = dx * c + dy * s;
    const away = dy * c - dx * s;
    return { x: right, y: -(dz * cosUp + away * sinUp), depth: away * cosUp - dz * sinUp };
  };
}

export type Side = 'front' | 'back' | 'left' | 'right' | 'top' | 'bottom';

/** The six sides, each with its corners in order round it. */
export function sidesOf({ x, y, z }: Point): Readonly<Record<Side, readonly Point[]>> {
  const at = (fx: number, fy: number, fz: number): Point => ({ x: fx * x, y: fy * y, z: fz * z });
  return {
    front: [at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)],
    back: [at(0, 1, 0), at(1, 1, 0), at(1, 1, 1), at(0, 1, 1)],
    left: [at(0, 0, 0), at(0, 1, 0), at(0, 1, 1), at(0, 0, 1)],
    right: [at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)],
    top: [at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)],
    bottom: [at(0, 0, 0), at(1, 0, 0), at(1, 1, 0), at(0, 1, 0)],
  };
}

/** Sides whose inside is seen: those farther from the eye than the middle of the box. */
export function farSides(turn: Turn, size: Point): readonly Side[] {
  const see = seenFrom(turn, size);
  const depth = (corners: readonly Point[]): number => corners.reduce((sum, one) => sum + see(one).depth, 0);
  return (Object.entries(sidesOf(size)) as [Side, readonly Point[]][])
    .filter(([, corners]) => depth(corners) > 1e-9)
    .map(([side]) => side);
}
