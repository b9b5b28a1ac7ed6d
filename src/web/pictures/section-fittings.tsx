// The parts of the front view that stand still: panels in section, mesh, vents with their flow, substrate, hides, bowl, base.
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

/** Vents of the sides and the top as openings with flow arrows; those of front and back as grilles in view. */
export function Vents({ enclosure, frame }: PartProps) {
  const { box } = enclosure;
  const highest = Math.max(...box.vents.map((vent) => vent.heightM), 0);
  const lowest = Math.min(...box.vents.map((vent) => vent.heightM), box.heightM);
  const middle = highest - lowest < 0.02 ? box.heightM / 2 : (highest + lowest) / 2;
  return (
    <g>
      {box.vents.map((vent) => {
        const key = `${vent.panel}-${vent.alongM}-${vent.heightM}`;
        const out = vent.panel === 'top' || vent.heightM > middle;
        const side = Math.sqrt(vent.areaM2) * frame.scale;
        if (vent.panel === 'left' || vent.panel === 'right') {
          const y = frame.z(vent.heightM);
          const edge = vent.panel === 'left' ? frame.left - frame.wall.left : frame.right;
          const wall = vent.panel === 'left' ? frame.wall.left : frame.wall.right;
          const size = Math.max(8, Math.min(side, 26));
          const away = vent.panel === 'left' ? -1 : 1;
          const near = vent.panel === 'left' ? edge - 3 : edge + wall + 3;
          const far = near + away * 20;
          return (
            <g key={key}>
              <rect className="vent-gap" x={edge - 1} y={y - size / 2} width={wall + 2} height={size} />
              <line
                className="vent-grille"
                x1={edge + wall / 2}
                x2={edge + wall / 2}
                y1={y - size / 2}
                y2={y + size / 2}
              />
              <line
                className={out ? 'flow flow-out' : 'flow flow-in'}
                x1={out ? near : far}
                x2={out ? far : near}
                y1={y}
                y2={y}
                markerEnd={out ? 'url(#arrow-warm)' : 'url(#arrow-cool)'}
              />
            </g>
          );
        }
        const x = frame.x(vent.alongM);
        if (vent.panel === 'top') {
          const size = Math.max(10, Math.min(side * 1.5, 60));
          return (
            <g key={key}>
              <rect
                className="vent-gap"
                x={x - size / 2}
                y={frame.top - frame.wall.top - 1}
                width={size}
                height={frame.wall.top + 2}
              />
              <line
                className="vent-grille"
                x1={x - size / 2}
                x2={x + size / 2}
                y1={frame.top - frame.wall.top / 2}
                y2={frame.top - frame.wall.top / 2}
              />
              <line
                className="flow flow-out"
                x1={x}
                x2={x}
                y1={frame.top - frame.wall.top - 3}
                y2={frame.top - frame.wall.top - 20}
                markerEnd="url(#arrow-warm)"
              />
            </g>
          );
        }
        const width = Math.max(14, Math.min(side * 2.2, 90));
        const y = frame.z(vent.heightM);
        const side2 = vent.alongM < box.lengthM / 2 ? -1 : 1;
        const tip = { x: x + side2 * (width / 2 + 4), y: y - (out ? 5 : -5) };
        const tail = { x: x + side2 * (width / 2 + 22), y: y - (out ? 16 : -8) };
        return (
          <g key={key}>
            <rect className="vent-view" x={x - width / 2} y={y - 5} width={width} height={10} rx={2} />
            <path
              className="vent-slots"
              d={`M${x - width / 2 + 4} ${y - 2}h${width - 8}M${x - width / 2 + 4} ${y + 2}h${width - 8}`}
            />
            <line
              className={out ? 'flow flow-out' : 'flow flow-in'}
              x1={out ? tip.x : tail.x}
              y1={out ? tip.y : tail.y}
              x2={out ? tail.x : tip.x}
              y2={out ? tail.y : tip.y}
              markerEnd={out ? 'url(#arrow-warm)' : 'url(#arrow-cool)'}
            />
          </g>
        );
      })}
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
          d={`M${frame.x(Math.max(0.02, perch.xM - 0.22))} ${frame.z(perch.zM) + 8}Q${frame.x(perch.xM)} ${frame.z(perch.zM) - 6} ${frame.x(Math.min(enclosure.box.lengthM - 0.02, perch.xM + 0.24))} ${frame.z(perch.zM) + 6}`}
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
