// Kits side by side as bars of what they cost over the years: to buy, replacements, power, each with its own pattern.

import type { KitChoice } from '../../planning/search/search-answer.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { kitNameText } from './kit-name.ts';
import { moneyFor } from './money.ts';

const row = 46;
const bar = 20;

interface KitBarsProps {
  readonly choices: readonly KitChoice[];
  readonly currency: string;
  readonly width: number;
  readonly chosen: string | null;
  /** What the picture shows, for those who do not see it. */
  readonly label: string;
}

export function KitBars({ choices, currency, width, chosen, label }: KitBarsProps) {
  const { t, measure, fromFacts } = useSheet();
  const money = moneyFor(measure, currency);
  const most = Math.max(1, ...choices.map((c) => c.cost.total));
  // Room for the sum beside the longest bar; a sheet that is just being laid out can be narrower than that.
  const scale = Math.max(40, width - 90) / most;
  return (
    <>
      <svg
        viewBox={`0 0 ${width} ${choices.length * row}`}
        width={width}
        height={choices.length * row}
        role="img"
        aria-label={label}
        className="kit-bars"
      >
        <defs>
          <pattern id="kit-lamps" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0V6" className="hatch-line" />
          </pattern>
        </defs>
        {choices.map((c, i) => {
          const y = i * row;
          const parts = [c.cost.kit, c.cost.lamps, c.cost.energy].map((v) => v * scale);
          const [kit = 0, lamps = 0, energy = 0] = parts;
          return (
            <g key={c.id} className={c.id === chosen ? 'kit-row kit-chosen' : 'kit-row'}>
              <text x={0} y={y + 13} className="kit-name">
                {`${i + 1}  ${shortName(kitNameText(c.heart, t, fromFacts), width)}`}
              </text>
              <rect x={0} y={y + 18} width={kit} height={bar} className="kit-part kit-buy" />
              <rect
                x={kit}
                y={y + 18}
                width={lamps}
                height={bar}
                className="kit-part kit-lamps"
                fill="url(#kit-lamps)"
              />
              <rect x={kit + lamps} y={y + 18} width={energy} height={bar} className="kit-part kit-energy" />
              <text x={kit + lamps + energy + 6} y={y + 33} className="kit-sum">
                {money(c.cost.total)}
              </text>
            </g>
          );
        })}
      </svg>
      <ul className="chart-key">
        {(['kit', 'lamps', 'energy'] as const).map((part) => (
          <li key={part}>
            <svg viewBox="0 0 34 12" width={34} height={12} aria-hidden="true">
              <rect
                x={1}
                y={1}
                width={32}
                height={10}
                className={`kit-part kit-${part === 'kit' ? 'buy' : part}`}
                fill={part === 'lamps' ? 'url(#kit-lamps)' : undefined}
              />
            </svg>
            {t(`kits.${part}`)}
          </li>
        ))}
      </ul>
    </>
  );
}

/** About seven pixels a letter. */
const shortName = (name: string, width: number): string => {
  const letters = Math.floor(width / 7.2) - 4;
  return name.length > letters ? `${name.slice(0, letters - 1)}…` : name;
};
