// The sign that a number is the shop's own: who, when, why, and what was shipped in its place.
import type { OwnMark } from '../../husbandry/shop-value.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { factText } from './parts-text.ts';
import { dateText } from './source-note.tsx';

export function OwnMarkNote({ own }: { readonly own: OwnMark }) {
  const { t, measure } = useSheet();
  const key = own.path.split('.').at(-1) ?? '';
  const shipped =
    Object.keys(own.was).length > 0 ? ` ${t('own.shipped', { value: factText(key, own.was, measure, t) })}` : '';
  const blanks = { by: own.by, date: dateText(own.at.slice(0, 10), measure.locale), why: own.why };
  return (
    <span className="own-mark">
      <b>{t('own.sign')}</b> {t('own.said', blanks)}
      {shipped}
    </span>
  );
}
