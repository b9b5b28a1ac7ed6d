// Sign in by a passkey of this device, where the browser can: at a name (not a bare number) and on a safe connection.
import { browserSupportsWebAuthn, startAuthentication } from '@simplewebauthn/browser';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';
import { answerByPasskey, passkeyQuestion } from './account-api.ts';
import { cameIn } from './here.ts';

export const passkeysWork = (): boolean =>
  browserSupportsWebAuthn() && isSecureContext && !/^[\d.]+$|:/.test(location.hostname);

type Options = Parameters<typeof startAuthentication>[0]['optionsJSON'];

export function PasskeyButton() {
  const { t } = useSheet();
  const [failed, setFailed] = useState(false);
  if (!passkeysWork()) return null;
  const enter = async () => {
    const question = await passkeyQuestion();
    if (!question.ok) return setFailed(true);
    const { id, options } = question.value;
    const response = await startAuthentication({ optionsJSON: options as Options }).catch(() => null);
    const answer = response === null ? null : await answerByPasskey(id, response);
    if (answer?.ok) return await cameIn();
    setFailed(true);
  };
  return (
    <>
      <Button className="button button-quiet" onPress={() => void enter()}>
        {t('acc.passkeyUse')}
      </Button>
      <p className="field-fault" role="alert">
        {failed ? t('acc.fault.ACCOUNT_PASSKEY') : ''}
      </p>
    </>
  );
}
