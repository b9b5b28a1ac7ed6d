// Fit, hold or vet as a shape beside its word: ring with a tick, raised hand bar, struck cross of lines.
import type { Fitness } from '../../animal/fitness.ts';
import { useSheet } from '../settings/settings-context.tsx';

const shapes: Readonly<Record<Fitness, string>> = {
  fit: 'M10 1.5a8.5 8.5 0 1 0 .01 0zM5.6 10.3l3 3 5.8-6.4',
  hold: 'M10 1.5a8.5 8.5 0 1 0 .01 0zM5 10h10',
  vet: 'M2 2h16v16H2zM10 5v10M5 10h10',
  gone: 'M3 10h12M11 5.5l4.5 4.5-4.5 4.5',
};

export function FitnessMark({ fitness, large = false }: { readonly fitness: Fitness; readonly large?: boolean }) {
  const { t } = useSheet();
  return (
    <span className={`fitness fitness-${fitness}${large ? ' fitness-large' : ''}`}>
      <svg viewBox="0 0 20 20" aria-hidden="true" className="verdict-shape">
        <path d={shapes[fitness]} />
      </svg>
      <span>{t(`fit.${fitness}`)}</span>
    </span>
  );
}
