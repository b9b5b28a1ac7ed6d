// The worker of the choosing sheet as it is, asked as the sheet asks it: a value of the shop's own counts in the rehearsal
// of faults and in the road of boxes, and is named. Leaves out the thread round it, which the journeys have.
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ShopValue } from '../../husbandry/shop-value.ts';
import type { FaultFinding } from '../../planning/faults/fault-answer.ts';
import type { ChooseAsk, ChooseEnvelope, ChooseReply } from './choose-protocol.ts';

const enclosure = JSON.parse(
  readFileSync(new URL('../../../data/examples/wood-1200.json', import.meta.url), 'utf8'),
) as ChooseAsk['enclosure'];
const signed = { was: {}, by: 'Mia', at: '2026-11-20T09:00:00Z', why: 'our vet asks' };
const value = (path: string, low: number, high: number): ShopValue => ({ ...signed, path, value: { low, high } });
const ask = (shopValues: readonly ShopValue[], box = enclosure): ChooseAsk => ({
  ...{ enclosure: box, shopValues, standardId: undefined, shelf: null, ownedIds: [] },
  ...{ tariffPerKWh: 0.3, years: 5, drawnIsOwned: false },
});

/** Where a worker finds its messages; told at once, in the order in which they were said. */
const edge = {
  onmessage: null as ((event: { data: object; ports: readonly never[] }) => void) | null,
  postMessage: (_said: ChooseEnvelope): void => undefined,
};

/** @param last the kind of reply that ends it */
function replies(kind: 'faults' | 'stages', asked: ChooseAsk, last: ChooseReply['kind']): Promise<ChooseReply[]> {
  return new Promise((done, fail) => {
    const said: ChooseReply[] = [];
    edge.postMessage = ({ reply }) => {
      said.push(reply);
      if (reply.kind === 'failed' || reply.kind === 'refused') fail(new Error(JSON.stringify(reply)));
      if (reply.kind === last) done(said);
    };
    edge.onmessage?.({ data: { kind, ask: asked }, ports: [] });
  });
}

const ownOf = (said: readonly ChooseReply[]) =>
  said.flatMap((reply) => (reply.kind === 'own' ? reply.used.shopValues.map(({ path }) => path) : []));

beforeAll(async () => {
  Object.assign(globalThis, { self: edge });
  await import('./choose-worker.ts');
}, 60_000);
// Other files run in this process after it.
afterAll(() => Reflect.deleteProperty(globalThis, 'self'));

it('faults: what goes wrong is held against the need of the shop', { timeout: 120_000 }, async () => {
  const findings = async (values: readonly ShopValue[]) => {
    const said = await replies('faults', ask(values), 'rehearsal');
    const found = said.flatMap((reply): FaultFinding[] => (reply.kind === 'finding' ? [reply.finding] : []));
    return { own: ownOf(said), found };
  };
  const paths = ['species.corn.all.warmAirC', 'species.corn.all.nightMinC'] as const;
  const plain = await findings([]);
  const own = await findings([value(paths[0], 29, 31), value(paths[1], 27, 28)]);
  expect([plain.own, own.own]).toEqual([[], [...paths]]);
  expect(own.found.length).toBe(plain.found.length);
  expect(own.found).not.toEqual(plain.found);
});

it('stages: a longer adult needs other boxes on its road', { timeout: 120_000 }, async () => {
  const { animal } = enclosure;
  const young = { ...enclosure, animal: animal && { ...animal, stage: 'hatchling' as const } };
  const roads = async (values: readonly ShopValue[]) => {
    const said = await replies('stages', ask(values, young), 'roads');
    return { own: ownOf(said), road: said.at(-1) };
  };
  const path = 'species.corn.adult.totalLengthCm';
  const [plain, own] = [await roads([]), await roads([value(path, 110, 180)])];
  expect([plain.own, own.own]).toEqual([[], [path]]);
  expect(own.road).not.toEqual(plain.road);
});
