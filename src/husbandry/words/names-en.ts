// English names of what stands in the blanks of a need's sentence: what a further language is made from. English
// sentences themselves are written by the rules.

const heaters: Readonly<Record<string, string>> = {
  'ceramic-emitter': 'ceramic emitter',
  'infrared-projector': 'infrared projector',
  'basking-lamp': 'basking lamp',
  'halogen-lamp': 'halogen lamp',
  'radiant-panel': 'radiant panel',
  'heat-mat': 'heat mat',
};

type Names = Readonly<Record<string, string>>;

export const namesEn = {
  heaters,
  thermostats: { 'on-off': 'on/off thermostat', pulse: 'pulse thermostat', dimming: 'dimming thermostat' } as Names,
  substrates: {
    'aspen-chips': 'aspen chips',
    paper: 'paper, several sheets',
    'loam-sand': 'loam with sand',
    'sand-dry': 'sand',
    'bark-chips': 'bark pieces',
    'coir-dry': 'coir',
    peat: 'peat',
    'peat-sand': 'peat with sand',
    loam: 'loam or garden soil, untreated',
    'loam-leaf-litter': 'loam under leaf litter',
  } as Names,
  thermometers: {
    'digital-probe': 'digital probe',
    'infrared-gun': 'infrared thermometer',
    'stick-on-dial': 'stick-on dial',
  } as Names,
  probePlaces: { air: 'in the air', wall: 'on the wall', floor: 'on the floor', mat: 'on the mat' } as Names,
  sides: {
    length: 'the length',
    width: 'the depth',
    height: 'the height',
    floor: 'the floor area',
    perimeter: 'the way round the floor',
    sum: 'length and depth together',
  } as Names,
  ends: { warm: 'warm', cool: 'cool' } as Names,
  places: { 'basking site': 'at the basking site', 'cool end': 'at the cool end' } as Names,
  warmPlaces: { hide: 'hide', end: 'end' } as Names,
  zones: { arid: 'arid', temperate: 'temperate', subtropical: 'subtropical', tropical: 'tropical' } as Names,
  units: {
    '% relative humidity': '% relative humidity',
    'K above the dew point': 'K above the dew point',
  } as Names,
  or: '{0} or {1}',
  and: '{0} and {1}',
  side: '{0} is {1}, {2} are needed',
  sumOf: '{0} length and depth together',
  round: '{0} round the floor',
  floorOf: '{0} of floor',
  long: '{0} long',
  deep: '{0} deep',
  high: '{0} high',
};

export type BlankNames = typeof namesEn;
