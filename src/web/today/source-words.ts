// Where the figures of a task come from: title and year of each source, or that it is common practice or our choice.
import { useSheet } from '../settings/settings-context.tsx';
import type { AftercareSheet } from './today-api.ts';

export function useSourceWords(): (keys: readonly string[], sources: AftercareSheet['sources']) => string {
  const { t } = useSheet();
  return (keys, sources) => {
    const words = keys.flatMap((key) => {
      const row = sources[key];
      if (row === undefined) return [];
      if (row.kind === 'our choice') return [t('source.ourChoice')];
      if (row.kind === 'common practice') return [t('source.common')];
      const named = [row.title, row.year].filter(Boolean).join(', ');
      return [row.read === 'memory' ? `${named} (${t('source.memory')})` : named];
    });
    return [...new Set(words)].join('; ');
  };
}
