// The turned box, behind one line: fetched and drawn only when somebody asks for it.
import { lazy, Suspense, useState } from 'react';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Readings } from '../pictures/readings.ts';
import type { WantedClimate } from '../pictures/wanted.ts';
import { useSheet } from '../settings/settings-context.tsx';

const TurnedFigure = lazy(async () => ({
  default: (await import('../pictures/turned/turned-figure.tsx')).TurnedFigure,
}));

interface TurnedPartProps {
  readonly enclosure: Enclosure;
  readonly readings: Readings | null;
  readonly climate: WantedClimate | null;
}

export function TurnedPart(props: TurnedPartProps) {
  const { t } = useSheet();
  const [open, setOpen] = useState(false);
  return (
    <details className="table-behind turned-part" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{t('turned.open')}</summary>
      {open && (
        <Suspense fallback={<p>{t('open.waiting')}</p>}>
          <TurnedFigure {...props} />
        </Suspense>
      )}
    </details>
  );
}
