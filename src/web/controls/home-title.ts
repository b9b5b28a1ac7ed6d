// What a home is called for who reads: its own word, or the day on which its buyer's words were erased.
import { erasedOn } from '../../shared/erased-note.ts';
import { useSheet } from '../settings/settings-context.tsx';

export function useHomeTitle(): (title: string) => string {
  const { t, measure } = useSheet();
  return (title) => {
    const day = erasedOn(title);
    if (day === null) return title;
    const date = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium', timeZone: 'UTC' });
    return t('title.erased', { date: date.format(new Date(day)) });
  };
}
