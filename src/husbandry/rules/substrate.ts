// Does what lies on the floor suit the animal, is it deep enough to burrow in, and does it smother a heat mat?
// Leaves out: how it conducts heat and gives off water (physics).

import type { Enclosure } from '../../physics/enclosure.ts';
import { coded } from '../coded.ts';
import { mm } from '../display.ts';
import type { Facts, Species } from '../fact.ts';
import type { NeedVerdict } from '../need.ts';
import { policyFact } from '../policy.ts';
import { basisOf, commonPractice, need, practiceWith, type Rule } from '../rule.ts';
import { factOf, rangeOf, wordOf } from '../species-facts.ts';

/** Deepest substrate over a heat mat before the heat is trapped below it [mm] when data/ has no row of it; our choice, a
 *  thin layer is common practice. */
export const matLayerMaxMm = 20;

const say = coded('substrate', {
  bare: 'bare',
  whatFloor: 'what the floor is made of',
  atLeast: (depth: string) => `at least ${depth}`,
  atMost: (depth: string) => `at most ${depth}`,
  none: 'The floor is bare.',
  add: (names: string) => `Use ${names}.`,
  suits: (name: string) => `${name} is usual for this animal.`,
  unusual: (name: string) => `${name} is not the usual choice for this animal, but nothing speaks against it.`,
  clash: (name: string, zone: string) => `${name} does not suit an animal of ${zone} country.`,
  unknown: (id: string) => `Nothing is known here about "${id}" as a substrate.`,
  deep: 'Deep enough to burrow in.',
  shallow: 'Too shallow for an animal that lives buried.',
  deepen: (depth: string) => `Fill it in to ${depth}, and measure the heat at the depth where the animal lies.`,
  smothers: (depth: string) =>
    `${depth} of substrate over a heat mat traps the heat below, where the animal may burrow down to it.`,
  thin: 'The layer over the heat mat is thin enough.',
  overhead: (most: string) => `Keep the layer over a mat to ${most}, or heat from above.`,
});

const names = coded('name', {
  substrate: (_id: string, name: string) => name,
  substrates: (_ids: string, written: string) => written,
});

const clashes = (moisture: string | null, zone: string | null): boolean =>
  (moisture === 'moist' && zone === 'arid') || (moisture === 'dry' && zone === 'tropical');

function kind(enclosure: Enclosure, species: Species, facts: Facts): NeedVerdict {
  const fact = factOf(species, 'adult', 'substrates');
  const usual = (fact?.values ?? []).map(String);
  const written = usual.map((id) => facts.substrates[id]?.name.toLowerCase() ?? id).join(', ');
  const basis = fact ? basisOf(fact) : commonPractice;
  const kinds = names.substrates(usual.join(' '), written);
  const head = { id: 'substrate', group: 'comfort', title: 'A floor that suits it', wanted: kinds } as const;
  const { substrate } = enclosure;
  if (!substrate)
    return need({ ...head, verdict: 'fails', found: say.bare, reasons: [say.none], fixes: [say.add(kinds)] }, basis);
  const row = facts.substrates[substrate.materialId];
  if (!row)
    return need(
      {
        ...head,
        verdict: 'not-known',
        found: substrate.materialId,
        reasons: [say.unknown(substrate.materialId)],
        settledBy: say.whatFloor,
      },
      basis,
    );
  const found = names.substrate(row.id, row.name);
  if (usual.includes(row.id))
    return need({ ...head, verdict: 'holds', found, reasons: [say.suits(names.substrate(row.id, row.name))] }, basis);
  const zone = wordOf(species, 'adult', 'climateKind');
  const moisture = typeof row.moisture.value === 'string' ? row.moisture.value : null;
  const bad = clashes(moisture, zone);
  const reasons = [
    bad ? say.clash(names.substrate(row.id, row.name), zone ?? '') : say.unusual(names.substrate(row.id, row.name)),
  ];
  return need(
    { ...head, verdict: bad ? 'fails' : 'holds', found, reasons, fixes: [say.add(kinds)] },
    practiceWith(row.moisture),
  );
}

function depth(enclosure: Enclosure, species: Species): readonly NeedVerdict[] {
  const wanted = rangeOf(species, 'adult', 'substrateDepthMm');
  if (!wanted) return [];
  const foundM = enclosure.substrate?.depthM ?? 0;
  const deep = foundM * 1000 >= wanted.low - 1e-9;
  return [
    need(
      {
        id: 'substrate-depth',
        group: 'comfort',
        title: 'Deep enough to burrow',
        verdict: deep ? 'holds' : 'fails',
        wanted: say.atLeast(`${wanted.low} mm`),
        found: mm(foundM),
        reasons: [deep ? say.deep : say.shallow],
        fixes: [say.deepen(`${wanted.low} mm`)],
      },
      basisOf(wanted),
    ),
  ];
}

function overMat(enclosure: Enclosure, facts: Facts): readonly NeedVerdict[] {
  const { value: mostMm, basis } = policyFact(facts.policies, 'matLayerMaxMm', matLayerMaxMm);
  const most = mm(mostMm / 1000);
  const { substrate } = enclosure;
  if (!substrate || !enclosure.heaters.some((heater) => heater.kind === 'heat-mat')) return [];
  const thin = substrate.depthM <= mostMm / 1000 + 1e-9;
  return [
    need(
      {
        id: 'mat-not-smothered',
        group: 'safety',
        title: 'No deep layer over a heat mat',
        verdict: thin ? 'holds' : 'fails',
        wanted: say.atMost(most),
        found: mm(substrate.depthM),
        reasons: [thin ? say.thin : say.smothers(mm(substrate.depthM))],
        fixes: [say.overhead(most)],
      },
      basisOf(basis),
    ),
  ];
}

export const substrateRule: Rule = (enclosure, species, _standard, facts) => [
  kind(enclosure, species, facts),
  ...depth(enclosure, species),
  ...overMat(enclosure, facts),
];
