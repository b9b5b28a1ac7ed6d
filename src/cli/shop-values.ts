// --shop-values FILE: a branch's own values from a file that the desk exported, laid over the facts, and how an answer
// says which of them it used. Leaves out the file's form (husbandry/shop-values-file.ts).
import type { OwnMark, ShopParts, ShopValue } from '../husbandry/shop-value.ts';
import { shopValuesFrom } from '../husbandry/shop-values-file.ts';
import type { UsedShopValues } from '../husbandry/used-shop-values.ts';
import { good, type Result } from '../shared/result.ts';
import type { Display } from './display.ts';
import { readJson } from './input.ts';
import type { Messages } from './messages/en.ts';
import type { RunContext } from './run-context.ts';
import type { Terminal } from './terminal.ts';
import { wrapped } from './wrap.ts';

/** No file, no values. Faults: those of reading a file, "SHOPVALUES_FORM". */
export async function shopValuesOf(file: string | null, run: RunContext): Promise<Result<readonly ShopValue[]>> {
  if (file === null) return good([]);
  const json = await readJson(file, run.terminal, run.messages);
  return json.ok ? shopValuesFrom(json.value) : json;
}

/** "45 to 65", "home-third", "20, 40". The unit stands in the path. */
const parts = (value: ShopParts, messages: Messages): string => {
  const { low, high } = value;
  if (low !== undefined && high !== undefined) return messages.own.range(String(low), String(high));
  return Array.isArray(value.values) ? value.values.join(', ') : String(value.value ?? '-');
};

export const ownWords = (own: OwnMark, messages: Messages): string =>
  messages.own.said(own.by, own.at.slice(0, 10), own.why);

/** Which shop values went into an answer; nothing when there are none. */
export function ownValueLines(
  used: UsedShopValues,
  terminal: Terminal,
  messages: Messages,
  show: Pick<Display, 'prose'>,
): string[] {
  const { own } = messages;
  const lines = used.shopValues.flatMap((one) => {
    const shipped = Object.keys(one.was).length > 0 ? ` ${own.shipped(parts(one.was, messages))}` : '';
    return wrapped(
      `${one.path}: ${parts(one.value, messages)}${shipped}, ${ownWords(one, messages)}`,
      terminal.columns,
      '  ',
    );
  });
  const refused = used.refusedShopValues.flatMap((fault) =>
    wrapped(`${fault.field}: ${own.refused} ${show.prose(fault.say)}`, terminal.columns, '  ? '),
  );
  return lines.length + refused.length === 0 ? [] : [terminal.paint.bold(own.title), ...lines, ...refused];
}
