// The parts of the front view that stand still: panels in section, mesh, hides, bowl, perch, base.
import type { Enclosure, Hide } from '../../physics/enclosure.ts';
import type { SectionFrame } from './section-frame.ts';

interface PartProps {
  readonly enclosure: Enclosure;
  readonly frame: SectionFrame;
}

export function Panels({ enclosure, frame }: PartProps) {
  const { left, right, top, floor, wall } = frame;
  const { panels } = enclosure.box;
  const outer = { left: left - wall.left, right: right + wall.right, top: top - wall.top, bottom: floor + wall.bottom };
  const meshFrac = panels.top.meshShareFrac ?? 0;
  const meshWidth = (right - left) * meshFrac;
  const meshFrom = (left + right - meshWidth) / 2;
  const coveredWidth = meshWidth * (panels.top.meshCoveredFrac ?? 0);
  return (
    <g>
      <rect className="inside" x={left} y={top} width={right - left} height={floor - top} />
      <rect className="cut" x={outer.left} y={outer.top} width={wall.left} height={outer.bottom - outer.top} />
      <rect className="cut" x={right} y={outer.top} width={wall.right} height={outer.bottom - outer.top} />
      <rect className="cut" x={left} y={floor} width={right - left} height={wall.bottom} />
      <rect className="cut" x={left} y={outer.top} width={right - left} height={wall.top} />
      {meshFrac > 0 && (
        <g>
          <rect className="mesh-gap" x={meshFrom} y={outer.top - 1} width={meshWidth} height={wall.top + 2} />
          <line
            className="mesh"
            x1={meshFrom}
            x2={meshFrom + meshWidth}
            y1={top - wall.top / 2}
            y2={top - wall.top / 2}
          />
          {coveredWidth > 0 && (
            <rect
              className="cut"
              x={
                enclosure.heaters[0] && enclosure.heaters[0].xM < enclosure.box.lengthM / 2
                  ? meshFrom + meshWidth - coveredWidth
                  : meshFrom
              }
              y={outer.top - 3}
              width={coveredWidth}
              height={4}
            />
          )}
        </g>
      )}
    </g>
  );
}

export function hidePath(hide: Hide, frame: SectionFrame, floorM: number): string {
  const x = frame.x(hide.xM) - (hide.lengthM * frame.scale) / 2;
  const width = hide.lengthM * frame.scale;
  const y = frame.z(floorM);
  const height = hide.heightM * frame.scale;
  return `M${x} ${y}v${-height * 0.45}q0 ${-height * 0.55} ${width * 0.3} ${-height * 0.55}h${width * 0.4}q${width * 0.3} 0 ${width * 0.3} ${height * 0.55}v${height * 0.45}z`;
}

/** Half of what a drawn perch spans [m], and half its thickness [units]. */
export const perchReachM = 0.24;
export const perchThickness = 3;

export function Fittings({ enclosure, frame }: PartProps) {
  const floorM = enclosure.substrate?.depthM ?? 0;
  const y = frame.z(floorM);
  const { bowl, perch } = enclosure;
  return (
    <g>
      {enclosure.hides.map((hide) => (
        <g key={`${hide.xM}-${hide.yM}`}>
          <path className="hide" d={hidePath(hide, frame, floorM)} />
          <path className="hide-door" d={`M${frame.x(hide.xM) - 9} ${y}v-6a9 8 0 0 1 18 0v6z`} />
        </g>
      ))}
      {bowl && (
        <g>
          <path
            className="bowl"
            d={`M${frame.x(bowl.xM - bowl.diameterM / 2)} ${y - 14}l4 14h${bowl.diameterM * frame.scale - 8}l4 -14z`}
          />
          <line
            className="water"
            x1={frame.x(bowl.xM - bowl.diameterM / 2) + 2}
            x2={frame.x(bowl.xM + bowl.diameterM / 2) - 2}
            y1={y - 10}
            y2={y - 10}
          />
        </g>
      )}
      {perch && (
        <path
          className="perch"
          d={`M${frame.x(Math.max(0.02, perch.xM - perchReachM + 0.02))} ${frame.z(perch.zM) + 8}Q${frame.x(perch.xM)} ${frame.z(perch.zM) - 6} ${frame.x(Math.min(enclosure.box.lengthM - 0.02, perch.xM + perchReachM))} ${frame.z(perch.zM) + 6}`}
        />
      )}
    </g>
  );
}

export function Base({ enclosure, frame }: PartProps) {
  const { kind } = enclosure.box.base;
  const y = frame.floor + frame.wall.bottom;
  const from = frame.left - frame.wall.left;
  const to = frame.right + frame.wall.right;
  if (kind === 'legs') {
    return (
      <g className="base">
        <path d={`M${from + 8} ${y}v14M${to - 8} ${y}v14M${from - 14} ${y + 14}H${to + 14}`} />
      </g>
    );
  }
  if (kind === 'stacked') {
    return (
      <g className="base">
        <path d={`M${from} ${y + 2}v14M${to} ${y + 2}v14`} />
        <line x1={from} x2={to} y1={y + 2} y2={y + 2} />
      </g>
    );
  }
  return (
    <g className="base">
      <line x1={from - 14} x2={to + 14} y1={y + 1} y2={y + 1} />
      {kind === 'floor' && <line x1={from - 14} x2={to + 14} y1={y + 4} y2={y + 4} />}
    </g>
  );
}
