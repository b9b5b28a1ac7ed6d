// Drawings of our own: the whole snake with the part of this step in strong ink, or the part alone, large.
import type { ReactNode } from 'react';

const body =
  'M26 62C40 38 66 34 92 46C124 60 138 96 172 98C208 100 214 60 246 56C274 53 286 76 306 88C318 95 330 94 342 86';

/** Share of the body line that each part lies on, nose = 0. */
const spans: Readonly<Record<string, readonly [from: number, to: number]>> = {
  back: [0.1, 0.85],
  palm: [0.08, 0.9],
  vent: [0.82, 0.9],
  tail: [0.9, 1],
  droppings: [0.82, 0.9],
};

export function SnakeParts({ part, label }: { readonly part: string; readonly label: string }) {
  const span = spans[part];
  return (
    <svg viewBox="0 0 360 130" role="img" aria-label={label} className="snake-parts">
      <path d={body} className={part === 'whole' ? 'snake-body snake-strong' : 'snake-body'} pathLength={1} />
      {span && (
        <path
          d={body}
          className="snake-body snake-strong"
          pathLength={1}
          strokeDasharray={`${span[1] - span[0]} 2`}
          strokeDashoffset={-span[0]}
        />
      )}
      <Head strong={part === 'head'} />
      {part === 'cross-section' && <path d="M176 78v42" className="snake-cut" />}
      {part === 'palm' && <Palm />}
      {part === 'droppings' && (
        <path d="M300 112c6-8 16-8 22 0-2 6-20 6-22 0zM326 114a5 3.4 0 1 0 .1 0z" className="snake-fine" />
      )}
    </svg>
  );
}

function Head({ strong }: { readonly strong: boolean }): ReactNode {
  const ink = strong ? 'snake-fine snake-fine-strong' : 'snake-fine';
  return (
    <g>
      <path d="M34 52C24 52 12 60 9 68C8 72 11 75 16 75C27 75 36 70 39 64z" className={ink} />
      <path d="M10 71C16 70 26 69 34 66" className={ink} />
      <circle cx="22" cy="62" r="3" className={ink} />
      <circle cx="12.5" cy="67" r="1" className={ink} />
      <path d="M9 71L2 75M5.5 73L1 72" className={ink} />
    </g>
  );
}

function Palm(): ReactNode {
  return (
    <g className="snake-fine">
      <path d="M204 120c-8-12-6-26 4-30l22-2c8 0 12 6 12 14v18z" />
      <circle cx="216" cy="104" r="1.4" className="snake-speck" />
      <circle cx="225" cy="111" r="1.4" className="snake-speck" />
      <circle cx="231" cy="101" r="1.4" className="snake-speck" />
    </g>
  );
}
