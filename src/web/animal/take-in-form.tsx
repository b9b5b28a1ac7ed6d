// An animal comes in: what the register wants, its enclosure, and its quarantine.
import { useState } from 'react';
import { Button, Input, Label, Text, TextField } from 'react-aria-components';
import type { RegisterEntry } from '../../animal/register.ts';
import { Choice } from '../controls/choice.tsx';
import { faultSentences } from '../messages/fault-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { takeIn } from './animal-api.ts';
import { RegisterFields } from './register-fields.tsx';

type Quarantine = 'time' | 'tests' | 'none';

/** Where an animal that is half taken in waits on this device. */
export const takeInPlace = 'take-in';
const nobody = { values: {} as RegisterEntry, enclosure: '', quarantine: 'time' as Quarantine };

export function TakeInForm({ onDone }: { readonly onDone: (id: string) => void }) {
  const { t, measure } = useSheet();
  const { now, change, forget } = useBegun(takeInPlace, nobody);
  const { values, enclosure, quarantine } = now;
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({});
  const save = async () => {
    const said = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== ''));
    const answer = await takeIn({
      values: said,
      enclosure: enclosure || '–',
      quarantine: quarantine === 'none' ? null : { clearBy: quarantine, days: null, tests: '' },
    });
    if (answer.ok) {
      forget();
      return onDone(answer.value.id);
    }
    setWrong(Object.fromEntries(answer.faults.map((fault) => [fault.field, faultSentences([fault], measure)])));
  };
  return (
    <section className="sheet-part">
      <h2>{t('takeIn.title')}</h2>
      <p className="question-why">{t('takeIn.lead')}</p>
      <RegisterFields
        values={values}
        wrong={wrong}
        onChange={(field, value) => change({ values: { ...values, [field]: value } })}
      />
      <TextField className="text-field" value={enclosure} onChange={(next) => change({ enclosure: next })}>
        <Label className="field-label">{t('animals.enclosure')}</Label>
        <Input className="text-input" />
        <Text slot="description" className="field-hint">
          {t('help.takeIn.enclosure')}
        </Text>
      </TextField>
      <Choice<Quarantine>
        label={t('takeIn.quarantine')}
        value={quarantine}
        layout="list"
        hint={t('help.takeIn.quarantine')}
        onChange={(next) => change({ quarantine: next })}
        options={[
          { value: 'time', text: t('takeIn.quarantineTime') },
          { value: 'tests', text: t('takeIn.quarantineTests') },
          { value: 'none', text: t('takeIn.quarantineNone') },
        ]}
      />
      <Button className="button button-large" onPress={() => void save()}>
        {t('takeIn.save')}
      </Button>
    </section>
  );
}
