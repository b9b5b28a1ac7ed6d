// The vents of the front view: those of sides and top as openings, those of front and back as grilles, all with their flow.
import type { Enclosure, Vent } from '../../physics/enclosure.ts';
import type { SectionFrame } from './section-frame.ts';
import { type Flow, ventFlows } from './vent-flow.ts';

interface VentsProps {
  readonly enclosure: Enclosure;
  readonly frame: SectionFrame;
}

interface FlowArrowProps {
  readonly flow: Flow;
  /** At the opening, and away from the box. */
  readonly near: { readonly x: number; readonly y: number };
  readonly far: { readonly x: number; readonly y: number };
}

function FlowArrow({ flow, near, far }: FlowArrowProps) {
  const [from, to] = flow === 'in' ? [far, near] : [near, far];
  const line = { x1: from.x, y1: from.y, x2: to.x, y2: to.y };
  if (flow === 'both')
    return <line {...line} className="flow flow-both" markerStart="url(#arrow-ink)" markerEnd="url(#arrow-ink)" />;
  return (
    <line
      {...line}
      className={`flow flow-${flow}`}
      markerEnd={flow === 'out' ? 'url(#arrow-warm)' : 'url(#arrow-cool)'}
    />
  );
}

interface OneVentProps {
  readonly vent: Vent;
  readonly flow: Flow;
  readonly frame: SectionFrame;
  readonly lengthM: number;
}

function SideVent({ vent, flow, frame }: OneVentProps) {
  const y = frame.z(vent.heightM);
  const left = vent.panel === 'left';
  const edge = left ? frame.left - frame.wall.left : frame.right;
  const wall = left ? frame.wall.left : frame.wall.right;
  const size = Math.max(8, Math.min(Math.sqrt(vent.areaM2) * frame.scale, 26));
  const near = { x: left ? edge - 3 : edge + wall + 3, y };
  const reach = frame.narrow ? 14 : 20;
  return (
    <g>
      <rect className="vent-gap" x={edge - 1} y={y - size / 2} width={wall + 2} height={size} />
      <line className="vent-grille" x1={edge + wall / 2} x2={edge + wall / 2} y1={y - size / 2} y2={y + size / 2} />
      <FlowArrow flow={flow} near={near} far={{ x: near.x + (left ? -reach : reach), y }} />
    </g>
  );
}

function TopVent({ vent, flow, frame }: OneVentProps) {
  const x = frame.x(vent.alongM);
  const outer = frame.top - frame.wall.top;
  const size = Math.max(10, Math.min(Math.sqrt(vent.areaM2) * frame.scale * 1.5, 60));
  const middle = frame.top - frame.wall.top / 2;
  return (
    <g>
      <rect className="vent-gap" x={x - size / 2} y={outer - 1} width={size} height={frame.wall.top + 2} />
      <line className="vent-grille" x1={x - size / 2} x2={x + size / 2} y1={middle} y2={middle} />
      <FlowArrow flow={flow} near={{ x, y: outer - 3 }} far={{ x, y: outer - 20 }} />
    </g>
  );
}

function ViewedVent({ vent, flow, frame, lengthM }: OneVentProps) {
  const x = frame.x(vent.alongM);
  const y = frame.z(vent.heightM);
  const width = Math.max(14, Math.min(Math.sqrt(vent.areaM2) * frame.scale * 2.2, 90));
  const away = vent.alongM < lengthM / 2 ? -1 : 1;
  const slope = flow === 'out' ? -1 : 1;
  return (
    <g>
      <rect className="vent-view" x={x - width / 2} y={y - 5} width={width} height={10} rx={2} />
      <path
        className="vent-slots"
        d={`M${x - width / 2 + 4} ${y - 2}h${width - 8}M${x - width / 2 + 4} ${y + 2}h${width - 8}`}
      />
      <FlowArrow
        flow={flow}
        near={{ x: x + away * (width / 2 + 4), y: y + slope * 4 }}
        far={{ x: x + away * (width / 2 + 22), y: y + slope * (flow === 'out' ? 16 : 8) }}
      />
    </g>
  );
}

export function Vents({ enclosure, frame }: VentsProps) {
  const flows = ventFlows(enclosure.box);
  return enclosure.box.vents.map((vent, index) => {
    const props = { vent, flow: flows[index] ?? 'both', frame, lengthM: enclosure.box.lengthM };
    const key = `${vent.panel}-${vent.alongM}-${vent.heightM}`;
    if (vent.panel === 'left' || vent.panel === 'right') return <SideVent key={key} {...props} />;
    if (vent.panel === 'top') return <TopVent key={key} {...props} />;
    return <ViewedVent key={key} {...props} />;
  });
}
