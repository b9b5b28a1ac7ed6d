// The facts the sheet shows (species, sources, cautions), once the worker has read them.
import { useEffect, useState } from 'react';
import { useShopValues } from '../state/shop-values.ts';
import type { FactsBrief } from './protocol.ts';
import { steadyClient } from './steady-client.ts';

export function useFacts(): FactsBrief | null {
  const own = useShopValues();
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
  return facts;
}
