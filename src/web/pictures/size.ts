// The same home in a box of another size: what stands in it moves along to scale, keeps its own size where it can, and stays
// inside. Leaves out: whether the animal still has room (husbandry) and a box of the shelf (planning/kit/shelf-box.ts).
import type { Box, Enclosure, Heater, Thermostat, Vent } from '../../physics/enclosure.ts';

export type BoxSize = Pick<Box, 'lengthM' | 'depthM' | 'heightM'>;

/** Sizes that can be asked for [m]; our choice, within what an enclosure file may hold. */
export const sizeLimits = { lengthM: [0.3, 3], depthM: [0.2, 1.5], heightM: [0.15, 2] } as const;

const tidy = (value: number): number => Number(value.toFixed(4));
const inside = (at: number, size: number, span: number): number =>
  tidy(Math.max(size / 2, Math.min(span - size / 2, at)));

export function sizedBox(enclosure: Enclosure, size: BoxSize): Enclosure {
  const { box } = enclosure;
  const x = size.lengthM / box.lengthM;
  const y = size.depthM / box.depthM;
  const z = size.heightM / box.heightM;
  const { lengthM: L, depthM: D, heightM: H } = size;
  const substrate = enclosure.substrate && {
    ...enclosure.substrate,
    depthM: tidy(Math.min(enclosure.substrate.depthM, H / 3)),
  };
  const floorM = substrate?.depthM ?? 0;
  return {
    ...enclosure,
    box: {
      ...box,
      ...size,
      vents: box.vents.map((vent) => sizedVent(vent, box, size)),
      gapAreaM2: tidy(box.gapAreaM2 * z * 1000) / 1000,
    },
    substrate,
    heaters: enclosure.heaters.map((heater) => sizedHeater(heater, box, size, floorM)),
    thermostats: enclosure.thermostats.map((thermostat) => sizedProbe(thermostat, box, size, floorM)),
    hides: enclosure.hides.map((hide) => {
      const lengthM = tidy(Math.min(hide.lengthM, L * 0.45));
      const depthM = tidy(Math.min(hide.depthM, D * 0.9));
      const heightM = tidy(Math.min(hide.heightM, (H - floorM) * 0.8));
      return {
        ...hide,
        lengthM,
        depthM,
        heightM,
        xM: inside(hide.xM * x, lengthM, L),
        yM: inside(hide.yM * y, depthM, D),
      };
    }),
    bowl: enclosure.bowl && sizedBowl(enclosure.bowl, { x, y }, size),
    perch: enclosure.perch && {
      xM: inside(enclosure.perch.xM * x, 0.02, L),
      yM: inside(enclosure.perch.yM * y, 0.02, D),
      zM: inside(enclosure.perch.zM * z, 0.02, H),
    },
  };
}

function sizedBowl(bowl: NonNullable<Enclosure['bowl']>, by: { x: number; y: number }, { lengthM, depthM }: BoxSize) {
  const diameterM = tidy(Math.min(bowl.diameterM, depthM * 0.8, lengthM * 0.4));
  return {
    ...bowl,
    diameterM,
    xM: inside(bowl.xM * by.x, diameterM, lengthM),
    yM: inside(bowl.yM * by.y, diameterM, depthM),
  };
}

/** A vent keeps its open area and its place on its panel. */
function sizedVent(vent: Vent, box: Box, size: BoxSize): Vent {
  const isEnd = vent.panel === 'left' || vent.panel === 'right';
  const along = isEnd ? size.depthM / box.depthM : size.lengthM / box.lengthM;
  const up = vent.panel === 'top' || vent.panel === 'bottom' ? size.depthM / box.depthM : size.heightM / box.heightM;
  return { ...vent, alongM: tidy(vent.alongM * along), heightM: tidy(vent.heightM * up) };
}

/** Keeps its distance to the lid; what lies on or under the floor stays there. */
function sizedHeater(heater: Heater, box: Box, { lengthM: L, depthM: D, heightM: H }: BoxSize, floorM: number): Heater {
  const lengthM = heater.lengthM === undefined ? 0.12 : tidy(Math.min(heater.lengthM, L * 0.9));
  const depthM = heater.depthM === undefined ? 0.12 : tidy(Math.min(heater.depthM, D * 0.95));
  const belowLidM = box.heightM - heater.zM;
  const lowest = Math.min(H - 0.06, floorM + 0.1);
  const hangs = heater.mount === 'inside' || heater.mount === 'above-mesh' || heater.mount === 'ceiling';
  const zM = heater.mount === 'inside' ? Math.max(lowest, H - belowLidM) : hangs ? H - belowLidM : heater.zM;
  return {
    ...heater,
    ...(heater.lengthM === undefined ? {} : { lengthM }),
    ...(heater.depthM === undefined ? {} : { depthM }),
    xM: inside((heater.xM * L) / box.lengthM, lengthM, L),
    yM: inside((heater.yM * D) / box.depthM, depthM, D),
    zM: tidy(zM),
  };
}

/** A probe stays at its share of length and depth, and as high as it is where the box allows. */
function sizedProbe(
  thermostat: Thermostat,
  box: Box,
  { lengthM: L, depthM: D, heightM: H }: BoxSize,
  floorM: number,
): Thermostat {
  const { probe } = thermostat;
  const flat = probe.at === 'floor' || probe.at === 'mat';
  // one on the back wall keeps its distance to it
  const behindM = box.depthM - probe.yM;
  const yM = probe.at === 'wall' && behindM < 0.05 ? D - behindM : (probe.yM * D) / box.depthM;
  const zM = flat ? probe.zM : tidy(Math.max(floorM + 0.01, Math.min(probe.zM, H - 0.02)));
  return {
    ...thermostat,
    probe: { ...probe, xM: inside((probe.xM * L) / box.lengthM, 0.02, L), yM: inside(yM, 0.02, D), zM },
  };
}
