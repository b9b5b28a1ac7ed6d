// The HTTP doors onto the program itself: does the process live, is it ready for work, and which versions answer.
// A stranger, or what watches over the process, learns yes or no and nothing else.
import { Type } from 'typebox';
import { readiness } from '../../desk/readiness.ts';
import { allFacts } from '../../records/animal-facts.ts';
import { versions } from '../../records/versions.ts';
import { programSchema } from '../schemas.ts';
import type { App, Doors } from '../types.ts';

const tags = ['program'];
const yesOrNo = Type.Object({ ok: Type.Boolean() });

export function programRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/health',
    { config: { who: 'anyone' }, schema: { tags, summary: 'Does the process live', response: { 200: yesOrNo } } },
    async () => ({ ok: true }),
  );
  app.get(
    '/api/ready',
    {
      config: { who: 'anyone' },
      schema: { tags, summary: 'Can it work now', response: { 200: yesOrNo, 503: yesOrNo } },
    },
    async (_request, reply) => {
      const parts = await readiness(doors.records, doors.planner);
      const ok = parts.every((part) => part.ok);
      return reply.code(ok ? 200 : 503).send({ ok });
    },
  );
  app.get(
    '/api/program',
    {
      config: { who: 'self' },
      schema: { tags, summary: 'Versions, and what readiness looks at', response: { 200: programSchema } },
    },
    async (request) => {
      const { program, model, data } = versions();
      const parts = await readiness(doors.records, doors.planner);
      const shop = doors.own(request).session.shopName;
      const ok = parts.every((part) => part.ok);
      const leftOut = allFacts().leftOut.map(({ field, code, say }) => ({ field, code, say }));
      return { ok, program, model, data, records: doors.records.kind, shop, parts: [...parts], leftOut };
    },
  );
}
