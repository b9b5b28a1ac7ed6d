// What a kit is called: its heater, the one for the night if there is one, and the thermostat, by their names on the shelf.
import type { KitHeart } from '../../planning/kit/kit-enclosure.ts';
import type { Translate } from '../messages/translate.ts';

export const kitNameText = ({ heater, nightHeater, thermostat }: KitHeart, t: Translate): string =>
  nightHeater
    ? t('kits.namedNight', { heater: heater.name, night: nightHeater.name, thermostat: thermostat.name })
    : t('kits.named', { heater: heater.name, thermostat: thermostat.name });
