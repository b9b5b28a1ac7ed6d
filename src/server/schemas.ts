// What goes in and out of the HTTP doors; the same descriptions check requests and make /api/openapi.json.
import { Type } from 'typebox';

const anyObject = (description: string) => Type.Object({}, { additionalProperties: true, description });

export const faultSchema = Type.Object({
  code: Type.String(),
  field: Type.String(),
  got: Type.String(),
  allowed: Type.String(),
  say: Type.String({ description: 'What is wrong, in one sentence.' }),
  fix: Type.String({ description: 'What to do about it, in one sentence.' }),
  source: Type.Optional(Type.String()),
});
export const faultsSchema = Type.Object({ faults: Type.Array(faultSchema) }, { description: 'Every fault at once.' });

const documentSchema = anyObject('What the desk entered: answers and enclosure. A half-finished one is welcome.');

export const enquiryBody = Type.Object({ document: documentSchema }, { additionalProperties: false });

const stamps = {
  id: Type.String(),
  version: Type.Integer({ description: 'Also the ETag; grows by one with every change.' }),
  createdAt: Type.String({ format: 'date-time' }),
  updatedAt: Type.String({ format: 'date-time' }),
  createdBy: Type.String(),
  title: Type.String({ description: 'Label of the answers, else name of the enclosure, else empty.' }),
};
export const enquirySchema = Type.Object({ ...stamps, document: documentSchema });
export const enquiryListSchema = Type.Object({ enquiries: Type.Array(Type.Object(stamps)) });

export const historySchema = Type.Object({
  versions: Type.Array(
    Type.Object({
      version: Type.Integer(),
      at: Type.String({ format: 'date-time' }),
      by: Type.String(),
      document: documentSchema,
    }),
  ),
});

export const planBody = Type.Object(
  {
    enclosure: anyObject('An enclosure file: docs/enclosure.schema.json.'),
    members: Type.Optional(Type.Integer({ minimum: 1, maximum: 1024, description: 'Size of the ensemble.' })),
    seed: Type.Optional(Type.Integer({ minimum: 0, maximum: 4_294_967_295 })),
    standardId: Type.Optional(
      Type.String({ description: 'A key of data/standards.json, or "none"; the usual home minimum when left out.' }),
    ),
    enquiryId: Type.Optional(Type.String({ description: 'Keeps the answer with this enquiry.' })),
  },
  { additionalProperties: false },
);
export const planAnswerSchema = Type.Object({
  answer: anyObject('The PlanAnswer: verdict, needs, winter, summer, dial, energy, notes.'),
  modelVersion: Type.String(),
  dataVersion: Type.String(),
  resultId: Type.Union([Type.String(), Type.Null()], { description: 'Set when it was kept with an enquiry.' }),
});

export const planResultsQuery = Type.Object(
  { most: Type.Optional(Type.String({ pattern: '^[1-9][0-9]{0,2}$', description: 'Only so many.' })) },
  { additionalProperties: false },
);
export const planResultsSchema = Type.Object({
  results: Type.Array(
    Type.Object({
      id: Type.String(),
      enquiryVersion: Type.Integer(),
      modelVersion: Type.String(),
      dataVersion: Type.String(),
      at: Type.String({ format: 'date-time' }),
      by: Type.String(),
      answer: anyObject('The PlanAnswer.'),
      aside: Type.Union([Type.Object({ at: Type.String({ format: 'date-time' }), by: Type.String() }), Type.Null()], {
        description: 'Who set it aside, so that it does not count.',
      }),
    }),
  ),
});

export const programSchema = Type.Object({
  ok: Type.Boolean(),
  program: Type.String(),
  model: Type.String(),
  data: Type.String(),
  records: Type.String(),
  shop: Type.String(),
  parts: Type.Array(Type.Object({ part: Type.String(), ok: Type.Boolean(), found: Type.String() })),
  /** Places of data/ that are not sound and not used. */
  leftOut: Type.Array(Type.Object({ field: Type.String(), code: Type.String(), say: Type.String() })),
});

export const rowsSchema = (name: string, description: string) =>
  Type.Object({ [name]: Type.Array(anyObject(description)) });

export const planParams = Type.Object({
  id: Type.String({ pattern: '^[0-9a-f-]{36}$' }),
  planId: Type.String({ format: 'uuid' }),
});
export const keptPlanSchema = Type.Object({ id: Type.String() });
export const idParams = Type.Object({ id: Type.String({ pattern: '^[0-9a-f-]{36}$' }) });
