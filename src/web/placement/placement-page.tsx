// One placement on one sheet: the thread from enquiry to aftercare, every requirement with its evidence.
import { NotReached } from '../animal/not-reached.tsx';
import { useAsked } from '../animal/use-asked.ts';
import { useSpecies } from '../animal/use-species.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { type PlacementSheet, readPlacement } from './placement-api.ts';
import { StateMark } from './placement-mark.tsx';
import { RequirementsPart } from './requirements-part.tsx';
import { ThreadPart } from './thread-part.tsx';

export function PlacementPage({ id }: { readonly id: string }) {
  const { value, failed, again } = useAsked(`placement-${id}`, () => readPlacement(id));
  if (value === null) return <NotReached failed={failed} again={again} />;
  return <Sheet sheet={value} />;
}

function Sheet({ sheet }: { readonly sheet: PlacementSheet }) {
  const { t } = useSheet();
  const { nameOf } = useSpecies();
  return (
    <main className="placement">
      <div className="sheet-head">
        <StateMark state={sheet.state} />
        <h1>{t('placement.title', { name: sheet.animal.callName || sheet.animal.id.slice(0, 8) })}</h1>
        <p className="lead">
          {nameOf(sheet.animal.speciesId)} · {sheet.enquiry.title}
        </p>
      </div>
      <ThreadPart sheet={sheet} />
      <RequirementsPart sheet={sheet} />
    </main>
  );
}
