// Nobody is signed in: by name and password, by passkey, or with a code that lets one choose a password.
import { type FormEvent, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { choosePassword, signIn } from './account-api.ts';
import { DoorFrame } from './door-frame.tsx';
import { faultsByField } from './fault-words.ts';
import { cameIn } from './here.ts';
import { PasskeyButton } from './passkey-button.tsx';
import { TextRow } from './text-row.tsx';

/** @param again the name of the person whose work waits on the sheet beneath */
export function SignIn({ again }: { readonly again: string | null }) {
  const { t } = useSheet();
  const [withCode, setWithCode] = useState(false);
  const lead = again === null ? t('acc.signInLead') : t('acc.signInAgain', { name: again });
  return (
    <DoorFrame title={t(withCode ? 'acc.codeTitle' : 'acc.signIn')} lead={withCode ? t('acc.codeLead') : lead}>
      {withCode ? <CodeForm /> : <PasswordForm name={again ?? ''} />}
      <div className="door-ways">
        {!withCode && <PasskeyButton />}
        <Button className="quiet-button" onPress={() => setWithCode(!withCode)}>
          {t(withCode ? 'acc.haveNoCode' : 'acc.haveCode')}
        </Button>
      </div>
    </DoorFrame>
  );
}

function PasswordForm({ name: known }: { readonly name: string }) {
  const { t } = useSheet();
  const [name, setName] = useState(known);
  const [password, setPassword] = useState('');
  const entry = useEntry(() => signIn(name, password));
  return (
    <form className="door-fields" onSubmit={entry.submit}>
      <TextRow label={t('acc.name')} value={name} onChange={setName} autoComplete="username" autoFocus={known === ''} />
      <TextRow
        label={t('acc.password')}
        type="password"
        value={password}
        onChange={setPassword}
        autoComplete="current-password"
        autoFocus={known !== ''}
      />
      <EntryButton entry={entry} label={t('acc.signIn')} />
    </form>
  );
}

function CodeForm() {
  const { t } = useSheet();
  const [code, setCode] = useState('');
  const [password, setPassword] = useState('');
  const entry = useEntry(() => choosePassword(code, password));
  const faults = faultsByField(entry.answer, ['code', 'password'], t);
  return (
    <form className="door-fields" onSubmit={entry.submit}>
      <TextRow label={t('acc.code')} value={code} onChange={setCode} fault={faults.code} autoFocus />
      <TextRow
        label={t('acc.newPassword')}
        type="password"
        value={password}
        onChange={setPassword}
        autoComplete="new-password"
        hint={t('acc.passwordHint')}
        fault={faults.password}
      />
      <EntryButton entry={entry} label={t('acc.codeUse')} fields={['code', 'password']} />
    </form>
  );
}

export interface Entry {
  readonly answer: Asked<unknown> | null;
  readonly busy: boolean;
  readonly submit: (event: FormEvent) => void;
}

/** A try to get in: once at a time, and inside when it was right. */
export function useEntry(tryIt: () => Promise<Asked<unknown>>): Entry {
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const [busy, setBusy] = useState(false);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    void tryIt().then(async (next) => {
      setAnswer(next);
      if (next.ok) await cameIn();
      setBusy(false);
    });
  };
  return { answer, busy, submit };
}

export function EntryButton({
  entry,
  label,
  fields = [],
}: {
  readonly entry: Entry;
  readonly label: string;
  readonly fields?: readonly string[];
}) {
  const { t } = useSheet();
  const fault = faultsByField(entry.answer, fields, t)[''];
  return (
    <>
      <p className="field-fault" role="alert">
        {fault}
      </p>
      <Button type="submit" className="button button-large" isDisabled={entry.busy}>
        {label}
      </Button>
    </>
  );
}
