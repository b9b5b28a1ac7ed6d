// A shop's own value in words: which fact, what it says now, what it said before, who set it, when and why.
import type { ShopValue } from '../../shop-values.ts';
import { shortened, type Tongue } from '../tongue.ts';

export function shopValueInWords(one: ShopValue, tongue: Tongue, mostLetters: number): string {
  const { w, day, typed } = tongue;
  const key = one.path.slice(one.path.lastIndexOf('.') + 1);
  return w.decision.value(
    w.values[key] ?? typed(one.path),
    amount(key, one.value, tongue),
    amount(key, one.was, tongue),
    typed(shortened(one.why, mostLetters)),
    typed(one.by),
    day(one.at.slice(0, 10)),
  );
}

function amount(key: string, value: ShopValue['value'], { w, m, temp, typed }: Tongue): string {
  const { low, high, value: single } = value as { low?: unknown; high?: unknown; value?: unknown };
  const write = (x: unknown): string => {
    if (typeof x !== 'number') return x === undefined || x === null ? w.notKnown : typed(String(x));
    const digits = Number.isInteger(x) ? 0 : 1;
    if (key.endsWith('C')) return temp(x, digits);
    if (key.endsWith('K')) return m.text('difference', x, digits);
    if (key.endsWith('Pct')) return m.text('percent', x);
    if (key.endsWith('Cm')) return m.text('length', x / 100, digits);
    if (key.endsWith('Mm'))
      return m.settings.length === 'in' ? m.text('length', x / 1000, 2) : `${m.number(x, digits)}\u00a0mm`;
    if (key.endsWith('G')) return m.text('mass', x, digits);
    return m.number(x, digits);
  };
  if (low === undefined && high === undefined) return write(single);
  return low === high || high === undefined
    ? write(low)
    : low === undefined
      ? write(high)
      : `${write(low)} ${w.to} ${write(high)}`;
}
