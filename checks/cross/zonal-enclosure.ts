// The six boxes of the zonal model as enclosures of ours. What its files do not state is chosen here and nowhere else:
// the materials' properties (our table), the size of the radiant panel (from its watts and temperature), the lamp's beam.
// Its constant leak of 0.1 to 0.2 air changes an hour (0.01 L/s) is left out.
import type { Enclosure, Heater, Panel, Thermostat } from '../../src/physics/enclosure.ts';
import { bareEnclosure, heaterOf, panelOf } from '../box/plain-box.ts';

interface ZonalPanel {
  readonly material: string;
  readonly t: number;
}

export interface ZonalScenario {
  readonly name: string;
  readonly size: readonly [number, number, number];
  readonly N: number;
  readonly panels: Readonly<Record<string, ZonalPanel>>;
  readonly substrate: ZonalPanel;
  readonly leak_area: number;
  readonly vents: readonly { readonly x: number; readonly z: number; readonly area: number }[];
  readonly heater: {
    readonly type: 'ceramic' | 'mat' | 'panel' | 'lamp';
    readonly power: number;
    readonly pos?: readonly [number, number, number];
    readonly span?: readonly [number, number];
  };
  readonly bowl: { readonly area: number; readonly x: number };
  readonly wet_fraction: number;
  readonly probe: { readonly x: number; readonly y: number; readonly z: number };
  readonly thermostat: {
    readonly type: 'onoff' | 'dimming' | 'pulse';
    readonly Tset: number;
    readonly hysteresis?: number;
    readonly band?: number;
  };
  readonly room: { readonly T: number; readonly RH: number };
}

/** Their words for materials by ours. Board and foam board are our reading of "wood" and "pvc"; nothing in its files says so. */
const materialIds: Readonly<Record<string, string>> = {
  wood: 'plywood-500',
  glass: 'glass',
  pvc: 'pvc-foam-board',
  plastic: 'polypropylene',
  bark: 'bark-chips',
  paper: 'paper',
};

/** Panel of 80 W: 46 W radiated at 81 °C to 27 °C are 0.12 m2 at an emissivity of 0.9. */
const radiantPanelM = { lengthM: 0.4, depthM: 0.3 };

const panelFrom = (p: ZonalPanel): Panel => panelOf(materialIds[p.material]!, p.t);

function heaterFrom(s: ZonalScenario): Heater {
  const [L, D, H] = s.size;
  const powerW = s.heater.power;
  const thermostatId = 't';
  if (s.heater.type === 'mat') {
    const [from, to] = s.heater.span!;
    const size = { lengthM: (to - from) * L, depthM: D };
    const xM = ((from + to) / 2) * L;
    return heaterOf({ kind: 'heat-mat', powerW, mount: 'under-floor', xM, yM: D / 2, zM: 0, thermostatId, ...size });
  }
  const [x, y, z] = s.heater.pos!;
  const place = { powerW, xM: x * L, yM: y * D, zM: z * H, thermostatId };
  if (s.heater.type === 'panel')
    return heaterOf({ kind: 'radiant-panel', mount: 'ceiling', ...place, ...radiantPanelM });
  const kind = s.heater.type === 'lamp' ? 'basking-lamp' : 'ceramic-emitter';
  return heaterOf({ kind, mount: 'inside', ...place });
}

function thermostatFrom(s: ZonalScenario): Thermostat {
  const [L, D, H] = s.size;
  const { type, Tset, hysteresis, band } = s.thermostat;
  return {
    id: 't',
    control: type === 'onoff' ? 'on-off' : type,
    probe: { xM: s.probe.x * L, yM: s.probe.y * D, zM: s.probe.z * H, at: s.heater.type === 'mat' ? 'mat' : 'air' },
    setDayC: Tset,
    setNightC: Tset,
    bandK: hysteresis ?? band ?? 1,
    ratingW: 1000,
    cutOutC: null,
  };
}

export function zonalEnclosure(s: ZonalScenario): Enclosure {
  const [L, D, H] = s.size;
  const wall = panelFrom(s.panels.all!);
  const { back, front } = s.panels;
  return bareEnclosure({
    name: s.name,
    sizeM: [L, D, H],
    wall,
    panels: { back: back ? panelFrom(back) : wall, front: front ? panelFrom(front) : wall },
    vents: s.vents.map((v) => ({ panel: 'back', alongM: v.x * L, heightM: v.z * H, areaM2: v.area, openFrac: 1 })),
    gapAreaM2: s.leak_area,
    heaters: [heaterFrom(s)],
    thermostats: [thermostatFrom(s)],
    substrate: { materialId: materialIds[s.substrate.material]!, depthM: s.substrate.t, wetFrac: s.wet_fraction },
    bowl: { xM: s.bowl.x * L, yM: D / 2, diameterM: Math.sqrt((4 * s.bowl.area) / Math.PI) },
    roomC: s.room.T,
    roomRhPct: s.room.RH,
  });
}
