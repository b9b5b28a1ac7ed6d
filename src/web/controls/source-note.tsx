// Where a number comes from, in small print: the source's title and date, or that it is from memory or our choice.

import type { ReadMark } from '../../husbandry/need.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { FactsBrief } from '../worker/protocol.ts';

/** An ISO date as this person writes dates. */
export function dateText(isoDate: string, locale: string): string {
  const at = new Date(`${isoDate}T00:00:00Z`);
  if (Number.isNaN(at.getTime())) return isoDate;
  return new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(at);
}

interface SourceNoteProps {
  readonly facts: FactsBrief | null;
  readonly source: string;
  readonly read: ReadMark;
}

export function SourceNote({ facts, source, read }: SourceNoteProps) {
  const { t, measure } = useSheet();
  // Facts that are still read are waited for: a key says nothing to anybody.
  if (source === '' || facts === null) return null;
  const row = facts.sources[source];
  if (!row) return <span className={`source source-${read}`}>({source})</span>;
  if (row.kind === 'our choice') return <span className="source source-memory">{t('source.ourChoice')}</span>;
  const named = row.year ? `${row.title}, ${row.year}` : row.title;
  const checked = row.dateChecked
    ? ` · ${t('source.checked', { date: dateText(row.dateChecked, measure.locale) })}`
    : '';
  return (
    <span className={`source source-${read}`}>
      {row.url ? (
        <a href={row.url} target="_blank" rel="noreferrer" translate="no">
          {named}
        </a>
      ) : (
        <cite translate="no">{named}</cite>
      )}
      {checked}
      {read !== 'page' && ` · ${t(`source.${read}`)}`}
    </span>
  );
}
