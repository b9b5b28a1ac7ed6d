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

interface SnakePartsProps {
  readonly part: string;
  /** Step of the look-over, for parts that several steps share. */
  readonly focus: string;
  readonly label: string;
}

export function SnakeParts({ part, focus, label }: SnakePartsProps) {
  const span = spans[part];
  if (part === 'head')
    return (
      <svg viewBox="0 0 360 130" role="img" aria-label={label} className="snake-parts">
        <LargeHead focus={focus} />
      </svg>
    );
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
      <Head strong={false} />
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
    </g>
  );
}

/** The head from the side, large, with what this step looks at in strong ink. */
function LargeHead({ focus }: { readonly focus: string }): ReactNode {
  const ink = (id: string): string => (id === focus ? 'snake-fine snake-fine-strong' : 'snake-fine');
  return (
    <g>
      <path
        d="M300 22C250 14 196 12 150 20C112 26 78 44 62 66C56 76 60 86 72 88L96 92C150 104 230 108 300 106z"
        className="snake-fine"
      />
      <path d="M96 92C128 108 190 118 300 106C250 98 160 92 96 92z" className={ink('throat')} />
      <path d="M62 78C100 84 160 82 214 70" className={ink('mouth')} />
      <path d="M62 80L30 88L14 82M30 88L16 98" className={ink('tongue')} />
      <path d="M84 60a4 3 0 1 0 .1 0z" className={ink('breath')} />
      {focus === 'breath' && (
        <path d="M66 52C54 48 46 40 44 30M72 46C64 42 58 34 58 26" className="snake-fine-strong snake-line" />
      )}
      <circle cx="150" cy="50" r="14" className={ink('eyes')} />
      <path d="M150 40v20" className={focus === 'eyes' ? 'snake-fine-strong snake-line' : 'snake-fine snake-line'} />
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
