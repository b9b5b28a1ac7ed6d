// Write down what happened: choose the kind, fill its few fields. Large targets, one hand. Half written it
// stays on this device.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { HelpLine } from '../controls/help-line.tsx';
import { faultSentences } from '../messages/fault-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { begunAt, keepBegun } from '../state/begun.ts';
import { type AnimalSheet, writeEntry } from './animal-api.ts';
import { EntryField } from './entry-field.tsx';
import { type EntryKind, emptyBody, entryKinds, entryShape } from './entry-shape.ts';

interface EntryFormProps {
  readonly sheet: AnimalSheet;
  readonly onWritten: () => void;
}

interface Entry {
  readonly kind: EntryKind;
  readonly on: string;
  readonly body: Readonly<Record<string, unknown>>;
}

const emptyEntry = (kind: EntryKind, sheet: AnimalSheet): Entry => ({
  kind,
  on: sheet.today,
  body: emptyBody(kind, sheet),
});

export function EntryForm({ sheet, onWritten }: EntryFormProps) {
  const { t, measure } = useSheet();
  const place = `entry-${sheet.id}`;
  const [{ kind, on, body }, setEntry] = useState<Entry>(() => ({
    ...emptyEntry('weighing', sheet),
    ...begunAt<Entry>(place),
  }));
  const [said, setSaid] = useState<string | null>(null);
  const put = (entry: Entry, isBegun = true) => {
    setEntry(entry);
    keepBegun(place, isBegun ? entry : null);
  };
  const choose = (next: EntryKind) => {
    put({ ...emptyEntry(next, sheet), on });
    setSaid(null);
  };
  const save = async () => {
    const answer = await writeEntry(sheet.id, { kind, on, body, clientKey: crypto.randomUUID() });
    setSaid(answer.ok ? t('sheet.written') : faultSentences(answer.faults, measure) || t('animals.unreached'));
    if (!answer.ok) return;
    put({ ...emptyEntry(kind, sheet), on }, false);
    onWritten();
  };
  return (
    <section className="sheet-part no-paper">
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
          aria-describedby="entry-on-help"
          onChange={(event) => put({ kind, body, on: event.target.value })}
        />
        <HelpLine id="entry-on-help" text={t('help.entry.on')} />
        {entryShape[kind].map((field) => (
          <EntryField
            key={`${kind}-${field.name}`}
            kind={kind}
            field={field}
            value={body[field.name]}
            onChange={(value) => put({ kind, on, body: { ...body, [field.name]: value } })}
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
