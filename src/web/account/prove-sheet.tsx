// The password once more: what a PIN opened does not change who can get in.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';
import { proveAgain } from './account-api.ts';
import { DoorFrame } from './door-frame.tsx';
import { notNow } from './here.ts';
import { EntryButton, useEntry } from './sign-in.tsx';
import { TextRow } from './text-row.tsx';

export function ProveSheet({ name }: { readonly name: string }) {
  const { t } = useSheet();
  const [password, setPassword] = useState('');
  const entry = useEntry(() => proveAgain(password));
  return (
    <DoorFrame title={t('acc.prove')} lead={t('acc.proveLead', { name })}>
      <form className="door-fields" onSubmit={entry.submit}>
        <TextRow
          label={t('acc.password')}
          type="password"
          value={password}
          onChange={setPassword}
          autoComplete="current-password"
          autoFocus
        />
        <EntryButton entry={entry} label={t('acc.goOn')} />
      </form>
      <div className="door-ways">
        <Button className="quiet-button" onPress={notNow}>
          {t('acc.notNow')}
        </Button>
      </div>
    </DoorFrame>
  );
}
