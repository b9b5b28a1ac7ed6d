import Fastify from 'fastify';
import { expect, test } from 'vitest';
import { needsAccount, requireWho, roleMay, type Who } from './who.ts';

test('a door of /api that does not say who may use it stops the start; pages need not say', () => {
  const app = Fastify();
  requireWho(app);
  expect(() => app.get('/api/open-door', async () => ({}))).toThrow('GET /api/open-door does not say who may use it');
  expect(() => app.get('/page', async () => ({}))).not.toThrow();
  expect(() => app.get('/api/said', { config: { who: 'owner' } }, async () => ({}))).not.toThrow();
});

test('each role may what is its own and nothing above', () => {
  const all: readonly Who[] = ['self', 'register', 'desk', 'manager', 'owner'];
  const of = (role: Parameters<typeof roleMay>[0]) => all.filter((who) => needsAccount(who) && roleMay(role, who));
  expect(of('inspector')).toEqual(['self', 'register']);
  expect(of('assistant')).toEqual(['self', 'register', 'desk']);
  expect(of('manager')).toEqual(['self', 'register', 'desk', 'manager']);
  expect(of('owner')).toEqual(all);
  expect(needsAccount('anyone') || needsAccount('link')).toBe(false);
});
