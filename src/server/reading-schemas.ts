// What goes in and out of the doors onto readings, proofs, instruments, live sources and keepers' links.
import { Type } from 'typebox';
import { salts } from '../proving/instrument-check.ts';
import { logPlaces } from '../proving/reading-log.ts';
import { workId } from './work-id.ts';

const closed = { additionalProperties: false } as const;
const uuid = Type.String({ pattern: '^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$' });
const oneOf = (words: readonly string[]) => Type.Union(words.map((word) => Type.Literal(word)));
const place = oneOf(logPlaces);
const text = (maxLength: number) => Type.String({ maxLength });

export const homeParams = Type.Object({ id: uuid });
export const fileParams = Type.Object({ id: uuid, fileId: uuid });
export const readingParams = Type.Object({ id: uuid, readingId: uuid });
export const linkParams = Type.Object({ id: uuid, linkId: uuid });
export const secretParams = Type.Object({ secret: Type.String({ pattern: '^[A-Za-z0-9_-]{20,60}$' }) });
export const fileQuery = Type.Object({ name: Type.Optional(text(200)), work: Type.Optional(workId) }, closed);

export const hintsBody = Type.Object(
  {
    dateOrder: Type.Optional(oneOf(['dmy', 'mdy', 'ymd'])),
    tempUnit: Type.Optional(oneOf(['C', 'F'])),
    homeOffsetMin: Type.Optional(Type.Integer({ minimum: -720, maximum: 840 })),
    places: Type.Optional(Type.Record(text(80), place)),
    instruments: Type.Optional(Type.Record(text(80), uuid)),
  },
  closed,
);
export const asideBody = Type.Object({ why: text(500) }, closed);

const tempC = Type.Optional(Type.Number({ description: '°C' }));
const sent = Type.Object(
  {
    at: Type.String({ maxLength: 19, description: 'YYYY-MM-DDTHH:MM on the clock of the home' }),
    valuesC: Type.Object({ 'basking-surface': tempC, 'cool-air': tempC, room: tempC }, closed),
    clientKey: Type.String({ minLength: 8, maxLength: 80 }),
  },
  closed,
);
export const sentBody = Type.Object({ readings: Type.Array(sent, { minItems: 1, maxItems: 100 }) }, closed);

export const proofBody = Type.Object(
  {
    enclosure: Type.Optional(
      Type.Object(
        {},
        {
          additionalProperties: true,
          description: 'The home with room and animal filled in; else the one of the enquiry.',
        },
      ),
    ),
    nights: Type.Optional(Type.Integer({ minimum: 1, maximum: 14 })),
    longestIntervalS: Type.Optional(Type.Integer({ minimum: 60, maximum: 3600 })),
    longestGapS: Type.Optional(Type.Integer({ minimum: 600, maximum: 86_400 })),
    humidity: Type.Optional(Type.Boolean()),
    forecast: Type.Optional(Type.Boolean()),
  },
  closed,
);

export const instrumentBody = Type.Object({ name: text(200) }, closed);
export const checkBody = Type.Object(
  {
    kind: oneOf(['ice', 'salt']),
    shown: Type.Array(Type.Number(), { maxItems: 20 }),
    salt: Type.Optional(oneOf(salts)),
    tempC: Type.Optional(Type.Number()),
  },
  closed,
);

export const sourceBody = Type.Object(
  {
    label: Type.String({ minLength: 1, maxLength: 80 }),
    place,
    quantity: oneOf(['tempC', 'rhPct', 'powerW']),
    intervalS: Type.Integer({ minimum: 5, maximum: 86_400 }),
    topic: Type.Union([Type.Null(), Type.String({ minLength: 1, maxLength: 200, pattern: '^[^#+\\u0000]+$' })]),
    valueKey: Type.Union([Type.Null(), Type.String({ minLength: 1, maxLength: 80 })]),
    instrumentId: Type.Union([Type.Null(), uuid]),
  },
  closed,
);
const said = Type.Object(
  { value: Type.Number(), at: Type.Optional(Type.String({ maxLength: 40, description: 'ISO time' })) },
  closed,
);
export const saidBody = Type.Union([
  said,
  Type.Object({ readings: Type.Array(said, { minItems: 1, maxItems: 1000 }) }, closed),
]);

export const linkBody = Type.Object({ days: Type.Integer() }, closed);
