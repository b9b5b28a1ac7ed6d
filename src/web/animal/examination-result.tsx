// What the look-over came to: one word, what to do, what is told to whoever takes the animal, and what changed.
import { Button } from 'react-aria-components';
import type { ExaminationStep, SeenSign } from '../../animal/examination.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import type { Finished } from './animal-api.ts';
import { useSaying } from './say.ts';

interface ExaminationResultProps {
  readonly id: string;
  readonly steps: readonly ExaminationStep[];
  readonly finished: Finished;
  readonly tookMs: number;
}

export function ExaminationResult({ id, steps, finished, tookMs }: ExaminationResultProps) {
  const { t } = useSheet();
  const say = useSaying();
  const { verdict, comparison } = finished;
  const signOf = (flat: string): string => {
    const [stepId = '', signId = ''] = flat.split('.');
    const sign = steps.find((step) => step.id === stepId)?.signs.find((one) => one.id === signId);
    return sign ? say.spoken(sign.say) : flat;
  };
  const list = (flats: readonly string[]): string => flats.map(signOf).join('; ');
  const seconds = Math.round(tookMs / 1000);
  return (
    <main className="look-sheet look-done">
      <h1>{t(`look.result.${verdict.result}`)}</h1>
      <p className="field-hint">{t('look.took', { minutes: Math.floor(seconds / 60), seconds: seconds % 60 })}</p>
      {verdict.seen.length > 0 && (
        <ul className="finding-list">
          {verdict.seen.map((seen: SeenSign) => (
            <li key={`${seen.stepId}.${seen.sign.id}`} className={`finding sign-${seen.sign.urgency}`}>
              <span className="finding-name">{t(`urgency.${seen.sign.urgency}`)}</span>
              <span className="finding-why">{say.spoken(seen.sign.say)}</span>
            </li>
          ))}
        </ul>
      )}
      {verdict.isolate && <p className="look-vet">{t('look.isolate')}</p>}
      {verdict.disclose.length > 0 && (
        <p>{t('look.disclose', { what: verdict.disclose.map(({ sign }) => say.spoken(sign.say)).join('; ') })}</p>
      )}
      {comparison.fresh.length > 0 && <p>{t('look.fresh', { what: list(comparison.fresh) })}</p>}
      {comparison.still.length > 0 && <p>{t('look.still', { what: list(comparison.still) })}</p>}
      {comparison.gone.length > 0 && <p>{t('look.gone', { what: list(comparison.gone) })}</p>}
      <p className="field-hint">{t('sheet.vetOnly')}</p>
      <Button className="button button-large" onPress={() => go(`/animals/${id}`)}>
        {t('look.toAnimal')}
      </Button>
    </main>
  );
}
