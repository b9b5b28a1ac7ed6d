// Every rule of law that was read for the place of the desk and for the place of the home, with source and date.
import type { Told } from '../../husbandry/coded.ts';
import type { PlaceLaw } from '../../proving/release/law-requirements.ts';
import { SourceNote } from '../controls/source-note.tsx';
import { sentence } from '../messages/need-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useFacts } from '../worker/use-facts.ts';

export function LawPart({ law }: { readonly law: readonly PlaceLaw[] }) {
  const { t, measure, fromFacts } = useSheet();
  // A sheet kept on this device from before may lack the codes.
  const said = (told: Told | null | undefined, english: string) => {
    const { text, lang } = sentence(told, english, measure);
    return <span lang={lang}>{text}</span>;
  };
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
                {fromFacts(finding.title)}. {said(finding.told?.reason, finding.reason)}{' '}
                {finding.todo !== '' && <>{said(finding.told?.todo, finding.todo)} </>}
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
