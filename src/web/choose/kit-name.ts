// What a kit is called: its heater, the one for the night if there is one, and the thermostat, by their names on the shelf.
import type { KitHeart } from '../../planning/kit/kit-enclosure.ts';
import type { Translate } from '../messages/translate.ts';

/** @param fromFacts says a name of the starter shelf in the reader's language; a shop's own names stay */
export function kitNameText(
  { heater, nightHeater, thermostat }: KitHeart,
  t: Translate,
  fromFacts: (english: string) => string,
): string {
  const names = { heater: fromFacts(heater.name), thermostat: fromFacts(thermostat.name) };
  return nightHeater ? t('kits.namedNight', { ...names, night: fromFacts(nightHeater.name) }) : t('kits.named', names);
}
