// Changing one's password and one's PIN; both ask for the password as it is now.
import { type FormEvent, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { changePassword, changePin } from './account-api.ts';
import { faultsByField } from './fault-words.ts';
import { lookWhoIsHere } from './here.ts';
import { TextRow } from './text-row.tsx';

export function PasswordPart({ name }: { readonly name: string }) {
  const { t } = useSheet();
  const [now, setNow] = useState('');
  const [next, setNext] = useState('');
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const faults = faultsByField(answer, ['password'], t);
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    const kept = await changePassword(now, next);
    setAnswer(kept);
    if (!kept.ok) return;
    setNow('');
    setNext('');
  };
  return (
    <section className="sheet-part">
      <h2>{t('acc.changePassword')}</h2>
      <form className="account-form" onSubmit={(event) => void keep(event)}>
        {/* Tells a password keeper whose password this is. */}
        <input type="text" autoComplete="username" value={name} readOnly hidden />
        <TextRow
          label={t('acc.passwordNow')}
          type="password"
          value={now}
          onChange={setNow}
          autoComplete="current-password"
          fault={faults['']}
        />
        <TextRow
          label={t('acc.newPassword')}
          type="password"
          value={next}
          onChange={setNext}
          autoComplete="new-password"
          hint={t('acc.passwordHint')}
          fault={faults.password}
        />
        <Button type="submit" className="button">
          {t('acc.passwordKeep')}
        </Button>
        <p role="status">{answer?.ok ? t('acc.passwordKept') : ''}</p>
      </form>
    </section>
  );
}

export function PinPart({ hasPin }: { readonly hasPin: boolean }) {
  const { t } = useSheet();
  const [pin, setPin] = useState('');
  const [password, setPassword] = useState('');
  const [done, setDone] = useState<{ readonly answer: Asked<unknown>; readonly dropped: boolean } | null>(null);
  const faults = faultsByField(done?.answer ?? null, ['pin'], t);
  const keep = async (next: string | null) => {
    const answer = await changePin(password, next);
    setDone({ answer, dropped: next === null });
    if (!answer.ok) return;
    setPin('');
    setPassword('');
    await lookWhoIsHere();
  };
  return (
    <section className="sheet-part">
      <h2>{t('acc.pinTitle')}</h2>
      <form
        className="account-form"
        onSubmit={(event) => {
          event.preventDefault();
          void keep(pin);
        }}
      >
        <p>{t('acc.pinLead')}</p>
        <TextRow
          label={t('acc.pinNew')}
          hint={t('help.acc.pin')}
          type="password"
          digits
          value={pin}
          onChange={setPin}
          fault={faults.pin}
        />
        <TextRow
          label={t('acc.passwordNow')}
          type="password"
          value={password}
          onChange={setPassword}
          autoComplete="current-password"
          fault={faults['']}
        />
        <div className="account-tools">
          <Button type="submit" className="button">
            {t('acc.pinKeep')}
          </Button>
          {hasPin && (
            <Button className="button button-quiet" onPress={() => void keep(null)}>
              {t('acc.pinDrop')}
            </Button>
          )}
        </div>
        <p role="status">{done?.answer.ok ? t(done.dropped ? 'acc.pinDropped' : 'acc.pinKept') : ''}</p>
      </form>
    </section>
  );
}
