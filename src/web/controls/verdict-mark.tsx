// Holds, fails or not known as a shape beside its word: a full ring with a tick, a struck square, an open diamond.
import type { Verdict } from '../../shared/verdict.ts';
import { useSheet } from '../settings/settings-context.tsx';

const shapes: Readonly<Record<Verdict, string>> = {
  holds: 'M10 1.5a8.5 8.5 0 1 0 .01 0zM5.6 10.3l3 3 5.8-6.4',
  fails: 'M2 2h16v16H2zM5.5 5.5l9 9M14.5 5.5l-9 9',
  'not-known': 'M10 1.2L18.8 10 10 18.8 1.2 10zM10 6v5M10 13.4v.6',
};

/** The shape alone, for a word of its own beside it. */
export function VerdictShape({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg viewBox="0 0 20 20" aria-hidden="true" className={`verdict-shape verdict-${verdict}`}>
      <path d={shapes[verdict]} />
    </svg>
  );
}

export function VerdictMark({ verdict, large = false }: { readonly verdict: Verdict; readonly large?: boolean }) {
  const { t } = useSheet();
  return (
    <span className={`verdict verdict-${verdict}${large ? ' verdict-large' : ''}`}>
      <svg viewBox="0 0 20 20" aria-hidden="true" className="verdict-shape">
        <path d={shapes[verdict]} />
      </svg>
      <span className="verdict-word">{t(`verdict.${verdict}`)}</span>
    </span>
  );
}
