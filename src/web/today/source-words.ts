// Where a figure of a task comes from, in a few words.
import { useSheet } from '../settings/settings-context.tsx';

export function useSourceWords(): (keys: readonly string[]) => string {
  const { t } = useSheet();
  return (keys) =>
    [...new Set(keys)]
      .map((key) => (key === 'OUR-CHOICE' ? t('source.ourChoice') : key === 'COMMON' ? t('source.common') : key))
      .join(', ');
}
