// The thin line that always says what is missing next, and what of this device's has not been answered yet.
import { sayRequirement } from '../../proving/release/words/say.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { PartProps } from './placement-page.tsx';

/** Moves to a requirement and puts the keyboard there. */
export function goToRequirement(id: string): void {
  const row = document.getElementById(`requirement-${id}`);
  row?.scrollIntoView({ block: 'center' });
  row?.focus({ preventScroll: true });
}

export function NextLine({ sheet, on }: PartProps) {
  const { t, settings } = useSheet();
  const { next } = sheet.release;
  return (
    <div className="next-line">
      <p aria-live="polite">
        {sheet.state !== 'open' ? (
          <span className="missing-next">{t(`next.${sheet.state}`)}</span>
        ) : next === null ? (
          <span className="missing-next">{t('next.release')}</span>
        ) : (
          <>
            <span className="missing-label">{t('missing.label')}</span>{' '}
            <button type="button" className="quiet-button next-button" onClick={() => goToRequirement(next)}>
              {sayRequirement(next, settings.language).title}
            </button>
          </>
        )}
      </p>
      <p role="status" className="next-waiting">
        {on.waiting.length > 0 && t('next.waiting', { n: on.waiting.length })}
      </p>
    </div>
  );
}
