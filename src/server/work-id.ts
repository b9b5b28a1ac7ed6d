// The name under which somebody waits for work, so that they can stop it (routes/work.ts).
import { Type } from 'typebox';

export const workId = Type.String({
  pattern: '^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$',
  description: 'A UUID chosen by whoever asks; POST /api/work/{id}/stop stops it.',
});

export const workQuery = Type.Object({ work: Type.Optional(workId) }, { additionalProperties: false });
