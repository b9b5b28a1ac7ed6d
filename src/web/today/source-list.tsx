// Where the figures of a task come from: title and year of each source, or that it is common practice or our choice.
import { Fragment, type ReactNode } from 'react';
import { useSheet } from '../settings/settings-context.tsx';
import type { AftercareSheet } from './today-api.ts';

interface SourceListProps {
  readonly keys: readonly string[];
  readonly sources: AftercareSheet['sources'];
}

export function SourceList({ keys, sources }: SourceListProps) {
  const { t } = useSheet();
  const said = (key: string): ReactNode => {
    const row = sources[key];
    if (row === undefined) return null;
    if (row.kind === 'our choice') return t('source.ourChoice');
    if (row.kind === 'common practice') return t('source.common');
    return (
      <>
        <cite translate="no">{[row.title, row.year].filter(Boolean).join(', ')}</cite>
        {row.read === 'memory' && ` (${t('source.memory')})`}
      </>
    );
  };
  const shown = [...new Set(keys)].filter((key) => sources[key] !== undefined);
  return (
    <p className="field-hint">
      {t('aftercare.sources')}{' '}
      {shown.map((key, i) => (
        <Fragment key={key}>
          {i > 0 && '; '}
          {said(key)}
        </Fragment>
      ))}
    </p>
  );
}
