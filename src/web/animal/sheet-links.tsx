// The way between the sheets of the shop: a thin row of words, each a target for a wet thumb.
import './sheet-links.css';
import { useSheet } from '../settings/settings-context.tsx';
import { go, usePath } from '../shell/router.ts';

const sheets = [
  { key: 'nav.enquiry', path: '/' },
  { key: 'nav.animals', path: '/animals' },
  { key: 'nav.round', path: '/round' },
  { key: 'nav.species', path: '/species' },
  { key: 'nav.register', path: '/register' },
  { key: 'nav.call', path: '/call' },
] as const;

export function SheetLinks() {
  const { t } = useSheet();
  const path = usePath();
  const here = sheets.findLast((sheet) =>
    sheet.path === '/' ? path === '/' || path.startsWith('/plan') : path.startsWith(sheet.path),
  );
  return (
    <nav className="sheet-links" aria-label={t('nav.label')}>
      {sheets.map((sheet) => (
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
