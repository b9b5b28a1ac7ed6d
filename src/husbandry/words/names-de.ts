// German names of what stands in the blanks of a need's sentence: heaters, thermostats, floors, sides, places.
import type { BlankNames } from './names-en.ts';

export const namesDe: BlankNames = {
  heaters: {
    'ceramic-emitter': 'Keramikstrahler',
    'infrared-projector': 'Infrarotstrahler',
    'basking-lamp': 'Spotlampe',
    'halogen-lamp': 'Halogenlampe',
    'radiant-panel': 'Strahlungsplatte',
    'heat-mat': 'Heizmatte',
  },

  thermostats: {
    'on-off': 'Ein/Aus-Thermostat',
    pulse: 'Pulsthermostat',
    dimming: 'Dimmthermostat',
  },

  substrates: {
    'aspen-chips': 'Espenspäne',
    paper: 'Papier, einige Lagen',
    'loam-sand': 'Lehm mit Sand',
    'sand-dry': 'Sand',
    'bark-chips': 'Rindenstücke',
    'coir-dry': 'Kokosfaser',
    peat: 'Torf',
    'peat-sand': 'Torf mit Sand',
    loam: 'Lehm oder Gartenerde, unbehandelt',
    'loam-leaf-litter': 'Lehm unter Laub',
  },

  thermometers: {
    'digital-probe': 'digitaler Fühler',
    'infrared-gun': 'Infrarot-Thermometer',
    'stick-on-dial': 'aufgeklebtes Zeigerthermometer',
  },

  probePlaces: {
    air: 'frei in der Luft',
    wall: 'an der Wand',
    floor: 'am Boden',
    mat: 'an der Matte',
  },

  sides: {
    length: 'die Länge',
    width: 'die Tiefe',
    height: 'die Höhe',
    floor: 'die Bodenfläche',
    perimeter: 'der Umfang des Bodens',
    sum: 'Länge und Tiefe zusammen',
  },

  ends: { warm: 'warme', cool: 'kühle' },
  places: { 'basking site': 'am Sonnenplatz', 'cool end': 'am kühlen Ende' },
  warmPlaces: { hide: 'Versteck', end: 'Ende' },
  zones: {
    arid: 'trockener',
    temperate: 'gemäßigter',
    subtropical: 'subtropischer',
    tropical: 'tropischer',
  },
  units: {
    '% relative humidity': '% relative Luftfeuchte',
    'K above the dew point': 'K über dem Taupunkt',
  },

  or: '{0} oder {1}',
  and: '{0} und {1}',
  side: '{0} ist {1}, gebraucht werden {2}',
  sumOf: '{0} Länge und Tiefe zusammen',
  round: '{0} um den Boden herum',
  floorOf: '{0} Boden',
  long: '{0} lang',
  deep: '{0} tief',
  high: '{0} hoch',
};
