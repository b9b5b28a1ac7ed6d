// Mend what was written wrongly: the same fields as when it was written, and why. The old entry stays, struck through.
import { useState } from 'react';
import { Button, Input, Label, Text, TextField } from 'react-aria-components';
import { HelpLine } from '../controls/help-line.tsx';
import { faultSentences } from '../messages/fault-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { amendEntry, type HistoryRow } from './animal-api.ts';
import { EntryField } from './entry-field.tsx';
import { type EntryKind, entryShape } from './entry-shape.ts';

interface AmendEntryProps {
  readonly row: HistoryRow;
  readonly animalId: string;
  readonly onDone: () => void;
  readonly onLeave: () => void;
}

/** Only the kinds that the desk writes by hand can be mended here; a look-over is done again instead. */
export const canAmend = (kind: string): kind is EntryKind => Object.hasOwn(entryShape, kind);

export const amendPlace = (entryId: string): string => `amend-${entryId}`;

export function AmendEntry({ row, animalId, onDone, onLeave }: AmendEntryProps) {
  const { t, measure } = useSheet();
  const { now, change, forget } = useBegun(amendPlace(row.id), {
    body: (row.body ?? {}) as Readonly<Record<string, unknown>>,
    on: row.on,
    reason: '',
  });
  const { body, on, reason } = now;
  const [said, setSaid] = useState<string | null>(null);
  const kind = row.kind;
  if (!canAmend(kind)) return null;
  const save = async () => {
    const answer = await amendEntry(animalId, row.id, body, on, reason);
    if (answer.ok) {
      forget();
      onDone();
    } else setSaid(faultSentences(answer.faults, measure) || t('animals.unreached'));
  };
  const within = `amend-${row.id}`;
  return (
    <div className="entry-form amend-form">
      <label className="field-label" htmlFor={`${within}-on`}>
        {t('entry.on')}
      </label>
      <input
        id={`${within}-on`}
        className="text-input"
        type="date"
        value={on}
        aria-describedby={`${within}-on-help`}
        onChange={(event) => change({ on: event.target.value })}
      />
      <HelpLine id={`${within}-on-help`} text={t('help.entry.amendOn')} />
      {entryShape[kind].map((field) => (
        <EntryField
          key={field.name}
          within={within}
          kind={kind}
          field={field}
          value={body[field.name] ?? field.start}
          onChange={(value) => change({ body: { ...body, [field.name]: value } })}
        />
      ))}
      <TextField className="text-field amend-why" value={reason} onChange={(next) => change({ reason: next })}>
        <Label className="field-label">{t('sheet.amendWhy')}</Label>
        <Input className="text-input" />
        <Text slot="description" className="field-hint">
          {t('help.entry.amendWhy')}
        </Text>
      </TextField>
      <p role="status" className="field-hint">
        {said}
      </p>
      <div className="amend-buttons">
        <Button className="button" isDisabled={reason.trim() === ''} onPress={() => void save()}>
          {t('sheet.amendSave')}
        </Button>{' '}
        <Button
          className="button button-quiet"
          onPress={() => {
            forget();
            onLeave();
          }}
        >
          {t('sheet.amendLeave')}
        </Button>
      </div>
    </div>
  );
}
