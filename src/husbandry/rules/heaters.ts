// Rules of each heater: no light at night, a thermostat of a kind that suits it, a holder that bears it, a guard.
// Leaves out: whether it is strong enough (the simulation) and the load on the thermostat (load.ts).

import type { Enclosure, Heater, Thermostat } from '../../physics/enclosure.ts';
import { coded, type Sayable, type Saying } from '../coded.ts';
import { watts } from '../display.ts';
import type { Facts, HeaterFacts } from '../fact.ts';
import type { NeedVerdict } from '../need.ts';
import { basisOf, commonPractice, need, practiceWith, type Rule } from '../rule.ts';

const say = coded('heaters', {
  lightNight: (name: string) =>
    `The ${name} gives light and is allowed to work at night: it would keep the animal from its dark hours.`,
  dayOnly: 'Gives light, and works by day only.',
  dark: 'Gives no light.',
  setDay: 'Let it work by day only, and hold the night with a heater that gives no light.',
  noThermostat: (name: string) => `The ${name} has no thermostat: it runs flat out whatever the room does.`,
  addThermostat: 'Put it on a thermostat of a suitable kind.',
  noSuch: (id: string) => `It is set to a thermostat "${id}" that is not drawn.`,
  has: (name: string) => `Driven by a ${name}.`,
  change: (names: string) => `Suitable for it: ${names}.`,
  guarded: 'It is guarded.',
  aboveMesh: 'It hangs above the mesh, out of reach.',
  under: 'It lies outside the box.',
  bare: (name: string) => `The ${name} is bare inside the box; snakes press against what is hot and burn.`,
  fixGuard: 'Fit a guard that the animal can neither enter nor coil against.',
  panelBare: 'Some panels grow hot enough to burn, some do not.',
  panelReading: 'the hottest surface of the panel at full power, by infrared thermometer; guard it above 40 °C',
  plastic: 'A plastic lampholder softens and burns under this heater.',
  ceramic: 'It sits in a ceramic holder.',
  holderUnknown: 'What the lampholder is made of has not been entered.',
  wantDark: 'night heat without light',
  byDay: (name: string) => `${name}, by day`,
  always: (name: string) => `${name}, day and night`,
  wantThermostat: 'a thermostat',
  noneFound: 'none',
  wantGuard: 'a guard on whatever is hot inside',
  isGuarded: (name: string) => `${name}, guarded`,
  isBare: (name: string) => `${name}, no guard`,
  coolEnough: 'Does not grow hot enough to need a guard while its thermostat works.',
  wantCeramic: 'ceramic',
  heldBy: {
    ceramic: (name: string) => `${name}, ceramic`,
    plastic: (name: string) => `${name}, plastic`,
    none: (name: string) => `${name}, no holder`,
    unknown: (name: string) => `${name}, not entered`,
  },
  lookHolder: 'a look at the lampholder',
  fixHolder: 'Use a ceramic holder with heat-proof cable, rated for the watts.',
});

const names = coded('name', {
  heater: (_kind: string, name: string, power: string) => `${name} (${power})`,
  thermostat: (_id: string, name: string) => name,
  thermostats: (_ids: string, written: string) => written,
  fact: (text: string) => text,
});

const nameOf = (facts: Facts, heater: Heater): Saying =>
  names.heater(heater.kind, (facts.heaters[heater.kind]?.name ?? heater.kind).toLowerCase(), watts(heater.powerW));

function light(heater: Heater, facts: Facts, row: HeaterFacts): NeedVerdict {
  const emits = row.facts.emitsLight?.value === 'yes';
  const bad = emits && heater.period === 'all';
  return need(
    {
      id: `night-light-${heater.id}`,
      group: 'safety',
      title: 'No light at night',
      verdict: bad ? 'fails' : 'holds',
      wanted: say.wantDark,
      found: (heater.period === 'day' ? say.byDay : say.always)(nameOf(facts, heater)),
      reasons: [bad ? say.lightNight(nameOf(facts, heater)) : emits ? say.dayOnly : say.dark],
      fixes: [say.setDay],
    },
    practiceWith(row.facts.emitsLight),
  );
}

function driven(heater: Heater, thermostat: Thermostat | undefined, facts: Facts): readonly NeedVerdict[] {
  const has = thermostat !== undefined;
  const missing =
    heater.thermostatId === null ? say.noThermostat(nameOf(facts, heater)) : say.noSuch(heater.thermostatId);
  const row = thermostat ? facts.thermostats[thermostat.control] : undefined;
  const on = need(
    {
      id: `thermostat-${heater.id}`,
      group: 'safety',
      title: 'A thermostat on every heater',
      verdict: has ? 'holds' : 'fails',
      wanted: say.wantThermostat,
      found: row ? names.thermostat(row.id, row.name) : say.noneFound,
      reasons: [row ? say.has(names.thermostat(row.id, row.name.toLowerCase())) : missing],
      fixes: [say.addThermostat],
    },
    commonPractice,
  );
  const drive = row?.drives[heater.kind];
  if (!row || !drive) return [on];
  const better = Object.values(facts.thermostats).filter((t) => t.drives[heater.kind].fit === 'good');
  const betterNames = names.thermostats(
    better.map((t) => t.id).join(' '),
    better.map((t) => t.name.toLowerCase()).join(' or '),
  );
  const suits = need(
    {
      id: `thermostat-kind-${heater.id}`,
      group: 'safety',
      title: 'A thermostat that suits the heater',
      verdict: drive.fit === 'never' ? 'fails' : 'holds',
      wanted: betterNames,
      found: names.thermostat(row.id, row.name),
      reasons: [names.fact(drive.why)],
      fixes: [say.change(betterNames)],
    },
    basisOf(drive),
  );
  return [on, suits];
}

function guard(heater: Heater, facts: Facts, row: HeaterFacts): NeedVerdict {
  const head = {
    id: `guard-${heater.id}`,
    group: 'safety',
    title: 'Nothing hot within reach',
    wanted: say.wantGuard,
  } as const;
  const found = (heater.guarded ? say.isGuarded : say.isBare)(nameOf(facts, heater));
  const holds = (reason: Sayable) =>
    need({ ...head, verdict: 'holds', found, reasons: [reason] }, practiceWith(row.facts.needsGuard));
  if (heater.mount === 'above-mesh') return holds(say.aboveMesh);
  if (heater.mount === 'under-floor') return holds(say.under);
  if (heater.guarded) return holds(say.guarded);
  const wants = row.facts.needsGuard?.value;
  if (wants === 'yes')
    return need(
      { ...head, verdict: 'fails', found, reasons: [say.bare(nameOf(facts, heater))], fixes: [say.fixGuard] },
      practiceWith(row.facts.needsGuard),
    );
  if (wants === 'by-temperature')
    return need(
      {
        ...head,
        verdict: 'not-known',
        found,
        reasons: [say.panelBare],
        fixes: [say.fixGuard],
        settledBy: say.panelReading,
      },
      practiceWith(row.facts.needsGuard),
    );
  return holds(say.coolEnough);
}

function holder(heater: Heater, facts: Facts, row: HeaterFacts): readonly NeedVerdict[] {
  if (row.facts.holder?.value !== 'ceramic') return [];
  const verdict = heater.holder === 'ceramic' ? 'holds' : heater.holder === 'plastic' ? 'fails' : 'not-known';
  const reasons = { holds: say.ceramic, fails: say.plastic, 'not-known': say.holderUnknown };
  const settled = verdict === 'not-known' ? { settledBy: say.lookHolder } : {};
  return [
    need(
      {
        id: `holder-${heater.id}`,
        group: 'safety',
        title: 'A holder that bears the heat',
        verdict,
        wanted: say.wantCeramic,
        found: say.heldBy[heater.holder ?? 'unknown'](nameOf(facts, heater)),
        reasons: [reasons[verdict]],
        fixes: [say.fixHolder],
        ...settled,
      },
      basisOf({ source: 'GENERAL-FIRE', read: 'page', ...(row.facts.holder.own ? { own: row.facts.holder.own } : {}) }),
    ),
  ];
}

/** Every heater of the enclosure under every rule that concerns one heater alone. */
export const heatersRule: Rule = (enclosure: Enclosure, _species, _standard, facts) =>
  enclosure.heaters.flatMap((heater) => {
    const row = facts.heaters[heater.kind];
    if (!row) return [];
    const thermostat = enclosure.thermostats.find((t) => t.id === heater.thermostatId);
    return [
      light(heater, facts, row),
      ...driven(heater, thermostat, facts),
      guard(heater, facts, row),
      ...holder(heater, facts, row),
    ];
  });
