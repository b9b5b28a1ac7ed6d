// One refusal in this person's language; what has no words there is marked as English.
import type { Fault } from '../../shared/fault.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import { faultSentence } from '../messages/fault-words.ts';
import { useSheet } from '../settings/settings-context.tsx';

export function FaultText({ fault }: { readonly fault: Fault }) {
  const { settings, measure } = useSheet();
  const { text, lang } = faultSentence(fault, settings);
  return <span lang={lang}>{proseInUnits(text, measure)}</span>;
}
