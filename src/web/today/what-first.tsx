// Something that was told asks for a second look: what first? The enclosure, then simple care, then the vet; the vet at
// once where it cannot wait. Never a diagnosis.
import type { TriageAnswer, TriageFacts } from '../../animal/triage.ts';
import { useSaying } from '../animal/say.ts';
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';

interface WhatFirstProps {
  readonly answer: TriageAnswer;
  readonly facts: TriageFacts;
  /** Who reads it: the desk asks on, the keeper looks. */
  readonly to: 'desk' | 'keeper';
}

export function WhatFirst({ answer, facts, to }: WhatFirstProps) {
  const { t } = useSheet();
  const say = useSaying();
  const nameOf = (key: string): string => {
    const question = facts.questions.find((one) => one.id === key);
    if (question) return say.spoken(question.say);
    return isMessageKey(`reading.${key}`) ? t(`reading.${key}` as 'reading.rhPct') : key;
  };
  const vet = answer.next === 'vet-now' || answer.next === 'vet-24h' || answer.next === 'vet-soon';
  return (
    <section className={vet ? 'call-answer call-vet' : 'call-answer'} role="status">
      <h2>{to === 'keeper' && answer.next === 'ask' ? t('keeper.lookFirst') : t(`call.next.${answer.next}`)}</h2>
      {to === 'desk' && <p>{answer.reasons.map(say.reason).join(' ')}</p>}
      {answer.wrong.length > 0 && <p>{t('call.wrong', { what: answer.wrong.map(nameOf).join('; ') })}</p>}
      {!vet && answer.open.length > 0 && (
        <>
          <p>{t('answer.lookAt')}</p>
          <ul className="look-list">
            {answer.open.map((key) => (
              <li key={key}>{nameOf(key)}</li>
            ))}
          </ul>
        </>
      )}
      {answer.complaint && (
        <>
          {answer.next === 'care' && (
            <ul className="look-list">
              {answer.complaint.care.map((care) => (
                <li key={care.en}>{say.spoken(care)}</li>
              ))}
            </ul>
          )}
          <p>{say.spoken(answer.complaint.vet)}</p>
        </>
      )}
      {to === 'keeper' && <p>{t('keeper.shopCalls')}</p>}
      <p className="field-hint">{t('sheet.vetOnly')}</p>
    </section>
  );
}
