// What goes in and out of the doors onto aftercare, calendars and the list of today.
import { Type } from 'typebox';
import { languageCode as language } from './language-code.ts';
import { unitFields } from './paper-query.ts';

const closed = { additionalProperties: false } as const;
const uuid = Type.String({ pattern: '^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$' });
const day = Type.String({ pattern: '^\\d{4}-\\d{2}-\\d{2}$' });
const key = Type.String({ minLength: 3, maxLength: 200 });
const answers = Type.Object({}, { additionalProperties: true, description: 'AftercareAnswers: what was said.' });

export const placementParams = Type.Object({ id: uuid });
export const feedParams = Type.Object({ id: uuid, feedId: uuid });
export const branchFeedParams = Type.Object({ feedId: uuid });

export const stepBody = Type.Object(
  {
    token: uuid,
    step: Type.Union([
      Type.Object({ what: Type.Literal('answer'), key, on: Type.Optional(day), answers }, closed),
      Type.Object({ what: Type.Literal('not-reached'), key }, closed),
      Type.Object({ what: Type.Literal('set-aside'), key, why: Type.String({ maxLength: 500 }) }, closed),
      Type.Object({ what: Type.Literal('undone'), of: uuid }, closed),
      Type.Object({ what: Type.Literal('looked-at'), of: uuid }, closed),
    ]),
  },
  closed,
);
export const keeperAnswerBody = Type.Object({ token: uuid, key, on: day, answers }, closed);
export const feedBody = Type.Object({ language, ...unitFields }, closed);

/** The row after which a further page begins. */
export const todayQuery = Type.Object(
  { to: Type.Optional(day), placementId: Type.Optional(uuid), key: Type.Optional(key) },
  closed,
);

export const feedSecretParams = Type.Object({
  secret: Type.String({ pattern: '^[A-Za-z0-9_-]{20,60}(\\.ics)?$' }),
});
