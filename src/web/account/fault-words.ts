// What a refusal is called in this person's language: by its code and, for a password, by why.

import type { Fault } from '../../shared/fault.ts';
import type { Asked } from '../animal/animal-api.ts';
import type { MessageKey } from '../messages/en.ts';
import type { Translate } from '../messages/translate.ts';
import { isMessageKey } from '../messages/translate.ts';

/** One sentence for a fault; what is not known here is said as it came. */
export function faultWords(fault: Fault, t: Translate): string {
  const detailed = `acc.fault.${fault.code}.${fault.got}`;
  const plain = `acc.fault.${fault.code}`;
  const seconds = /(\d+) s/.exec(fault.got)?.[1] ?? '';
  if (isMessageKey(detailed)) return t(detailed);
  if (isMessageKey(plain)) return t(plain, { seconds });
  // Only other languages than English have a sentence of their own for every code.
  const own: string | undefined = t(`fault.${fault.code}` as MessageKey);
  return own ?? `${fault.say} ${fault.fix}`;
}

/** Faults by the field they belong to; those of no field that stands on the sheet under "". */
export function faultsByField(
  answer: Asked<unknown> | null,
  fields: readonly string[],
  t: Translate,
): Readonly<Record<string, string>> {
  if (answer === null || answer.ok) return {};
  if (answer.status === 0) return { '': t('acc.unreached') };
  const found: Record<string, string> = {};
  for (const fault of answer.faults) {
    const field = fields.includes(fault.field) ? fault.field : '';
    found[field] = [found[field], faultWords(fault, t)].filter(Boolean).join(' ');
  }
  return found;
}
