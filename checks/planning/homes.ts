// The homes of the eight invented scenarios, built from the examples: who lives where is in scenarios.json.
import { readFileSync } from 'node:fs';
import { climateNeeds } from '../../src/husbandry/climate-needs.ts';
import type { Enclosure, Panel, RoomDay } from '../../src/physics/enclosure.ts';
import type { Priors } from '../../src/planning/ensemble.ts';
import type { SearchInput } from '../../src/planning/search/search-input.ts';
import { shelfFrom } from '../../src/planning/shelf/validate-shelf.ts';
import { loadFacts } from '../../src/records/facts.ts';

const data = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../data/${path}`, import.meta.url), 'utf8'));
export const facts = loadFacts(new URL('../../data', import.meta.url).pathname).facts;
export const priors = data('priors.json') as Priors;
const example = (name: string): Enclosure => data(`examples/${name}.json`) as Enclosure;

const roomOf = (winter: Partial<RoomDay>, summer: Partial<RoomDay>): Enclosure['room'] => ({
  winter: { lowC: 19, highC: 21, rhPct: 50, sunPeakWPerM2: 0, ...winter },
  summer: { lowC: 20, highC: 23, rhPct: 50, sunPeakWPerM2: 0, ...summer },
});

const wood = example('wood-1200');

/** A flat between 19 and 23 degrees, a grown corn snake of 95 cm. */
export const flat: Enclosure = {
  ...wood,
  room: roomOf({ lowC: 19, highC: 21 }, { lowC: 20, highC: 23 }),
  animal: { speciesId: 'corn', stage: 'adult', totalLengthM: 0.95, massG: 420 },
};

/** A loft that falls to 8 degrees before dawn. The same box and animal. */
export const loft: Enclosure = {
  ...wood,
  room: roomOf({ lowC: 8, highC: 12, rhPct: 55 }, { lowC: 18, highC: 26 }),
  animal: { speciesId: 'corn', stage: 'adult', totalLengthM: 1.15, massG: 560 },
};

/** A room of glass: 9 degrees in January, 38 and sun in July. */
export const conservatory: Enclosure = {
  ...wood,
  room: roomOf({ lowC: 9, highC: 14 }, { lowC: 24, highC: 38, sunPeakWPerM2: 400, sunFromH: 10, sunToH: 16 }),
  animal: { speciesId: 'corn', stage: 'adult', totalLengthM: 1.1, massG: 560 },
};

/** A starter tub at 19 degrees with a 12 W mat, a hatchling kingsnake. */
const tubExample = example('tub-mat-600');
export const tub: Enclosure = {
  ...tubExample,
  heaters: tubExample.heaters.map((h) => ({ ...h, powerW: 12 })),
  room: roomOf({ lowC: 19, highC: 19, rhPct: 45 }, { lowC: 20, highC: 24, rhPct: 50 }),
};

/** Glass under open mesh in a dry town house, a young rainbow boa. */
const mesh = example('glass-mesh-900');
export const meshHouse: Enclosure = {
  ...mesh,
  box: { ...mesh.box, panels: { ...mesh.box.panels, top: { ...mesh.box.panels.top, meshCoveredFrac: 0 } } },
  heaters: mesh.heaters.map((h, i) => (i === 0 ? { ...h, powerW: 75 } : h)),
  substrate: { materialId: 'coir-dry', depthM: 0.05, wetFrac: 0.2 },
  room: roomOf({ lowC: 19, highC: 20, rhPct: 35 }, { lowC: 20, highC: 24, rhPct: 45 }),
  animal: { speciesId: 'rainbow', stage: 'young', totalLengthM: 0.7, massG: 150 },
};
export const meshCovered: Enclosure = {
  ...meshHouse,
  box: {
    ...meshHouse.box,
    panels: { ...meshHouse.box.panels, top: { ...meshHouse.box.panels.top, meshCoveredFrac: 0.8 } },
  },
};

/** A royal python of 140 cm that grows, in the box she has and in a larger one. */
const large = example('large-wood-1800');
const royal = { speciesId: 'royal', stage: 'adult' as const, totalLengthM: 1.4, massG: 1900 };
export const growing: Enclosure = {
  ...wood,
  room: roomOf({ lowC: 16, highC: 19 }, { lowC: 20, highC: 25 }),
  animal: royal,
};
export const grown: Enclosure = {
  ...large,
  box: { ...large.box, lengthM: 1.8, depthM: 0.75, heightM: 0.75 },
  room: growing.room,
  animal: { ...royal, totalLengthM: 1.8 },
};

/** The same box with foam on everything but the front. */
export function foamed(e: Enclosure): Enclosure {
  const foam = { materialId: 'xps', thicknessM: 0.025 };
  const thick = (p: Panel): Panel => ({ ...p, layers: [...p.layers, foam] });
  const { front, back, left, right, top, bottom } = e.box.panels;
  return {
    ...e,
    box: {
      ...e.box,
      panels: {
        front,
        back: thick(back),
        left: thick(left),
        right: thick(right),
        top: thick(top),
        bottom: thick(bottom),
      },
    },
  };
}

/** A search in this home with the starter shelf. @param members few: these are expectations, not verdicts to rely on */
export function searchIn(enclosure: Enclosure, members = 20): SearchInput {
  const animal = enclosure.animal!;
  const species = facts.species[animal.speciesId]!;
  const climate = climateNeeds(species, animal.stage);
  const shelf = shelfFrom(data('shelf/starter.json'));
  if (!climate.ok || !shelf.ok) throw new Error('data/ is damaged');
  return {
    enclosure,
    climate: climate.value,
    species,
    standard: null,
    facts,
    priors,
    shelf: shelf.value,
    ownedIds: [],
    drawnIsOwned: false,
    boxIds: [],
    members,
    seed: 1,
    tariffPerKWh: 0.2486,
    years: 5,
  };
}
