// What a standard asks and where a box falls short, in this person's words and units.
import type { SpaceSide } from '../../husbandry/space.ts';
import { areaText } from '../settings/area.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { askedSides, type SpaceLine } from './compare-space.ts';

export function useSpaceWords() {
  const { t, measure } = useSheet();
  const area = (m2: number): string => areaText(m2, measure);
  const amount = (side: SpaceSide, x: number): string => (side === 'floor' ? area(x) : measure.text('length', x));
  const asks = ({ asked }: SpaceLine): string =>
    askedSides(asked)
      .map(([side, x]) => t(`space.asks.${side}`, { x: amount(side, x) }))
      .join(', ');
  const verdict = ({ short, tolerated }: SpaceLine): string =>
    short.length > 0
      ? t('space.short', {
          what: short
            .map(({ side, asked, found }) =>
              t(`space.side.${side}`, { found: amount(side, found), asked: amount(side, asked) }),
            )
            .join(', '),
        })
      : t(tolerated.length > 0 ? 'space.tolerated' : 'space.meets');
  return { area, asks, verdict };
}
