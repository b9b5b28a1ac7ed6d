// Moves a heater or a probe of an enclosure to a place in the box, kept inside it and snapped to whole centimetres.
import type { Enclosure, Heater, Thermostat } from '../../physics/enclosure.ts';

/** Nearest a body may come to a wall [m] (our choice; the maker's clearance rules where it is larger). */
const heaterClearM = 0.06;
const snapM = 0.01;

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), Math.max(low, high));
const snapped = (value: number): number => Math.round(value / snapM) * snapM;
const tidy = (value: number): number => Number(value.toFixed(4));

export interface Place {
  readonly xM: number;
  readonly yM: number;
  readonly zM: number;
}

/** Whether a heater's height can be chosen: mats, panels and domes above the mesh have none. */
export function heaterHasHeight(heater: Heater): boolean {
  return heater.mount === 'inside' && heater.kind !== 'heat-mat' && heater.kind !== 'radiant-panel';
}

export function movedHeater(enclosure: Enclosure, index: number, to: Partial<Place>): Enclosure {
  const { box, substrate } = enclosure;
  const heaters = enclosure.heaters.map((heater, at) => {
    if (at !== index) return heater;
    const halfX = Math.max(heaterClearM, (heater.lengthM ?? 0) / 2);
    const halfY = Math.max(heaterClearM, (heater.depthM ?? 0) / 2);
    const lowest = (substrate?.depthM ?? 0) + 0.1;
    return {
      ...heater,
      xM: tidy(clamp(snapped(to.xM ?? heater.xM), halfX, box.lengthM - halfX)),
      yM: tidy(clamp(snapped(to.yM ?? heater.yM), halfY, box.depthM - halfY)),
      zM: heaterHasHeight(heater) ? tidy(clamp(snapped(to.zM ?? heater.zM), lowest, box.heightM - 0.06)) : heater.zM,
    };
  });
  return { ...enclosure, heaters };
}

export function movedProbe(enclosure: Enclosure, index: number, to: Partial<Place>): Enclosure {
  const { box, substrate } = enclosure;
  const floorM = substrate?.depthM ?? 0;
  const thermostats = enclosure.thermostats.map((thermostat, at): Thermostat => {
    if (at !== index) return thermostat;
    const { probe } = thermostat;
    const flat = probe.at === 'floor' || probe.at === 'mat';
    return {
      ...thermostat,
      probe: {
        ...probe,
        xM: tidy(clamp(snapped(to.xM ?? probe.xM), 0.01, box.lengthM - 0.01)),
        yM: tidy(clamp(snapped(to.yM ?? probe.yM), 0.01, box.depthM - 0.01)),
        zM: flat ? probe.zM : tidy(clamp(snapped(to.zM ?? probe.zM), floorM + 0.01, box.heightM - 0.01)),
      },
    };
  });
  return { ...enclosure, thermostats };
}
