// Waiting for the shop computer, or saying that it is not reached.
import { Button } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';

export function NotReached({ failed, again }: { readonly failed: boolean; readonly again: () => void }) {
  const { t } = useSheet();
  if (!failed) return <main className="notice">{t('animals.waiting')}</main>;
  return (
    <main className="notice">
      <p>{t('animals.unreached')}</p>
      <Button className="button" onPress={again}>
        {t('animals.again')}
      </Button>
    </main>
  );
}
