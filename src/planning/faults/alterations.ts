// Small changes to a home that faults and guards are made of. Each gives a new enclosure and touches nothing else.
import type { Enclosure, Heater, Thermostat } from '../../physics/enclosure.ts';
import { mainHeater, warmEndOf } from '../../physics/grid.ts';

export const mainThermostatOf = (e: Enclosure): number => {
  const main = e.heaters[mainHeater(e)];
  return main ? e.thermostats.findIndex((t) => t.id === main.thermostatId) : -1;
};

export const withThermostats = (
  e: Enclosure,
  change: (t: Thermostat, index: number) => Partial<Thermostat>,
): Enclosure => ({
  ...e,
  thermostats: e.thermostats.map((t, i) => ({ ...t, ...change(t, i) })),
});

export const withHeaters = (e: Enclosure, change: (h: Heater, index: number) => Partial<Heater>): Enclosure => ({
  ...e,
  heaters: e.heaters.map((h, i) => ({ ...h, ...change(h, i) })),
});

/** The main thermostat's probe on the same wall at the other end. */
export function probeAtCoolEnd(e: Enclosure): Enclosure {
  const main = mainThermostatOf(e);
  const far = warmEndOf(e) === 'left' ? e.box.lengthM - 0.1 : 0.1;
  return withThermostats(e, (t, i) =>
    i === main ? { probe: { ...t.probe, xM: far, at: t.probe.at === 'mat' ? 'floor' : t.probe.at } } : {},
  );
}

export const bowlAtWarmEnd = (e: Enclosure): Enclosure => ({
  ...e,
  bowl: e.bowl && {
    ...e.bowl,
    xM: warmEndOf(e) === 'left' ? e.bowl.diameterM / 2 + 0.05 : e.box.lengthM - e.bowl.diameterM / 2 - 0.05,
  },
});

/** Every planned opening shut, mesh covered: only the gaps are left. */
export const airtight = (e: Enclosure): Enclosure => ({
  ...e,
  box: {
    ...e.box,
    vents: [],
    panels: { ...e.box.panels, top: { ...e.box.panels.top, meshCoveredFrac: 0.98 } },
  },
});

/** A front door that stands open by a slit over its whole height. */
export const doorAjar = (e: Enclosure, slitM: number): Enclosure => ({
  ...e,
  box: {
    ...e.box,
    gapAreaM2: e.box.gapAreaM2 + slitM * e.box.heightM,
    vents: [
      ...e.box.vents,
      {
        panel: 'front',
        alongM: e.box.lengthM / 2,
        heightM: e.box.heightM * 0.25,
        areaM2: (slitM * e.box.heightM) / 2,
        openFrac: 1,
      },
      {
        panel: 'front',
        alongM: e.box.lengthM / 2,
        heightM: e.box.heightM * 0.75,
        areaM2: (slitM * e.box.heightM) / 2,
        openFrac: 1,
      },
    ],
  },
});

/** 25 mm of foam outside on all but the front and mesh; for rehearsing it as a guard. */
export function insulated(e: Enclosure, materialId: string, thicknessM: number): Enclosure {
  const { panels } = e.box;
  const foam = { materialId, thicknessM };
  const foamedPanel = (name: keyof typeof panels) =>
    name === 'front' ||
    (panels[name].meshShareFrac ?? 0) > 0 ||
    (name === 'bottom' && e.heaters.some((h) => h.mount === 'under-floor'))
      ? panels[name]
      : { ...panels[name], layers: [...panels[name].layers, foam] };
  return {
    ...e,
    box: {
      ...e.box,
      panels: {
        front: foamedPanel('front'),
        back: foamedPanel('back'),
        left: foamedPanel('left'),
        right: foamedPanel('right'),
        top: foamedPanel('top'),
        bottom: foamedPanel('bottom'),
      },
    },
  };
}
