// What may be seen instead of normal: touched on or off, with its urgency as a word and a bar, and where it comes from.
import type { ExaminationStep } from '../../animal/examination.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useSaying } from './say.ts';

interface SignListProps {
  readonly step: ExaminationStep;
  readonly chosen: readonly string[];
  readonly onChange: (signs: readonly string[]) => void;
}

export function SignList({ step, chosen, onChange }: SignListProps) {
  const { t } = useSheet();
  const say = useSaying();
  return (
    <fieldset className="sign-list">
      <legend>{t('look.seen')}</legend>
      {step.signs.map((sign) => (
        <label key={sign.id} className={`sign sign-${sign.urgency}`}>
          <input
            type="checkbox"
            checked={chosen.includes(sign.id)}
            onChange={(event) =>
              onChange(event.target.checked ? [...chosen, sign.id] : chosen.filter((id) => id !== sign.id))
            }
          />
          <span className="sign-say">
            {say.spoken(sign.say)}
            <span className="sign-urgency">
              {t(`urgency.${sign.urgency}`)}
              {sign.read === 'memory' && ` · ${t('look.memory')}`}
            </span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}
