// Every rule of law that was read for the place of the desk and for the place of the home, with source and date.
import type { PlaceLaw } from '../../proving/release/law-requirements.ts';
import { SourceNote } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useFacts } from '../worker/use-facts.ts';

export function LawPart({ law }: { readonly law: readonly PlaceLaw[] }) {
  const { t } = useSheet();
  const facts = useFacts();
  return (
    <>
      {law.map(({ place, role, findings }) => (
        <details key={place} className="law-place">
          <summary>{t(`law.${role}`, { place: t(`lawplace.${place}`), n: findings.length })}</summary>
          <ul>
            {findings.map((finding) => (
              <li key={finding.ruleId} className="law-rule">
                <b>{t(finding.stops ? `law.answer.${finding.answer}` : 'law.answer.duty')}</b>{' '}
                <span lang="en">
                  {finding.title}. {finding.reason} {finding.todo}
                </span>{' '}
                {finding.secondHand && `${t('law.secondHand')} `}
                {finding.stale && `${t('law.stale')} `}
                <SourceNote facts={facts} source={finding.source} read={finding.read} />
              </li>
            ))}
          </ul>
          <p className="field-hint">{t('law.council')}</p>
        </details>
      ))}
    </>
  );
}
