// The floor each standard asks for, all to one scale, with the box laid over it from the same corner.
import type { Inside } from '../../husbandry/space.ts';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useWidth } from '../settings/use-width.ts';
import type { SpaceLine } from './compare-space.ts';
import type { Reference } from './reference-api.ts';
import { SourceMark } from './source-mark.tsx';
import { useSpaceWords } from './space-words.ts';

interface SpaceLinesProps {
  readonly lines: readonly SpaceLine[];
  readonly box: Inside;
  readonly all: Reference;
}

export function SpaceLines({ lines, box, all }: SpaceLinesProps) {
  const { t } = useSheet();
  const words = useSpaceWords();
  const [ref, width] = useWidth<HTMLUListElement>(900);
  const drawingPx = width < 640 ? width : Math.min(460, width * 0.45);
  const boxLong = Math.max(box.lengthM, box.depthM);
  const boxDeep = Math.min(box.lengthM, box.depthM);
  const widestM = Math.max(boxLong, ...lines.map(({ floor }) => floor.lengthM), 0.1);
  const pxPerM = (drawingPx - 4) / widestM;
  return (
    <ul className="space-lines" ref={ref}>
      {lines.map((line) => {
        const { standard, floor, short } = line;
        const heightPx = Math.max(floor.depthM, boxDeep) * pxPerM + 4;
        return (
          <li key={standard.id}>
            <svg
              width={drawingPx}
              height={heightPx}
              viewBox={`-2 -2 ${drawingPx} ${heightPx}`}
              role="img"
              aria-label={`${standard.name}: ${words.asks(line)}; ${words.verdict(line)}`}
            >
              <rect
                width={floor.lengthM * pxPerM}
                height={floor.depthM * pxPerM}
                className={floor.free ? 'space-asked space-free' : 'space-asked'}
              />
              <rect width={boxLong * pxPerM} height={boxDeep * pxPerM} className="space-box" />
            </svg>
            <div>
              <h2>{standard.name}</h2>
              <p className={short.length > 0 ? 'space-verdict space-fails' : 'space-verdict'}>
                <VerdictMark verdict={short.length > 0 ? 'fails' : 'holds'} /> {words.verdict(line)}
              </p>
              <p>{t('space.asks', { what: words.asks(line) })}</p>
              {floor.free && <p className="ref-from">{t('space.free')}</p>}
              <p className="ref-from">
                {`${standard.place}, ${standard.status}. `}
                <SourceMark of={standard} sources={all.sources} />
              </p>
            </div>
          </li>
        );
      })}
    </ul>
  );
}
