// The HTTP doors onto what the program knows: species, materials, ready enclosures.
import { dataFile, dataFolder } from '../../records/data-files.ts';
import { rowsSchema } from '../schemas.ts';
import type { App } from '../types.ts';

const tags = ['facts'];

export function factRoutes(app: App): void {
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
}
