// What the register holds of the animal, what is missing and by whose law; corrections say why and never erase.
import { useState } from 'react';
import { Button, Input, Label, Text, TextField } from 'react-aria-components';
import { choiceWords, fieldWords } from '../../animal/words/register.ts';
import { faultSentences } from '../messages/fault-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun, useWasBegun } from '../state/begun.ts';
import { type AnimalSheet, putRegister } from './animal-api.ts';
import { RegisterFields } from './register-fields.tsx';
import { useSaying } from './say.ts';
import { useSpecies } from './use-species.ts';

const editPlace = (animalId: string): string => `register-${animalId}`;

interface RegisterPartProps {
  readonly sheet: AnimalSheet;
  readonly onChanged: () => void;
}

export function RegisterPart({ sheet, onChanged }: RegisterPartProps) {
  const { t } = useSheet();
  const say = useSaying();
  const { nameOf } = useSpecies();
  const [editing, setEditing] = useState(useWasBegun(editPlace(sheet.id)));
  const missing = sheet.register
    .filter((finding) => finding.state === 'missing')
    .map((finding) => say.spoken(finding.heading.say));
  return (
    <section className="sheet-part">
      <h2>{t('sheet.register')}</h2>
      <p className={missing.length > 0 ? 'register-missing' : ''}>
        {missing.length > 0 ? t('sheet.registerMissing', { what: missing.join('; ') }) : t('sheet.registerWhole')}
      </p>
      {editing ? (
        <RegisterEdit
          sheet={sheet}
          onDone={() => {
            setEditing(false);
            onChanged();
          }}
        />
      ) : (
        <>
          <dl className="register-list">
            {Object.entries(sheet.entry).map(([field, value]) => (
              <div key={field}>
                <dt>{say.spoken(fieldWords[field as keyof typeof fieldWords])}</dt>
                <dd>
                  {field === 'speciesId'
                    ? nameOf(value)
                    : choiceWords[value]
                      ? say.spoken(choiceWords[value])
                      : say.day(value)}
                </dd>
              </div>
            ))}
          </dl>
          <Button className="button button-quiet" onPress={() => setEditing(true)}>
            {t('sheet.registerCorrect')}
          </Button>
        </>
      )}
    </section>
  );
}

function RegisterEdit({ sheet, onDone }: { readonly sheet: AnimalSheet; readonly onDone: () => void }) {
  const { t, measure } = useSheet();
  const { now, change, forget } = useBegun(editPlace(sheet.id), { values: sheet.entry, reason: '' });
  const { values, reason } = now;
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({});
  const save = async () => {
    const answer = await putRegister(sheet.id, values, reason);
    if (answer.ok) {
      forget();
      return onDone();
    }
    setWrong(Object.fromEntries(answer.faults.map((fault) => [fault.field, faultSentences([fault], measure)])));
  };
  return (
    <>
      <RegisterFields
        values={values}
        wrong={wrong}
        onChange={(field, value) => change({ values: { ...values, [field]: value } })}
      />
      <TextField className="text-field" value={reason} onChange={(next) => change({ reason: next })}>
        <Label className="field-label">{t('sheet.reason')}</Label>
        <Input className="text-input" />
        <Text slot="description" className="field-hint">
          {t('help.register.reason')}
        </Text>
        {wrong.reason && <span className="field-fault">{wrong.reason}</span>}
      </TextField>
      <Button className="button" onPress={() => void save()}>
        {t('sheet.save')}
      </Button>
    </>
  );
}
