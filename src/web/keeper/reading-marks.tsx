// Numbers laid over the drawing where a keeper reads: 1 under the heater, 2 at the far end, 3 in the room beside it.

import type { Enclosure } from '../../physics/enclosure.ts';
import { mainHeater, warmEndOf } from '../../physics/grid.ts';
import { sectionFrame } from '../pictures/section-frame.ts';

interface ReadingMarksProps {
  readonly home: Enclosure;
  readonly width: number;
  readonly mostInsideHeight: number;
}

/** Height of a sensor at the cool end above the floor [m]; where the simulator reads air too. */
const airM = 0.05;
const radius = 12;

export function ReadingMarks({ home, width, mostInsideHeight }: ReadingMarksProps) {
  const frame = sectionFrame(home, width, mostInsideHeight);
  const { lengthM } = home.box;
  const main = mainHeater(home);
  const left = warmEndOf(home) === 'left';
  const floorM = home.substrate?.depthM ?? 0;
  const warmM = main < 0 ? lengthM / 8 : home.heaters[main]!.xM;
  const marks = [
    { n: 1, x: frame.x(warmM), y: frame.z(floorM) - 2 },
    { n: 2, x: frame.x(left ? lengthM * (15 / 16) : lengthM / 16), y: frame.z(floorM + airM) - radius },
    {
      n: 3,
      x: left ? frame.right + frame.wall.right + radius + 3 : frame.left - frame.wall.left - radius - 3,
      y: (frame.top + frame.floor) / 2,
    },
  ];
  return (
    <svg className="keeper-marks" viewBox={`0 0 ${width} ${frame.tagsTop + 4}`} width="100%" aria-hidden="true">
      {marks.map((m) => (
        <g key={m.n}>
          <circle className="keeper-mark" cx={m.x} cy={m.y} r={radius} />
          <text className="keeper-mark-number" x={m.x} y={m.y + 5}>
            {m.n}
          </text>
        </g>
      ))}
    </svg>
  );
}
