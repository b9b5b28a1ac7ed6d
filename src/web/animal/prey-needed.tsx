// How much prey the coming weeks need, fewest to most.
import { useSheet } from '../settings/settings-context.tsx';
import { readPrey } from './animal-api.ts';
import { useSaying } from './say.ts';
import { useAsked } from './use-asked.ts';

const days = 28;

export function PreyNeeded() {
  const { t } = useSheet();
  const say = useSaying();
  const { value } = useAsked('prey', () => readPrey(days));
  if (value === null || (value.needs.length === 0 && value.unknown.length === 0)) return null;
  return (
    <details className="sheet-part">
      <summary>{t('animals.prey', { days })}</summary>
      <table className="plain-table">
        <tbody>
          {value.needs.map((need) => (
            <tr key={need.preyId}>
              <th scope="row">{say.prey(need.preyId)}</th>
              <td>{t('animals.preyLine', { low: need.low, high: need.high })}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {value.unknown.length > 0 && (
        <p className="field-hint">{t('animals.preyUnknown', { n: value.unknown.length })}</p>
      )}
    </details>
  );
}
