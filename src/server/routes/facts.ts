// The HTTP doors onto what the program knows and how it is: species, materials, ready enclosures, health.
import { sql } from 'kysely';
import { dataFile, dataFolder } from '../../records/data-files.ts';
import { versions } from '../../records/versions.ts';
import { healthSchema, rowsSchema } from '../schemas.ts';
import type { App, Doors } from '../types.ts';

const tags = ['facts'];

export function factRoutes(app: App, doors: Doors): void {
  // Read once: facts change only with a new version of the program.
  const species = Object.values(dataFolder('species'));
  const examples = Object.entries(dataFolder('examples')).map(([id, enclosure]) => ({ id, enclosure }));
  const materials = dataFile('materials.json') as object[];

  app.get(
    '/api/species',
    {
      config: { who: 'self' },
      schema: { tags, summary: 'Species', response: { 200: rowsSchema('species', 'A file of data/species.') } },
    },
    async () => ({ species }),
  );
  app.get(
    '/api/examples',
    {
      config: { who: 'self' },
      schema: { tags, summary: 'Ready enclosures', response: { 200: rowsSchema('examples', 'id and enclosure.') } },
    },
    async () => ({ examples }),
  );
  app.get(
    '/api/materials',
    {
      config: { who: 'self' },
      schema: { tags, summary: 'Materials', response: { 200: rowsSchema('materials', 'A material.') } },
    },
    async () => ({ materials }),
  );

  app.get(
    '/api/health',
    {
      config: { who: 'anyone' },
      schema: { tags: ['program'], summary: 'Is everything there', response: { 200: healthSchema } },
    },
    async () => {
      await sql`select 1`.execute(doors.records.db);
      const { program, model, data } = versions();
      return { ok: true, program, model, data, records: doors.records.kind, shop: doors.branch.shopName };
    },
  );
}
