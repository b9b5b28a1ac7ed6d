// All that ever happened, newest first; what was corrected or withdrawn stays readable, struck through.
import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import { choiceWords, fieldWords } from '../../animal/words/register.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun, useWasBegun } from '../state/begun.ts';
import { AmendEntry, amendPlace, canAmend } from './amend-entry.tsx';
import { type AnimalSheet, type HistoryRow, withdrawEntry } from './animal-api.ts';
import { useSaying } from './say.ts';
import { useSpecies } from './use-species.ts';

interface HistoryListProps {
  readonly sheet: AnimalSheet;
  readonly onChanged: () => void;
}

export function HistoryList({ sheet, onChanged }: HistoryListProps) {
  const { t } = useSheet();
  const say = useSaying();
  const corrected = new Set(sheet.history.map((row) => row.corrects));
  const { nameOf } = useSpecies();
  const fieldSaid = (field: string): string =>
    field in fieldWords ? say.spoken(fieldWords[field as keyof typeof fieldWords]) : field;
  const valueSaid = ({ field, value }: AnimalSheet['facts'][number]): string => {
    if (value === '') return '–';
    if (field === 'speciesId') return nameOf(value);
    return choiceWords[value] ? say.spoken(choiceWords[value]) : say.day(value);
  };
  return (
    <section className="sheet-part">
      <h2>{t('sheet.history')}</h2>
      <ul className="history-list">
        {[...sheet.history].reverse().map((row) => (
          <HistoryLine
            key={row.id}
            row={row}
            replaced={corrected.has(row.id)}
            animalId={sheet.id}
            onChanged={onChanged}
          />
        ))}
      </ul>
      <details>
        <summary>{t('sheet.facts')}</summary>
        <ul className="history-list">
          {sheet.facts.map((fact, i) => (
            <li key={`${fact.at}-${fact.field}-${String(i)}`}>
              {say.day(fact.at.slice(0, 10))} · {fact.by} · {fieldSaid(fact.field)}: {valueSaid(fact)}{' '}
              {fact.reason && `(${fact.reason})`}
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

interface HistoryLineProps {
  readonly row: HistoryRow;
  readonly replaced: boolean;
  readonly animalId: string;
  readonly onChanged: () => void;
}

function HistoryLine({ row, replaced, animalId, onChanged }: HistoryLineProps) {
  const { t } = useSheet();
  const say = useSaying();
  const [asking, setAsking] = useState(useWasBegun(`withdraw-${row.id}`));
  const [amending, setAmending] = useState(useWasBegun(amendPlace(row.id)));
  const { now, change, forget } = useBegun(`withdraw-${row.id}`, { reason: '' });
  const { reason } = now;
  const open = !replaced && row.body !== null && !asking && !amending;
  const withdraw = async () => {
    if (!(await withdrawEntry(animalId, row.id, reason)).ok) return;
    forget();
    onChanged();
  };
  return (
    <li className={replaced ? 'history-line history-replaced' : 'history-line'}>
      <div>
        <p className="history-when">
          {say.day(row.on)} · {t(`entry.${row.kind}`)} · {row.by}
          {row.corrects && row.body && ` · ${t('sheet.correctedTo')} (${row.reason})`}
        </p>
        <p>{row.body === null ? t('sheet.withdrawn', { reason: row.reason }) : say.entry(row.body)}</p>
      </div>
      {open && (
        <div className="history-doing">
          {canAmend(row.kind) && (
            <Button className="quiet-button" onPress={() => setAmending(true)}>
              {t('sheet.amend')}
            </Button>
          )}
          <Button className="quiet-button" onPress={() => setAsking(true)}>
            {t('sheet.withdraw')}
          </Button>
        </div>
      )}
      {amending && (
        <AmendEntry
          row={row}
          animalId={animalId}
          onLeave={() => setAmending(false)}
          onDone={() => {
            setAmending(false);
            onChanged();
          }}
        />
      )}
      {asking && (
        <TextField className="text-field" value={reason} onChange={(next) => change({ reason: next })}>
          <Label className="field-label">{t('sheet.withdrawWhy')}</Label>
          <Input className="text-input" />
          <Button className="button button-quiet" isDisabled={reason.trim() === ''} onPress={() => void withdraw()}>
            {t('sheet.withdraw')}
          </Button>
        </TextField>
      )}
    </li>
  );
}
