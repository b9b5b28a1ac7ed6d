// The facts the sheet shows (species, sources, cautions), once the worker has read them.
import { useEffect, useState } from 'react';
import type { FactsBrief } from './protocol.ts';
import { steadyClient } from './steady-client.ts';

export function useFacts(): FactsBrief | null {
  const [facts, setFacts] = useState<FactsBrief | null>(null);
  useEffect(() => {
    let wanted = true;
    void steadyClient()
      .facts()
      .then((brief) => {
        if (wanted) setFacts(brief);
      });
    return () => {
      wanted = false;
    };
  }, []);
  return facts;
}
