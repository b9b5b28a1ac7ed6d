// What goes into the doors onto placements.
import { Type } from 'typebox';
import { refusalReasons, returnReasons } from '../desk/refuse-sale.ts';

const uuid = Type.String({ pattern: '^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$' });
const closed = { additionalProperties: false } as const;
const token = Type.String({
  pattern: '^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$',
  description: 'Made by the device, the same whenever it sends this again: sent twice, done once.',
});
const words = Type.String({ maxLength: 500 });
const oneOf = <T extends string>(values: readonly T[]) => Type.Union(values.map((value) => Type.Literal(value)));

export const placementParams = Type.Object({ id: uuid });
export const openPlacementBody = Type.Object({ enquiryId: uuid, animalId: uuid }, closed);
export const statementBody = Type.Object(
  {
    requirement: Type.String({ maxLength: 40 }),
    answer: oneOf(['yes', 'no', 'open'] as const),
    text: words,
    place: Type.Union([Type.Null(), Type.String({ maxLength: 40 })]),
    years: Type.Union([Type.Null(), Type.Integer()]),
    token,
  },
  closed,
);
export const overrideBody = Type.Object(
  { requirement: Type.String({ maxLength: 40 }), reason: words, takeBack: Type.Boolean(), token },
  closed,
);
export const releaseBody = Type.Object({ outcome: oneOf(['sold', 'rehomed'] as const), token }, closed);
export const refusalBody = Type.Object({ reason: oneOf(refusalReasons), text: words, token }, closed);
export const reopenBody = Type.Object({ token }, closed);
export const takeBackBody = Type.Object(
  {
    reason: oneOf(returnReasons),
    text: words,
    enclosure: Type.String({ minLength: 1, maxLength: 80, pattern: '\\S' }),
    token,
  },
  closed,
);
