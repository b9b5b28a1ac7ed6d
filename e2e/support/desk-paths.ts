// Where every sheet of the desk lies in a full shop, for journeys that read them all in one language.

export interface DeskIds {
  readonly enquiry: string;
  readonly animal: string;
  readonly placement: string;
  readonly released: string;
  readonly keeper: string;
}

export const deskPaths = (ids: DeskIds): readonly string[] => [
  '/',
  `/plan/${ids.enquiry}`,
  `/proof/${ids.enquiry}`,
  '/animals',
  `/animals/${ids.animal}`,
  `/animals/${ids.animal}/look-over`,
  '/round',
  '/register',
  '/call',
  '/species',
  '/species/corn',
  '/space/corn',
  '/shelf',
  '/placements',
  `/placement/${ids.placement}`,
  `/placement/${ids.released}`,
  '/today',
  `/aftercare/${ids.released}`,
  '/own-figures',
  '/instruments',
  '/lists',
  `/k/${ids.keeper}`,
  '/people',
  '/account',
];
