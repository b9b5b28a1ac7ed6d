// What the shop computer refused, each with what to do; or that it was not reached.
import type { Asked } from '../animal/animal-api.ts';
import { FaultText } from '../controls/fault-text.tsx';
import { useSheet } from '../settings/settings-context.tsx';

export function Faults({ answer }: { readonly answer: Asked<unknown> | null }) {
  const { t } = useSheet();
  if (answer === null || answer.ok) return null;
  if (answer.status === 0) return <p className="field-fault">{t('proof.notSent')}</p>;
  return (
    <ul className="proof-faults" role="alert">
      {answer.faults.map((fault) => (
        <li key={`${fault.code}${fault.field}`} className="field-fault">
          <FaultText fault={fault} />
        </li>
      ))}
    </ul>
  );
}
