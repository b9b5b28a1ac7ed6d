// What a search found, in the language and units shown: names of kits, why one fell out or is refused, why none holds.
// Leaves out how it is laid out (plan-search-text.ts). An English answer stays as the planning room wrote it.
import type { NeedVerdict } from '../husbandry/need.ts';
import type { KitHeart } from '../planning/kit/kit-enclosure.ts';
import { type RefusalSays, withoutWatts } from '../planning/kit/refusal.ts';
import type { FellOut } from '../planning/search/search-answer.ts';
import type { ChooseWords } from './choose-words.ts';
import type { Display } from './display.ts';
import { factSaid, needSaid, needTitle, saidIn } from './need-words.ts';
import type { SearchText } from './plan-search-text.ts';

export interface Speaker {
  readonly show: Display;
  readonly words: ChooseWords;
}

export function kitName({ heart }: { readonly heart: KitHeart }, { show, words }: Speaker): string {
  const [heater, thermostat] = [factSaid(show, heart.heater.name), factSaid(show, heart.thermostat.name)];
  return heart.nightHeater
    ? words.namedNight(heater, factSaid(show, heart.nightHeater.name), thermostat)
    : words.named(heater, thermostat);
}

export function fellOutSaid({ need }: FellOut, { show, words }: Speaker): string {
  if (!need) return words.fellOutPinch;
  const { title, found, wanted } = needSaid(need, show);
  return words.fellOutSay(title, found, wanted);
}

export function refusalSaid({ why, needId, told }: RefusalSays, show: Display): string {
  if (needId === null) return saidIn(show, told, why);
  const cut = why.indexOf(': ');
  const reason = withoutWatts(saidIn(show, told, why.slice(cut + 2)));
  return `${needTitle(show, needId, why.slice(0, cut))}: ${reason}`;
}

export function titleAndReason(need: NeedVerdict, { show }: Speaker): string {
  const { title, reasons } = needSaid(need, show);
  return `${title}: ${reasons[0] ?? ''}`;
}

/** Share of versions: said by the chance beside it. */
const doubt = 'climate.doubt';

export function noneSaid({ answer, show, words }: SearchText): string {
  const first = answer.choices[0];
  if (!first) return words.noneAllowed;
  const need = answer.noneNeed;
  const head = words[first.verdict === 'fails' ? 'noneFails' : 'noneSure'];
  if (!need) return head;
  const { title, reasons } = needSaid(need, show);
  return [head, `${title}:`, ...reasons.filter((_, i) => need.told?.reasons[i]?.code !== doubt)].join(' ');
}
