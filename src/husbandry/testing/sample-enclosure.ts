// One sound enclosure to start tests from: a grown corn snake's wooden box in which every rule of this room holds.
// Leaves out: being a recommendation. Tests change one thing at a time.
import { type Enclosure, enclosureFormat, enclosureVersion, type Panel } from '../../physics/enclosure.ts';

const wood: Panel = { layers: [{ materialId: 'plywood-500', thicknessM: 0.015 }] };

export const sampleEnclosure: Enclosure = {
  format: enclosureFormat,
  version: enclosureVersion,
  name: 'sample',
  box: {
    lengthM: 1.5,
    depthM: 0.6,
    heightM: 0.6,
    panels: {
      front: { layers: [{ materialId: 'glass', thicknessM: 0.004 }] },
      back: wood,
      left: wood,
      right: wood,
      top: wood,
      bottom: wood,
    },
    vents: [],
    gapAreaM2: 0.0005,
    widestGapM: 0.004,
    base: { kind: 'shelf' },
  },
  heaters: [
    {
      id: 'emitter',
      kind: 'ceramic-emitter',
      powerW: 150,
      mount: 'inside',
      xM: 0.3,
      yM: 0.3,
      zM: 0.48,
      guarded: true,
      thermostatId: 'pulse',
      period: 'all',
      holder: 'ceramic',
    },
  ],
  thermostats: [
    {
      id: 'pulse',
      control: 'pulse',
      probe: { xM: 0.5, yM: 0.59, zM: 0.13, at: 'wall' },
      setDayC: 29,
      setNightC: 25,
      bandK: 1,
      cycleS: 4,
      ratingW: 300,
      cutOutC: 38,
    },
  ],
  day: { startH: 8, endH: 20 },
  substrate: { materialId: 'aspen-chips', depthM: 0.03, wetFrac: 0 },
  hides: [
    { xM: 0.3, yM: 0.3, lengthM: 0.25, depthM: 0.2, heightM: 0.1 },
    { xM: 1.2, yM: 0.3, lengthM: 0.25, depthM: 0.2, heightM: 0.1 },
  ],
  bowl: { xM: 1.3, yM: 0.2, diameterM: 0.25 },
  perch: null,
  misting: null,
  coverFrac: 0.4,
  lock: 'lock',
  thermometers: [
    { place: 'basking', kind: 'digital-probe' },
    { place: 'cool-end', kind: 'digital-probe' },
  ],
  room: {
    winter: { lowC: 18, highC: 21, rhPct: 45, sunPeakWPerM2: 0 },
    summer: { lowC: 21, highC: 27, rhPct: 50, sunPeakWPerM2: 0 },
  },
  animal: { speciesId: 'corn', stage: 'adult', totalLengthM: 1.2, massG: 600 },
};
