// The way between the sheets of the shop: a thin row of words, each a target for a wet thumb.
import './sheet-links.css';
import { useMe } from '../account/here.ts';
import type { MessageKey } from '../messages/en.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go, usePath } from '../shell/router.ts';

interface SheetLink {
  readonly key: MessageKey;
  readonly path: string;
  /** Start of the addresses that belong to it, where that is another. */
  readonly under?: string;
}

const sheets: readonly SheetLink[] = [
  { key: 'nav.today', path: '/today' },
  { key: 'nav.enquiry', path: '/' },
  { key: 'nav.placements', path: '/placements', under: '/placement' },
  { key: 'nav.animals', path: '/animals' },
  { key: 'nav.round', path: '/round' },
  { key: 'nav.species', path: '/species' },
  { key: 'nav.shelf', path: '/shelf' },
  { key: 'nav.register', path: '/register' },
  { key: 'nav.call', path: '/call' },
];

/** An inspector only looks, at the register and at what animals need; and has an account. */
export const inspectorSees = (path: string): boolean => /^\/(?:register|species|space|account)(?:\/|$)/.test(path);

export function SheetLinks() {
  const { t } = useSheet();
  const path = usePath();
  const inspects = useMe()?.role === 'inspector';
  const here = sheets.findLast((sheet) =>
    sheet.path === '/' ? path === '/' || path.startsWith('/plan') : path.startsWith(sheet.under ?? sheet.path),
  );
  return (
    <nav className="sheet-links" aria-label={t('nav.label')}>
      {sheets
        .filter((sheet) => !inspects || inspectorSees(sheet.path))
        .map((sheet) => (
          <a
            key={sheet.key}
            href={sheet.path}
            aria-current={sheet === here ? 'page' : undefined}
            onClick={(event) => {
              event.preventDefault();
              go(sheet.path);
            }}
          >
            {t(sheet.key)}
          </a>
        ))}
    </nav>
  );
}
