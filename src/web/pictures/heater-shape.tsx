// Draws a heater of each kind in the front view, with what it sends out: a beam, a plume, rays or warmth from below.
import type { Heater } from '../../physics/enclosure.ts';
import type { SectionFrame } from './section-frame.ts';

interface HeaterShapeProps {
  readonly heater: Heater;
  readonly frame: SectionFrame;
  readonly floorM: number;
  readonly on: boolean;
}

/** Height at which a heater is drawn: mats and panels have none of their own. */
export function heaterHeightM(heater: Heater, heightM: number, floorM: number): number {
  if (heater.kind === 'heat-mat') return heater.mount === 'under-floor' ? 0 : floorM;
  if (heater.mount === 'above-mesh') return heightM + Math.max(0.06, heater.zM - heightM);
  if (heater.kind === 'radiant-panel') return heightM - 0.015;
  return heater.zM;
}

/** Full angle drawn when a lamp's own is not known [degrees] (our choice, for the picture only). */
const usualBeamDeg = 60;

function Beam({ heater, frame, floorM, topM }: HeaterShapeProps & { readonly topM: number }) {
  const half = Math.tan(((heater.beamDeg ?? usualBeamDeg) / 2) * (Math.PI / 180)) * (topM - floorM);
  const clip = (xM: number) => Math.min(frame.right, Math.max(frame.left, frame.x(xM)));
  const y = frame.z(floorM);
  const top = frame.z(topM) + 8;
  return (
    <polygon
      className="beam"
      points={`${frame.x(heater.xM) - 5},${top} ${frame.x(heater.xM) + 5},${top} ${clip(heater.xM + half)},${y} ${clip(heater.xM - half)},${y}`}
    />
  );
}

function Plume({ x, y, top, frame }: { x: number; y: number; top: number; frame: SectionFrame }) {
  const reach = Math.min(70, (frame.right - frame.left) * 0.16);
  const line = (side: 1 | -1) => {
    const endX = Math.min(frame.right - 6, Math.max(frame.left + 6, x + side * reach));
    return `M${x + side * 7} ${y - 12}C${x + side * 5} ${(y + top) / 2},${x + side * 8} ${top + 9},${endX} ${top + 9}`;
  };
  return (
    <g className="plume">
      <path d={line(1)} markerEnd="url(#arrow-warm)" />
      <path d={line(-1)} markerEnd="url(#arrow-warm)" />
    </g>
  );
}

function Rays({ x, y, half, down }: { x: number; y: number; half: number; down: boolean }) {
  const count = Math.max(3, Math.round((half * 2) / 26));
  const length = down ? 22 : -18;
  return (
    <g className="plume">
      {Array.from({ length: count }, (_, i) => {
        const at = x - half + ((i + 0.5) / count) * half * 2;
        return <line key={at} x1={at} y1={y} x2={at} y2={y + length} markerEnd="url(#arrow-warm)" />;
      })}
    </g>
  );
}

function Body({ heater, x, y, half }: { heater: Heater; x: number; y: number; half: number }) {
  switch (heater.kind) {
    case 'heat-mat': {
      const steps = Math.max(4, Math.round(half / 5));
      const points = Array.from(
        { length: steps + 1 },
        (_, i) => `${x - half + (i / steps) * half * 2},${y + (i % 2 === 0 ? 1 : 6)}`,
      );
      return <polyline className="heater-coil" points={points.join(' ')} />;
    }
    case 'radiant-panel':
      return <rect className="heater-body" x={x - half} y={y - 4} width={half * 2} height={9} rx={2} />;
    case 'infrared-projector':
      return <path className="heater-body" d={`M${x - 4} ${y - 14}h8v6l8 14h-24l8 -14z`} />;
    case 'ceramic-emitter':
      return (
        <g>
          <rect className="heater-cap" x={x - 5} y={y - 16} width={10} height={8} />
          <path className="heater-body" d={`M${x - 6} ${y - 8}h12l6 10a12 7 0 0 1 -24 0z`} />
          <path className="heater-rib" d={`M${x - 8} ${y - 3}h16M${x - 11} ${y + 2}h22`} />
        </g>
      );
    default:
      return (
        <g>
          <rect className="heater-cap" x={x - 5} y={y - 17} width={10} height={8} />
          <path className="heater-lamp" d={`M${x - 5} ${y - 9}h10l6 12a11 9 0 0 1 -22 0z`} />
        </g>
      );
  }
}

export function HeaterShape(props: HeaterShapeProps & { readonly heightM: number }) {
  const { heater, frame, floorM, heightM, on } = props;
  const zM = heaterHeightM(heater, heightM, floorM);
  const x = frame.x(heater.xM);
  const y =
    heater.kind === 'heat-mat' && heater.mount === 'under-floor' ? frame.floor + frame.wall.bottom : frame.z(zM);
  const half = ((heater.lengthM ?? 0.08) * frame.scale) / 2;
  const flat = heater.kind === 'heat-mat' || heater.kind === 'radiant-panel';
  const beams =
    heater.kind === 'basking-lamp' || heater.kind === 'halogen-lamp' || heater.kind === 'infrared-projector';
  return (
    <g className={on ? 'heater' : 'heater heater-off'}>
      {on && beams && <Beam {...props} topM={zM} />}
      {on && heater.kind === 'ceramic-emitter' && heater.mount !== 'above-mesh' && (
        <Plume x={x} y={y} top={frame.top} frame={frame} />
      )}
      {on && heater.kind === 'radiant-panel' && <Rays x={x} y={y + 8} half={half} down />}
      {on && heater.kind === 'heat-mat' && <Rays x={x} y={frame.z(floorM) - 3} half={half} down={false} />}
      {!flat && heater.mount !== 'above-mesh' && <line className="cable" x1={x} y1={frame.top} x2={x} y2={y - 15} />}
      {heater.mount === 'above-mesh' && (
        <path className="dome" d={`M${x - 22} ${frame.top - frame.wall.top - 2}q22 -52 44 0`} />
      )}
      <Body heater={heater} x={x} y={y} half={half} />
      {heater.guarded && !flat && heater.mount !== 'above-mesh' && (
        <rect className="guard" x={x - 20} y={y - 20} width={40} height={38} rx={5} />
      )}
      {heater.guarded && heater.kind === 'radiant-panel' && (
        <rect className="guard" x={x - half - 5} y={y - 8} width={half * 2 + 10} height={20} rx={4} />
      )}
    </g>
  );
}
