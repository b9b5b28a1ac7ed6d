// Do the parts of an enclosure fit each other: is everything inside the box, does every name point at something?
// Works on a draft in which broken fields are NaN or undefined, so one bad number does not hide the next fault.
// Leaves out: limits of single fields (field-reader.ts) and whether the home is safe or warm enough (husbandry).
import type { Fault } from '../shared/fault.ts';
import type { Box, Enclosure, Heater, HeaterKind, HeaterMount, PanelName } from './enclosure.ts';
import type { Draft } from './enclosure-draft.ts';
import { dayFaults, roomFaults } from './enclosure-times.ts';
import { shown } from './field-reader.ts';
import type { MaterialTable } from './material.ts';
import { nearestKey } from './nearest-key.ts';

/** Metres by which a rounded position may stick out before it is called outside (our choice: half a millimetre). */
const slackM = 0.0005;

/** A number, or NaN when it is not there: every comparison with it is then false. */
const n = (value: number | null | undefined): number => value ?? Number.NaN;

/** Every fault between fields. */
export function crossFaults(draft: Draft<Enclosure>, materials: MaterialTable): Fault[] {
  const box = draft.box ?? {};
  return [
    ...materialFaults(draft, materials),
    ...ventFaults(box),
    ...baseFaults(box),
    ...duplicateFaults('heaters', draft.heaters),
    ...duplicateFaults('thermostats', draft.thermostats),
    ...(draft.heaters ?? []).flatMap((heater, i) => heaterFaults(heater ?? {}, `heaters[${i}]`, draft)),
    ...(draft.thermostats ?? []).flatMap((t, i) => probeFaults(t ?? {}, `thermostats[${i}]`, draft)),
    ...furnishingFaults(draft, box),
    ...dayFaults(draft),
    ...roomFaults(draft),
  ];
}

/** Position or size that does not fit into what holds it [m]. */
function outside(field: string, gotM: number, lowM: number, highM: number, what: string): Fault[] {
  if (!(gotM < lowM - slackM || gotM > highM + slackM)) return [];
  const allowed = `${round(lowM)} to ${round(highM)} m`;
  return [
    {
      code: 'ENC_PLACE',
      field,
      got: `${round(gotM)} m`,
      allowed,
      say: `${field}: ${what} at ${round(gotM)} m lies outside ${allowed}.`,
      fix: `Move it to ${allowed}, or correct the size of the box or of the thing itself.`,
    },
  ];
}

const round = (valueM: number): number => Number(valueM.toFixed(4));

/** The centre of something of this size must keep half of it away from both walls. */
function fits(field: string, centreM: number, sizeM: number, spanM: number, what: string): Fault[] {
  if (sizeM > spanM + slackM) {
    return [
      {
        code: 'ENC_FIT',
        field,
        got: `${round(sizeM)} m`,
        allowed: `at most ${round(spanM)} m`,
        say: `${field}: ${what} is ${round(sizeM)} m, the room for it is ${round(spanM)} m.`,
        fix: 'Choose a smaller one or a larger box.',
      },
    ];
  }
  return outside(field, centreM, sizeM / 2, spanM - sizeM / 2, what);
}

function materialFaults(draft: Draft<Enclosure>, materials: MaterialTable): Fault[] {
  const used: [string, string | undefined][] = [['substrate.materialId', draft.substrate?.materialId]];
  for (const [name, panel] of Object.entries(draft.box?.panels ?? {})) {
    (panel?.layers ?? []).forEach((layer, i) => {
      used.push([`box.panels.${name}.layers[${i}].materialId`, layer?.materialId]);
    });
  }
  const known = Object.keys(materials);
  return used.flatMap(([field, id]) => {
    if (id === undefined || Object.hasOwn(materials, id)) return [];
    const near = nearestKey(id, known);
    const fix = near === null ? 'Choose one of the known materials.' : `Did you mean "${near}"?`;
    const say = `${field}: no material is called ${shown(id)}.`;
    return [{ code: 'ENC_MATERIAL', field, got: shown(id), allowed: known.join(' | '), say, fix }];
  });
}

/** Width and height of a panel, and what its two positions are called. */
function panelSpan(box: Draft<Box>, panel: PanelName): { alongM: number; acrossM: number; upright: boolean } {
  if (panel === 'left' || panel === 'right') return { alongM: n(box.depthM), acrossM: n(box.heightM), upright: true };
  const upright = panel === 'front' || panel === 'back';
  return { alongM: n(box.lengthM), acrossM: upright ? n(box.heightM) : n(box.depthM), upright };
}

function ventFaults(box: Draft<Box>): Fault[] {
  const takenM2 = new Map<PanelName, number>();
  return (box.vents ?? []).flatMap((vent, i) => {
    const panel = vent?.panel;
    if (panel === undefined) return [];
    const at = `box.vents[${i}]`;
    const { alongM, acrossM, upright } = panelSpan(box, panel);
    const freeM2 = alongM * acrossM * (1 - (box.panels?.[panel]?.meshShareFrac ?? 0)) - (takenM2.get(panel) ?? 0);
    takenM2.set(panel, (takenM2.get(panel) ?? 0) + n(vent?.areaM2));
    const faults = outside(`${at}.alongM`, n(vent?.alongM), 0, alongM, `the opening in the ${panel} panel`);
    if (upright) faults.push(...outside(`${at}.heightM`, n(vent?.heightM), 0, acrossM, 'the opening'));
    if (n(vent?.areaM2) > freeM2) {
      faults.push({
        code: 'ENC_FIT',
        field: `${at}.areaM2`,
        got: `${n(vent?.areaM2)} m²`,
        allowed: `at most ${round(Math.max(0, freeM2))} m²`,
        say: `${at}: the opening is larger than what is left of the ${panel} panel (${round(Math.max(0, freeM2))} m²).`,
        fix: 'Correct its area (100 cm² is 0.01 m²), or the size of the panel or of its mesh.',
      });
    }
    return faults;
  });
}

function baseFaults(box: Draft<Box>): Fault[] {
  const stacked = box.base?.kind === 'stacked';
  const given = box.base?.belowC !== undefined;
  if (box.base?.kind === undefined || stacked === given) return [];
  return [
    {
      code: 'ENC_BELONGS',
      field: 'box.base.belowC',
      got: given ? `${box.base.belowC} °C` : 'nothing',
      allowed: 'given for "stacked", left out for every other base',
      say: stacked
        ? 'box.base is stacked on another box, but the temperature of that box is missing.'
        : `box.base.belowC is given, but nothing stands below a base of kind "${box.base.kind}".`,
      fix: stacked
        ? 'Add belowC, the air temperature of the box below.'
        : 'Take belowC out, or make the base "stacked".',
    },
  ];
}

function duplicateFaults(
  list: string,
  entries: readonly ({ readonly id?: string | undefined } | undefined)[] = [],
): Fault[] {
  const seen = new Set<string>();
  return entries.flatMap((entry, i) => {
    const id = entry?.id;
    if (id === undefined) return [];
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    const field = `${list}[${i}].id`;
    const say = `${field}: the name ${shown(id)} is used twice in ${list}.`;
    return [
      { code: 'ENC_DUPLICATE', field, got: shown(id), allowed: 'a name used once', say, fix: 'Rename one of them.' },
    ];
  });
}

/** Where each kind of heater can sit. */
export const mountsByKind: Readonly<Record<HeaterKind, readonly HeaterMount[]>> = {
  'ceramic-emitter': ['inside', 'ceiling', 'above-mesh'],
  'infrared-projector': ['inside', 'ceiling', 'above-mesh'],
  'basking-lamp': ['inside', 'ceiling', 'above-mesh'],
  'halogen-lamp': ['inside', 'ceiling', 'above-mesh'],
  'radiant-panel': ['ceiling'],
  'heat-mat': ['on-floor', 'under-floor'],
};

const isFlat = (kind: HeaterKind | undefined): boolean => kind === 'heat-mat' || kind === 'radiant-panel';

function heaterFaults(heater: Draft<Heater>, at: string, draft: Draft<Enclosure>): Fault[] {
  const box = draft.box ?? {};
  const faults = [...mountFaults(heater, at, box), ...driverFaults(heater, at, draft)];
  if (isFlat(heater.kind)) {
    for (const [key, centreM, spanM] of [
      ['lengthM', heater.xM, box.lengthM],
      ['depthM', heater.yM, box.depthM],
    ] as const) {
      if (heater[key] === undefined) faults.push(sizeMissing(heater, `${at}.${key}`));
      else faults.push(...fits(`${at}.${key}`, n(centreM), n(heater[key]), n(spanM), `the ${heater.kind}`));
    }
    return faults;
  }
  const above = heater.mount === 'above-mesh';
  const lowM = above ? n(box.heightM) : (draft.substrate?.depthM ?? 0);
  const highM = above ? n(box.heightM) + 0.5 : n(box.heightM);
  faults.push(...outside(`${at}.xM`, n(heater.xM), 0, n(box.lengthM), 'the heater'));
  faults.push(...outside(`${at}.yM`, n(heater.yM), 0, n(box.depthM), 'the heater'));
  faults.push(...outside(`${at}.zM`, n(heater.zM), lowM, highM, above ? 'the heater above the mesh' : 'the heater'));
  return faults;
}

function sizeMissing(heater: Draft<Heater>, field: string): Fault {
  return {
    code: 'ENC_MISSING',
    field,
    got: 'nothing',
    allowed: 'its size in metres',
    say: `${field} is missing: a ${heater.kind} warms an area, so its size must be known.`,
    fix: 'Add lengthM (along the box) and depthM (front to back).',
  };
}

function mountFaults(heater: Draft<Heater>, at: string, box: Draft<Box>): Fault[] {
  const { kind, mount } = heater;
  if (kind === undefined || mount === undefined) return [];
  const allowed = mountsByKind[kind];
  if (!allowed.includes(mount)) {
    const say = `${at}: a ${kind} cannot be mounted "${mount}".`;
    const fix = `Mount it ${allowed.map((m) => `"${m}"`).join(' or ')}, or choose another kind.`;
    return [{ code: 'ENC_MOUNT', field: `${at}.mount`, got: mount, allowed: allowed.join(' | '), say, fix }];
  }
  const top = box.panels?.top;
  if (mount !== 'above-mesh' || top === undefined || n(top.meshShareFrac ?? 0) !== 0) return [];
  return [
    {
      code: 'ENC_MOUNT',
      field: `${at}.mount`,
      got: mount,
      allowed: '"above-mesh" only over a lid with mesh',
      say: `${at} sits above a mesh lid, but the top panel has no mesh.`,
      fix: 'Set box.panels.top.meshShareFrac, or mount the heater inside.',
    },
  ];
}

function driverFaults(heater: Draft<Heater>, at: string, draft: Draft<Enclosure>): Fault[] {
  const wanted = heater.thermostatId;
  const known = (draft.thermostats ?? []).map((t) => t?.id).filter((id) => id !== undefined);
  if (wanted === undefined || wanted === null || draft.thermostats === undefined || known.includes(wanted)) return [];
  const field = `${at}.thermostatId`;
  const near = nearestKey(wanted, known);
  return [
    {
      code: 'ENC_REFERENCE',
      field,
      got: shown(wanted),
      allowed: known.length === 0 ? 'null (the file lists no thermostat)' : `${known.join(' | ')} | null`,
      say: `${field}: no thermostat of this file is called ${shown(wanted)}.`,
      fix: near === null ? 'Name one from thermostats, or write null for none.' : `Did you mean "${near}"?`,
    },
  ];
}

function probeFaults(
  thermostat: Draft<Enclosure['thermostats'][number]>,
  at: string,
  draft: Draft<Enclosure>,
): Fault[] {
  const box = draft.box ?? {};
  const probe = thermostat.probe ?? {};
  const faults = [
    ...outside(`${at}.probe.xM`, n(probe.xM), 0, n(box.lengthM), 'the probe'),
    ...outside(`${at}.probe.yM`, n(probe.yM), 0, n(box.depthM), 'the probe'),
    ...outside(`${at}.probe.zM`, n(probe.zM), 0, n(box.heightM), 'the probe'),
  ];
  const mats = (draft.heaters ?? []).some((h) => h?.kind === 'heat-mat');
  if (probe.at !== 'mat' || mats || draft.heaters === undefined) return faults;
  faults.push({
    code: 'ENC_BELONGS',
    field: `${at}.probe.at`,
    got: 'mat',
    allowed: '"mat" only with a heat mat in heaters',
    say: `${at}: the probe lies on a heat mat, but the file has no heat mat.`,
    fix: 'Place the probe at "air", "wall" or "floor", or add the mat.',
  });
  return faults;
}

function furnishingFaults(draft: Draft<Enclosure>, box: Draft<Box>): Fault[] {
  const groundM = draft.substrate?.depthM ?? 0;
  const { bowl, perch } = draft;
  const faults = outside(
    'substrate.depthM',
    n(draft.substrate?.depthM),
    0,
    n(box.heightM) / 2,
    'the substrate surface',
  );
  (draft.hides ?? []).forEach((hide, i) => {
    const at = `hides[${i}]`;
    faults.push(...fits(`${at}.xM`, n(hide?.xM), n(hide?.lengthM), n(box.lengthM), 'the hide'));
    faults.push(...fits(`${at}.yM`, n(hide?.yM), n(hide?.depthM), n(box.depthM), 'the hide'));
    const freeM = n(box.heightM) - groundM;
    faults.push(...outside(`${at}.heightM`, n(hide?.heightM), 0, freeM, 'the top of the hide'));
  });
  if (bowl) {
    faults.push(...fits('bowl.xM', n(bowl.xM), n(bowl.diameterM), n(box.lengthM), 'the bowl'));
    faults.push(...fits('bowl.yM', n(bowl.yM), n(bowl.diameterM), n(box.depthM), 'the bowl'));
  }
  if (perch) {
    faults.push(...outside('perch.xM', n(perch.xM), 0, n(box.lengthM), 'the perch'));
    faults.push(...outside('perch.yM', n(perch.yM), 0, n(box.depthM), 'the perch'));
    faults.push(...outside('perch.zM', n(perch.zM), groundM, n(box.heightM), 'the perch'));
  }
  return faults;
}
