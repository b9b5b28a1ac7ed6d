// The locked sheet on a shared tablet: who comes next, and their PIN on a pad for wet thumbs or on the keyboard.
import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { signOut, switchTo } from './account-api.ts';
import { DoorFrame } from './door-frame.tsx';
import { faultsByField } from './fault-words.ts';
import { lookWhoIsHere, type Me, type SwitchChoice } from './here.ts';
import { SignIn, useEntry } from './sign-in.tsx';

const longestPin = 8;

export function LockSheet({ me, people }: { readonly me: Me; readonly people: readonly SwitchChoice[] }) {
  const { t } = useSheet();
  const [byPassword, setByPassword] = useState(people.length === 0);
  if (byPassword) return <SignIn again={me.name} />;
  return (
    <DoorFrame title={t('acc.locked')} lead={t('acc.lockedLead', { name: me.name })}>
      <PinForm me={me} people={people} />
      <div className="door-ways">
        <Button className="quiet-button" onPress={() => setByPassword(true)}>
          {t('acc.byPassword')}
        </Button>
        <Button className="quiet-button" onPress={() => void signOut().then(lookWhoIsHere)}>
          {t('acc.signOut')}
        </Button>
      </div>
    </DoorFrame>
  );
}

function PinForm({ me, people }: { readonly me: Me; readonly people: readonly SwitchChoice[] }) {
  const { t } = useSheet();
  const [who, setWho] = useState((people.find((one) => one.id === me.id) ?? people[0])?.id ?? '');
  const [pin, setPin] = useState('');
  const entry = useEntry(async () => {
    const answer = await switchTo(who, pin);
    setPin('');
    return answer;
  });
  const put = (key: string) =>
    setPin((now) => (key === 'back' ? now.slice(0, -1) : `${now}${key}`.slice(0, longestPin)));
  const form = useRef<HTMLFormElement>(null);
  usePinKeys(put, () => form.current?.requestSubmit());
  const fault = faultsByField(entry.answer, [], t)[''];
  return (
    <form ref={form} className="door-fields" onSubmit={entry.submit}>
      {people.length > 1 && (
        <Choice
          label={t('acc.who')}
          value={who}
          layout="list"
          onChange={setWho}
          options={people.map((one) => ({ value: one.id, text: one.name, more: t(`acc.role.${one.role}`) }))}
        />
      )}
      <p className="pin-shown" role="status">
        <span className="visually-hidden">{t('acc.pinDigits', { count: pin.length })}</span>
        <span aria-hidden="true">
          {pin.length === 0 ? t('acc.pinOf', { name: nameOf(people, who) }) : '●'.repeat(pin.length)}
        </span>
      </p>
      <fieldset className="pin-pad" aria-label={t('acc.pin')}>
        {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((digit) => (
          <Button key={digit} className="pin-key" onPress={() => put(digit)}>
            {digit}
          </Button>
        ))}
        <Button className="pin-key" aria-label={t('acc.pinBack')} onPress={() => put('back')}>
          ⌫
        </Button>
        <Button className="pin-key" onPress={() => put('0')}>
          0
        </Button>
        <Button type="submit" className="pin-key pin-open" isDisabled={entry.busy || pin.length < 4}>
          {t('acc.open')}
        </Button>
      </fieldset>
      <p className="field-fault" role="alert">
        {fault}
      </p>
    </form>
  );
}

const nameOf = (people: readonly SwitchChoice[], id: string): string => people.find((one) => one.id === id)?.name ?? '';

/** Digits and Backspace anywhere on the locked sheet; Enter opens, unless a button has the focus and is pressed by it. */
function usePinKeys(put: (key: string) => void, open: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (/^\d$/.test(event.key)) put(event.key);
      else if (event.key === 'Backspace') put('back');
      else if (event.key === 'Enter' && !(event.target instanceof HTMLButtonElement)) open();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  });
}
