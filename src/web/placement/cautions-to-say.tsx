// What is said aloud before somebody states that it was explained. Nothing of it is ticked, so that nothing of it is kept.
import type { RequirementId } from '../../proving/release/requirement.ts';
import { useSheet } from '../settings/settings-context.tsx';

const spoken = {
  cautions: ['caution.electric', 'caution.fire', 'caution.burns', 'caution.escape', 'caution.illness'],
  household: [
    'household.lead',
    'household.under5',
    'household.over65',
    'household.pregnant',
    'household.immunity',
    'household.who',
  ],
  vet: ['vet.askSnakes', 'vet.askWho', 'vet.askNights'],
} as const;

export function CautionsToSay({ id }: { readonly id: RequirementId }) {
  const { t } = useSheet();
  if (id !== 'cautions' && id !== 'household' && id !== 'vet') return null;
  return (
    <ul className="to-say">
      {spoken[id].map((key) => (
        <li key={key}>{t(key)}</li>
      ))}
    </ul>
  );
}
