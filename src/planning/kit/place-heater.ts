// Where does a heater of each kind sit in this box, and where its probe? Our choice of places, within the rules of
// husbandry: at the warm end, clear of floor and lid, probe on the back wall 100 to 150 mm up.

import type { Saying } from '../../husbandry/coded.ts';
import type { Enclosure, Heater, HeaterKind, Thermostat } from '../../physics/enclosure.ts';
import { mountsByKind } from '../../physics/enclosure-cross.ts';
import { mainHeater } from '../../physics/grid.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';
import type { ShelfHeater } from '../shelf/shelf.ts';
import { openLidFrac } from './box-variant.ts';
import { type HeaterSpot, movedTo } from './heater-spot.ts';
import { refusals } from './refusal.ts';

/** Least clear height under a lamp or emitter inside [m]: what lies below must not scorch; our choice, the maker decides. */
export const clearBelowM = 0.2;
/** Probe above the bottom panel [m]; common practice is 100 to 150 mm. */
const probeUpM = 0.14;

export type Side = 'left' | 'right';

/** The warm end as drawn, else the end away from the bowl. */
export function warmSide(enclosure: Enclosure): Side {
  const main = mainHeater(enclosure);
  const middle = enclosure.box.lengthM / 2;
  if (main >= 0) return (enclosure.heaters[main]?.xM ?? 0) <= middle ? 'left' : 'right';
  return enclosure.bowl && enclosure.bowl.xM < middle ? 'right' : 'left';
}

/** Lamps and emitters stand above such a lid, out of reach. */
export const hasOpenLid = (enclosure: Enclosure): boolean =>
  (enclosure.box.panels.top.meshShareFrac ?? 0) > openLidFrac;

type Placed = { readonly heater: Heater } | { readonly why: Saying };

/** A heater of the shelf in its place, or the reason why it has none here.
 *  @param spot another place than the usual one; a night heater goes with its lamp */
export function placedHeater(
  enclosure: Enclosure,
  item: ShelfHeater,
  role: 'main' | 'night',
  spot: HeaterSpot = 'usual',
): Placed {
  const usual = usualPlace(enclosure, item, role);
  if ('why' in usual) return usual;
  const heater = movedTo(spot, usual.heater, enclosure, leastUpM(enclosure));
  return heater ? { heater } : { why: refusals.noSuchPlace };
}

/** Lowest that a lamp or emitter may hang inside [m]. */
const leastUpM = (enclosure: Enclosure): number => (enclosure.substrate?.depthM ?? 0) + clearBelowM;

function usualPlace(enclosure: Enclosure, item: ShelfHeater, role: 'main' | 'night'): Placed {
  const { lengthM: L, depthM: D, heightM: H } = enclosure.box;
  const kind = item.heaterKind;
  const body = heaterBodies[kind];
  const from = (x: number) => (warmSide(enclosure) === 'left' ? x : L - x);
  const common = {
    id: role,
    kind,
    powerW: item.powerW,
    guarded: true,
    thermostatId: role,
    period: body.emitsLight ? ('day' as const) : ('all' as const),
  };
  if (body.form === 'area') {
    const lengthM = item.lengthM ?? 0.3;
    const depthM = item.depthM ?? 0.3;
    const mat = kind === 'heat-mat';
    if (!mat && hasOpenLid(enclosure)) return { why: refusals.panelLid };
    if (!mat && H < 0.35) return { why: refusals.panelLow };
    if (lengthM > L * 0.6 || depthM > D - 0.01) return { why: refusals.tooLarge };
    const x = mat ? lengthM / 2 + 0.02 : lengthM / 2 + 0.04;
    return {
      heater: {
        ...common,
        mount: mat ? (bottomCarriesHeat(enclosure) ? 'under-floor' : 'on-floor') : 'ceiling',
        xM: from(x),
        yM: D / 2,
        zM: mat ? 0 : H,
        lengthM,
        depthM,
        holder: 'none',
      },
    };
  }
  const above = hasOpenLid(enclosure);
  if (above && !mountsByKind[kind].includes('above-mesh')) return { why: refusals.aboveMesh };
  const z = above ? H + 0.02 : Math.max(H - 0.22, leastUpM(enclosure));
  if (!above && z > H - 0.1) return { why: refusals.bodyLow };
  const x = Math.max(0.15, 0.18 * L) + (role === 'night' ? 0.12 : 0);
  return {
    heater: { ...common, mount: above ? 'above-mesh' : 'inside', xM: from(x), yM: D * 0.53, zM: z, holder: 'ceramic' },
  };
}

/** Thin plastic or glass lets the heat of a mat below through; wood does not. */
function bottomCarriesHeat(enclosure: Enclosure): boolean {
  const { layers } = enclosure.box.panels.bottom;
  return layers.reduce((sum, layer) => sum + layer.thicknessM, 0) <= 0.006;
}

/** Where the probe of this heater goes. */
export function probeFor(enclosure: Enclosure, heater: Heater): Thermostat['probe'] {
  const { depthM, heightM } = enclosure.box;
  if (heater.kind === 'heat-mat') return { xM: heater.xM, yM: heater.yM, zM: 0, at: 'mat' };
  return { xM: heater.xM, yM: depthM - 0.01, zM: Math.min(probeUpM, heightM / 2), at: 'wall' };
}

/** Other places worth comparing: further along the back wall, and on the warm end's side wall. */
export function otherProbes(enclosure: Enclosure, heater: Heater): Thermostat['probe'][] {
  const { lengthM: L, depthM: D, heightM: H } = enclosure.box;
  if (heater.kind === 'heat-mat') return [];
  const left = heater.xM <= L / 2;
  const along = left ? Math.min(L, heater.xM + 0.2) : Math.max(0, heater.xM - 0.2);
  const zM = Math.min(probeUpM, H / 2);
  return [
    { xM: along, yM: D - 0.01, zM, at: 'wall' },
    { xM: left ? 0.01 : L - 0.01, yM: D / 2, zM, at: 'wall' },
  ];
}

export const lightKinds: readonly HeaterKind[] = ['basking-lamp', 'halogen-lamp'];
