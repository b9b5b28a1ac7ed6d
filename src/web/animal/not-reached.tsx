// Waiting for the shop computer, or saying that it is not reached.
import { Button } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';

interface NotReachedProps {
  readonly failed: boolean;
  readonly again: () => void;
  /** True within a sheet that stands already; else this is the sheet. */
  readonly within?: boolean;
}

export function NotReached({ failed, again, within = false }: NotReachedProps) {
  const { t } = useSheet();
  const Frame = within ? 'div' : 'main';
  if (!failed) return <Frame className="notice">{t('animals.waiting')}</Frame>;
  return (
    <Frame className="notice">
      <p>{t('animals.unreached')}</p>
      <Button className="button" onPress={again}>
        {t('animals.again')}
      </Button>
    </Frame>
  );
}
