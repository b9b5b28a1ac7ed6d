// What goes in and out of the doors onto animals. Answers are described loosely: their shapes are those of animal/ and desk/.
import { Type } from 'typebox';
import { paperFields } from './paper-query.ts';

const open = (description: string) => Type.Object({}, { additionalProperties: true, description });
export const anyAnswer = open('As the type of the desk action says.');

const uuid = Type.String({ pattern: '^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$' });
export const animalParams = Type.Object({ id: uuid });
export const entryParams = Type.Object({ id: uuid, entryId: uuid });
export const photoParams = Type.Object({ id: uuid, photoId: uuid });

const values = Type.Record(Type.String({ maxLength: 40 }), Type.String({ maxLength: 500 }), {
  description: 'Register fields; "unknown" = asked and not known.',
});
const clearBy = Type.Union([Type.Literal('time'), Type.Literal('tests'), Type.Literal('both')]);
const closed = { additionalProperties: false } as const;
const clientKey = Type.String({ minLength: 8, maxLength: 80 });

export const takeInBody = Type.Object(
  {
    values,
    enclosure: Type.String({ minLength: 1, maxLength: 80 }),
    quarantine: Type.Union([
      Type.Null(),
      Type.Object(
        { clearBy, days: Type.Union([Type.Null(), Type.Integer({ minimum: 0, maximum: 730 })]), tests: Type.String() },
        closed,
      ),
    ]),
  },
  closed,
);
export const registerBody = Type.Object({ values, reason: Type.String({ maxLength: 500 }) }, closed);
export const entryBody = Type.Object(
  {
    kind: Type.String({ maxLength: 40 }),
    on: Type.Optional(Type.String({ maxLength: 10 })),
    at: Type.Optional(Type.String({ maxLength: 40 })),
    body: open('Fields of the kind of entry.'),
    clientKey: Type.Optional(clientKey),
  },
  closed,
);
export const correctionBody = Type.Object(
  {
    body: Type.Union([Type.Null(), open('All fields of the entry as they should be.')]),
    on: Type.Optional(Type.String({ maxLength: 10 })),
    reason: Type.String({ maxLength: 500 }),
  },
  closed,
);
export const examinationBody = Type.Object(
  {
    answers: Type.Record(Type.String({ maxLength: 40 }), Type.Array(Type.String({ maxLength: 40 }), { maxItems: 20 })),
    massG: Type.Union([Type.Null(), Type.Number()]),
    outline: Type.String({ maxLength: 40 }),
    note: Type.String({ maxLength: 2000 }),
  },
  closed,
);
export const photoBody = Type.Object(
  { data: Type.String({ maxLength: 560_000 }), of: Type.String({ maxLength: 80 }) },
  closed,
);

const nullableNumber = Type.Union([Type.Null(), Type.Number()]);
const roundState = Type.Union([Type.Literal('well'), Type.Literal('look'), Type.Literal('not-seen')]);
export const roundBody = Type.Object(
  {
    checks: Type.Array(
      Type.Object(
        {
          clientKey,
          animalId: uuid,
          on: Type.String({ maxLength: 10 }),
          at: Type.String({ maxLength: 40 }),
          body: Type.Object(
            {
              state: roundState,
              water: Type.Boolean(),
              locked: Type.Boolean(),
              droppings: Type.Boolean(),
              warmC: nullableNumber,
              coolC: nullableNumber,
              rhPct: nullableNumber,
              note: Type.String({ maxLength: 2000 }),
            },
            closed,
          ),
        },
        closed,
      ),
      { maxItems: 500 },
    ),
  },
  closed,
);

const stage = Type.Union([Type.Literal('hatchling'), Type.Literal('young'), Type.Literal('adult')]);
export const callBody = Type.Object(
  {
    animalId: Type.Union([Type.Null(), uuid]),
    speciesId: Type.Union([Type.Null(), Type.String({ maxLength: 60 })]),
    stage: Type.Union([Type.Null(), stage]),
    call: Type.Object(
      {
        complaintId: Type.String({ maxLength: 40 }),
        flags: Type.Array(Type.String({ maxLength: 40 }), { maxItems: 40 }),
        readings: Type.Record(Type.String({ maxLength: 40 }), Type.Number()),
        answers: Type.Record(Type.String({ maxLength: 40 }), Type.Union([Type.Literal('yes'), Type.Literal('no')])),
        days: Type.Number({ minimum: 0, maximum: 3650 }),
        lossPct: nullableNumber,
      },
      closed,
    ),
    note: Type.String({ maxLength: 2000 }),
    keep: Type.Boolean(),
  },
  closed,
);

const digits = Type.String({ pattern: '^[0-9]{1,4}(\\.[0-9]{1,3})?$' });
export const listQuery = Type.Object(
  { all: Type.Optional(Type.Union([Type.Literal('yes'), Type.Literal('no')])) },
  closed,
);
export const daysQuery = Type.Object({ days: Type.Optional(digits) }, closed);
export const moveUpQuery = Type.Object({ boxLengthCm: digits, lengthShare: digits }, closed);
export const inspectionQuery = Type.Object(
  {
    search: Type.Optional(Type.String({ maxLength: 100 })),
    years: Type.Optional(digits),
    animalId: Type.Optional(uuid),
    ...paperFields,
  },
  closed,
);
