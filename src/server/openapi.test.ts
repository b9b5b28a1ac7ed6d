// The description of the HTTP doors: valid OpenAPI 3.1 by another program, and the same as the published file.
// After a door has changed: npx vitest run -u src/server/openapi.test.ts
import { Validator } from '@seriousme/openapi-schema-validator';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type AppForTests, appForTests } from './testing/app-for-tests.ts';

let running: AppForTests;
beforeAll(async () => {
  running = await appForTests();
  await running.app.ready();
});
afterAll(async () => {
  await running?.close();
});

interface Described {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, { summary?: string; tags?: string[] }>>>>;
}

const described = (): Described => running.app.swagger() as unknown as Described;

it('is OpenAPI 3.1 to another reader', async () => {
  const found = await new Validator().validate(structuredClone(described()) as never);
  expect(found.errors ?? []).toEqual([]);
  expect(found.valid).toBe(true);
  expect(described().openapi).toBe('3.1.0');
});

it('says of every door what it does', () => {
  const silent = Object.entries(described().paths).flatMap(([path, doors]) =>
    Object.entries(doors)
      .filter(([, door]) => !door.summary || !door.tags?.length)
      .map(([method]) => `${method} ${path}`),
  );
  expect(silent).toEqual([]);
});

it('is the published file', async () => {
  await expect(`${JSON.stringify(described(), null, 2)}\n`).toMatchFileSnapshot('../../docs/openapi.json');
});
