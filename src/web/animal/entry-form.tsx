// Write down what happened: choose the kind, fill its few fields. Large targets, one hand.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { type AnimalSheet, writeEntry } from './animal-api.ts';
import { type EntryKind, emptyBody, entryKinds, entryShape, type ShapeField } from './entry-shape.ts';

interface EntryFormProps {
  readonly sheet: AnimalSheet;
  readonly onWritten: () => void;
}

export function EntryForm({ sheet, onWritten }: EntryFormProps) {
  const { t } = useSheet();
  const [kind, setKind] = useState<EntryKind>('weighing');
  const [on, setOn] = useState(sheet.today);
  const [body, setBody] = useState(() => emptyBody('weighing', sheet));
  const [said, setSaid] = useState<string | null>(null);
  const choose = (next: EntryKind) => {
    setKind(next);
    setBody(emptyBody(next, sheet));
    setSaid(null);
  };
  const save = async () => {
    const answer = await writeEntry(sheet.id, { kind, on, body, clientKey: crypto.randomUUID() });
    setSaid(
      answer.ok
        ? t('sheet.written')
        : answer.faults.map((fault) => `${fault.say} ${fault.allowed}`).join(' ') || t('animals.unreached'),
    );
    if (!answer.ok) return;
    setBody(emptyBody(kind, sheet));
    onWritten();
  };
  return (
    <section className="sheet-part">
      <h2>{t('sheet.write')}</h2>
      <div className="entry-form">
        <label className="field-label" htmlFor="entry-kind">
          {t('entry.kind')}
        </label>
        <select
          id="entry-kind"
          className="select-plain"
          value={kind}
          onChange={(event) => choose(event.target.value as EntryKind)}
        >
          {entryKinds.map((one) => (
            <option key={one} value={one}>
              {t(`entry.${one}`)}
            </option>
          ))}
        </select>
        <label className="field-label" htmlFor="entry-on">
          {t('entry.on')}
        </label>
        <input
          id="entry-on"
          className="text-input"
          type="date"
          value={on}
          max={sheet.today}
          onChange={(event) => setOn(event.target.value)}
        />
        {entryShape[kind].map((field) => (
          <EntryField
            key={`${kind}-${field.name}`}
            field={field}
            value={body[field.name]}
            onChange={(value) => setBody((now) => ({ ...now, [field.name]: value }))}
          />
        ))}
      </div>
      <Button className="button" onPress={() => void save()}>
        {t('sheet.save')}
      </Button>
      <p role="status" className="field-hint">
        {said}
      </p>
    </section>
  );
}

interface EntryFieldProps {
  readonly field: ShapeField;
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
}

function EntryField({ field, value, onChange }: EntryFieldProps) {
  const { t, measure } = useSheet();
  const id = `entry-${field.name}`;
  const key = `field.${field.name}`;
  const label = isMessageKey(key) ? t(key) : field.name;
  const word = (one: string): string => (isMessageKey(`word.${one}`) ? t(`word.${one}` as 'word.yes') : one);
  return (
    <>
      <label className="field-label" htmlFor={id}>
        {label}
        {field.name === 'massG' && `, ${measure.write('mass', 0).unit}`}
      </label>
      {field.words ? (
        <select
          id={id}
          className="select-plain"
          value={String(value)}
          onChange={(event) => onChange(field.flag ? event.target.value === 'yes' : event.target.value)}
        >
          {field.words.map((one) => (
            <option key={one} value={one}>
              {word(one)}
            </option>
          ))}
        </select>
      ) : field.number ? (
        <input
          id={id}
          className="text-input"
          type="number"
          inputMode="decimal"
          step="any"
          value={value === null ? '' : String(value)}
          onChange={(event) => onChange(event.target.value === '' ? null : Number(event.target.value))}
        />
      ) : (
        <input
          id={id}
          className="text-input"
          type="text"
          maxLength={2000}
          value={String(value)}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </>
  );
}
