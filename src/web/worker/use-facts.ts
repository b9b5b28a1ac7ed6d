// The facts the sheet shows (species, sources, cautions), once the worker has read them.
import { useEffect, useMemo, useState } from 'react';
import { useSheet } from '../settings/settings-context.tsx';
import { useShopValues } from '../state/shop-values.ts';
import type { FactsBrief } from './protocol.ts';
import { steadyClient } from './steady-client.ts';

export function useFacts(): FactsBrief | null {
  const own = useShopValues();
  const { factsSaid, measure } = useSheet();
  const [facts, setFacts] = useState<FactsBrief | null>(null);
  useEffect(() => {
    if (!own) return;
    let wanted = true;
    void steadyClient()
      .facts(own.values)
      .then((brief) => {
        if (wanted) setFacts(brief);
      });
    return () => {
      wanted = false;
    };
  }, [own]);
  return useMemo(() => (facts === null ? null : byName(factsSaid(facts), measure.locale)), [facts, factsSaid, measure]);
}

const byName = (facts: FactsBrief, locale: string): FactsBrief => ({
  ...facts,
  species: [...facts.species].sort((a, b) => a.commonName.localeCompare(b.commonName, locale)),
});
