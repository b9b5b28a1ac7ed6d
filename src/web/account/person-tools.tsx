// Beside the view button in the line on top: whose sheet this is, and one press that locks it.
import { Button } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { lock } from './account-api.ts';
import { lookWhoIsHere, useDoor } from './here.ts';

export function PersonTools() {
  const { t } = useSheet();
  const { here } = useDoor();
  if (here.state !== 'in') return null;
  const letters = here.me.name
    .split(/\s+/)
    .map((word) => word[0] ?? '')
    .join('')
    .slice(0, 2)
    .toUpperCase();
  return (
    <>
      <Button className="tool tool-person" onPress={() => go('/account')}>
        <span aria-hidden="true">{letters}</span>
        <span className="visually-hidden">{t('acc.toolPerson', { name: here.me.name })}</span>
      </Button>
      <Button className="tool" onPress={() => void lock().then(lookWhoIsHere)} aria-label={t('acc.toolLock')}>
        <svg viewBox="0 0 22 22" aria-hidden="true" className="tool-shape">
          <path d="M5 10h12v9H5zM7.5 10V7a3.5 3.5 0 0 1 7 0v3M11 13.5v2.5" />
        </svg>
      </Button>
    </>
  );
}
