// What goes into the doors onto placements.
import { Type } from 'typebox';

const uuid = Type.String({ pattern: '^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$' });
const closed = { additionalProperties: false } as const;

export const placementParams = Type.Object({ id: uuid });
export const openPlacementBody = Type.Object({ enquiryId: uuid, animalId: uuid }, closed);
