// Where a placement or a requirement stands, as a shape beside its word; never by colour alone.
import type { RequirementAnswer } from '../../proving/release/requirement.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { PlacementState } from './placement-api.ts';

const shapes = {
  met: 'M10 1.5a8.5 8.5 0 1 0 .01 0zM5.6 10.3l3 3 5.8-6.4',
  'not-met': 'M2 2h16v16H2zM5.5 5.5l9 9M14.5 5.5l-9 9',
  'not-known': 'M10 1.2L18.8 10 10 18.8 1.2 10zM10 6v5M10 13.4v.6',
  // A door: shut with its bar, open, and barred.
  open: 'M4 2h12v16H4zM4 10h12',
  released: 'M4 2h12v16H4zM4 2l8 3v13l-8 -0',
  refused: 'M4 2h12v16H4zM4 2l12 16',
} as const;

function Shape({ of }: { readonly of: keyof typeof shapes }) {
  return (
    <svg viewBox="0 0 20 20" aria-hidden="true" className="verdict-shape">
      <path d={shapes[of]} />
    </svg>
  );
}

export function RequirementMark({
  answer,
  overridden,
}: {
  readonly answer: RequirementAnswer;
  readonly overridden: boolean;
}) {
  const { t } = useSheet();
  return (
    <span className={`verdict requirement-${answer}`}>
      <Shape of={answer} />
      <span className="verdict-word">
        {t(`requirement.${answer}`)}
        {overridden && <small className="overridden">{t('requirement.overridden')}</small>}
      </span>
    </span>
  );
}

export function StateMark({ state }: { readonly state: PlacementState }) {
  const { t } = useSheet();
  return (
    <span className={`verdict placement-${state}`}>
      <Shape of={state} />
      <span className="verdict-word">{t(`placement.state.${state}`)}</span>
    </span>
  );
}
