// What the reference screens asked for, with the texts of the facts in this person's language.
import { useMemo } from 'react';
import type { Asked } from '../animal/animal-api.ts';
import { type AskedState, useAsked } from '../animal/use-asked.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { OwnValues } from './reference-api.ts';

/** What the shop itself has written (overlays) stays as it is. */
export function useReference<T extends OwnValues>(key: string, question: () => Promise<Asked<T>>): AskedState<T> {
  const { factsSaid } = useSheet();
  const asked = useAsked(key, question);
  const { value } = asked;
  const said = useMemo(
    () => (value === null ? null : { ...factsSaid(value), overlays: value.overlays, refused: value.refused }),
    [value, factsSaid],
  );
  return { ...asked, value: said };
}
