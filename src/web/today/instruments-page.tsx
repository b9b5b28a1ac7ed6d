// The shop's instruments on a page of their own: the place where a check that is due is done.
import '../proof/proof.css';
import { ask } from '../animal/animal-api.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { useAsked } from '../animal/use-asked.ts';
import { InstrumentPart } from '../proof/instrument-part.tsx';
import type { ShownInstruments } from '../proof/proof-api.ts';
import { useSheet } from '../settings/settings-context.tsx';

export function InstrumentsPage() {
  const { t } = useSheet();
  const { value, failed, again } = useAsked('instruments', () => ask<ShownInstruments>('/api/instruments'));
  if (value === null) return <NotReached failed={failed} again={again} />;
  return (
    <main className="today">
      <h1 className="visually-hidden">{t('proof.instruments')}</h1>
      <InstrumentPart shown={value} onChange={again} />
    </main>
  );
}
