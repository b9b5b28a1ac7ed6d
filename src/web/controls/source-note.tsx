// Where a number comes from, in small print: the source's title and date, or that it is from memory or our choice.

import type { ReadMark } from '../../husbandry/need.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { FactsBrief } from '../worker/protocol.ts';

interface SourceNoteProps {
  readonly facts: FactsBrief | null;
  readonly source: string;
  readonly read: ReadMark;
}

export function SourceNote({ facts, source, read }: SourceNoteProps) {
  const { t } = useSheet();
  if (source === '') return null;
  const row = facts?.sources[source];
  if (!row) return <span className={`source source-${read}`}>({source})</span>;
  const named = row.year ? `${row.title}, ${row.year}` : row.title;
  const checked = row.dateChecked ? ` · ${t('source.checked', { date: row.dateChecked })}` : '';
  return (
    <span className={`source source-${read}`}>
      {row.url ? (
        <a href={row.url} target="_blank" rel="noreferrer">
          {named}
        </a>
      ) : (
        named
      )}
      {checked}
      {read !== 'page' && ` · ${t(`source.${read}`)}`}
    </span>
  );
}
