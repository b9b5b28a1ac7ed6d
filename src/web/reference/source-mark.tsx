// Where one value comes from: title as a link, date, and the mark "from memory" or "common practice".
import type { Source } from '../../husbandry/fact.ts';
import type { Sourced } from '../../husbandry/need.ts';
import { dateText } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';

interface SourceMarkProps {
  readonly of: Pick<Sourced, 'source' | 'at' | 'read'>;
  readonly sources: Readonly<Record<string, Source>>;
}

export function SourceMark({ of, sources }: SourceMarkProps) {
  const { t, measure } = useSheet();
  const row = sources[of.source];
  const date = row?.dateChecked ? t('ref.looked', { date: dateText(row.dateChecked, measure.locale) }) : '';
  if (row?.kind === 'common practice') return <span className="ref-mark">{t('ref.common')}</span>;
  if (row?.kind === 'our choice') return <span className="ref-mark">{t('ref.choice')}</span>;
  const title = row ? [row.title, row.year].filter(Boolean).join(', ') : of.source;
  return (
    <span className="ref-source">
      {row?.url ? (
        <a href={row.url} target="_blank" rel="noreferrer" translate="no">
          {title}
        </a>
      ) : (
        <cite translate="no">{title}</cite>
      )}
      {of.at && <span translate="no">, {of.at}</span>}
      {date && ` · ${date}`}
      {of.read !== 'page' && <b className="ref-mark"> · {t(`ref.${of.read}`)}</b>}
    </span>
  );
}
