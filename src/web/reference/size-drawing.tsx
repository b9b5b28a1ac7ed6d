// Hatchling, young and adult as lines of their true length on the floor asked for the longest usual adult, to scale.
import type { Species } from '../../husbandry/fact.ts';
import { askedBy } from '../../husbandry/space.ts';
import { rangeOf } from '../../husbandry/species-facts.ts';
import { bodyPath } from '../animal/growth-drawing.tsx';
import { factText } from '../controls/parts-text.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useWidth } from '../settings/use-width.ts';
import { floorOf } from './compare-space.ts';
import { type Reference, standingAt } from './reference-api.ts';

const stages = ['hatchling', 'young', 'adult'] as const;
/** Drawn where the shop has named none. */
const usualStandard = 'home-third';

export function SizeDrawing({ all, species }: { readonly all: Reference; readonly species: Species }) {
  const { t, measure } = useSheet();
  const [ref, width] = useWidth<HTMLDivElement>(700);
  const policy = standingAt(all, 'policy.standardId')?.value.value ?? usualStandard;
  const standard =
    all.standards.find(({ id }) => id === policy) ?? all.standards.find(({ id }) => id === usualStandard);
  const adult = rangeOf(species, 'adult', 'totalLengthCm');
  if (!standard || !adult) return null;
  const floor = floorOf(askedBy(standard.rule, adult.high / 100));
  const [longCm, deepCm] = [floor.lengthM * 100, floor.depthM * 100];
  const unit = longCm / (width - 4);
  const cm = (x: number): string => measure.text('length', x);
  const title = t('ref.sizes', { floor: `${cm(floor.lengthM)} × ${cm(floor.depthM)}` });
  const lines = stages.flatMap((stage) => {
    const range = rangeOf(species, stage, 'totalLengthCm');
    return range ? [{ stage, lengthCm: range.high, text: factText('totalLengthCm', range, measure, t) }] : [];
  });
  return (
    <figure className="ref-figure">
      <figcaption>
        <h2>{title}</h2>
        <p>{t('ref.sizesLead', { standard: standard.name })}</p>
      </figcaption>
      <div ref={ref}>
        <svg
          viewBox={`${-2 * unit} ${-2 * unit} ${longCm + 4 * unit} ${deepCm + 4 * unit}`}
          className="ref-drawing"
          role="img"
          aria-label={`${title}: ${lines.map(({ stage, text }) => `${t(`ref.stage.${stage}`)} ${text}`).join('; ')}`}
        >
          <rect width={longCm} height={deepCm} className="ref-floor" strokeWidth={1.5 * unit} />
          {lines.map(({ stage, lengthCm, text }, i) => {
            const y = deepCm * (0.22 + 0.3 * i);
            return (
              <g key={stage}>
                <path d={bodyPath(lengthCm, longCm, y)} className="ref-body" strokeWidth={(2 + 1.5 * i) * unit} />
                <text
                  x={longCm * 0.03}
                  y={y - deepCm * (0.09 + 0.025 * i)}
                  fontSize={14 * unit}
                  className="ref-body-word"
                >
                  {t(`ref.stage.${stage}`)} {text}
                </text>
              </g>
            );
          })}
        </svg>
      </div>
    </figure>
  );
}
