// The thin line on top of the sheets about animals: the name of the program, the ways between sheets, how it is shown.
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { ViewMenu } from '../shell/view-menu.tsx';
import { SheetLinks } from './sheet-links.tsx';

export function AnimalTopLine() {
  const { t } = useSheet();
  return (
    <header className="animal-top">
      <a
        className="wordmark"
        href="/"
        onClick={(event) => {
          event.preventDefault();
          go('/');
        }}
      >
        {t('app.name')}
      </a>
      <SheetLinks />
      <ViewMenu />
    </header>
  );
}
