// A manager lets it go all the same, with a reason that is printed; whoever has overridden is named, and can take it back.
import { Button } from 'react-aria-components';
import type { RequirementFinding } from '../../proving/release/requirement.ts';
import { useSaying } from '../animal/say.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { PartProps } from './placement-page.tsx';
import { useDraft, useHadDraft } from './use-draft.ts';

/** As the desk asks for it. */
const shortestReason = 12;

interface OverrideProps extends PartProps {
  readonly finding: RequirementFinding;
}

export function OverrideForm({ finding, sheet, on }: OverrideProps) {
  const { t } = useSheet();
  const say = useSaying();
  const { override, answer, absolute, id } = finding;
  const [reason, setReason] = useDraft(sheet.id, `override-${id}`);
  const hadDraft = useHadDraft(sheet.id, `override-${id}`);
  if (answer === 'met') return null;
  const open = sheet.state === 'open';
  if (override !== null && finding.stands)
    return (
      <div className="override">
        <p>{t('override.was', { by: override.by, on: say.day(override.at.slice(0, 10)), reason: override.reason })}</p>
        {open && sheet.mayOverride && (
          <Button
            className="quiet-button"
            onPress={() => on.act('overrides', { requirement: id, reason: '', takeBack: true })}
          >
            {t('override.takeBack')}
          </Button>
        )}
      </div>
    );
  if (!open || absolute !== null || !sheet.mayAct) return null;
  if (!sheet.mayOverride) return <p className="field-hint">{t('override.askManager')}</p>;
  return (
    <details className="override" open={hadDraft}>
      <summary>{t('override.title')}</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          on.act('overrides', { requirement: id, reason: reason.trim(), takeBack: false });
          setReason('');
        }}
      >
        <label className="field-label">
          {t('override.reason', { n: shortestReason })}
          <textarea
            className="text-input override-text"
            rows={3}
            maxLength={500}
            value={reason}
            onChange={(event) => setReason(event.target.value)}
          />
        </label>
        <p className="field-hint">{t('override.printed')}</p>
        <Button className="button" type="submit" isDisabled={reason.trim().length < shortestReason}>
          {t('override.do')}
        </Button>
      </form>
    </details>
  );
}
