// Passkeys of one's own: add one of this device, see them, remove one.
import { startRegistration } from '@simplewebauthn/browser';
import { type FormEvent, useState } from 'react';
import { Button } from 'react-aria-components';
import { dateText } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { keepPasskey, newPasskey, type OwnAccount, removePasskey } from './account-api.ts';
import { passkeysWork } from './passkey-button.tsx';
import { TextRow } from './text-row.tsx';

type Options = Parameters<typeof startRegistration>[0]['optionsJSON'];

interface PasskeyPartProps {
  readonly passkeys: OwnAccount['passkeys'];
  readonly onChange: () => void;
}

export function PasskeyPart({ passkeys, onChange }: PasskeyPartProps) {
  const { t, measure } = useSheet();
  const [name, setName] = useState('');
  const [failed, setFailed] = useState(false);
  const add = async (event: FormEvent) => {
    event.preventDefault();
    setFailed(false);
    const question = await newPasskey();
    if (!question.ok) return setFailed(true);
    const { id, options } = question.value;
    const response = await startRegistration({ optionsJSON: options as Options }).catch(() => null);
    const kept = response === null ? null : await keepPasskey(id, name, response);
    setFailed(kept?.ok !== true);
    if (!kept?.ok) return;
    setName('');
    onChange();
  };
  return (
    <section className="sheet-part">
      <h2>{t('acc.passkeys')}</h2>
      <p className="account-say">{t('acc.passkeysLead')}</p>
      {passkeys.length > 0 && (
        <ul className="account-list">
          {passkeys.map((one) => (
            <li key={one.id}>
              <span>
                {one.name}
                <span className="account-soft">
                  {t('acc.passkeyOn', { day: dateText(one.at.slice(0, 10), measure.locale) })}
                </span>
              </span>
              <Button className="quiet-button" onPress={() => void removePasskey(one.id).then(onChange)}>
                {t('acc.remove')}
              </Button>
            </li>
          ))}
        </ul>
      )}
      {passkeysWork() ? (
        <form className="account-form" onSubmit={(event) => void add(event)}>
          <TextRow label={t('acc.passkeyName')} hint={t('help.acc.passkey')} value={name} onChange={setName} />
          <Button type="submit" className="button button-quiet">
            {t('acc.passkeyAdd')}
          </Button>
          <p className="field-fault" role="alert">
            {failed ? t('acc.fault.ACCOUNT_PASSKEY') : ''}
          </p>
        </form>
      ) : (
        <p className="field-hint">{t('acc.passkeysNot')}</p>
      )}
    </section>
  );
}
