// What stands in the box, as outlines in space: hides, bowl, heaters with their beam, probes with their height, perch, vents.
import type { Enclosure, Heater, Vent } from '../../../physics/enclosure.ts';
import type { Point } from './turn.ts';

export interface Line {
  readonly key: string;
  readonly className: string;
  readonly closed: boolean;
  readonly points: readonly Point[];
}

const corners = 20;

function ring(x: number, y: number, z: number, radiusM: number): readonly Point[] {
  return Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    return { x: x + radiusM * Math.cos(angle), y: y + radiusM * Math.sin(angle), z };
  });
}

function level(x: number, y: number, z: number, lengthM: number, depthM: number): readonly Point[] {
  const [a, b] = [lengthM / 2, depthM / 2];
  return [
    { x: x - a, y: y - b, z },
    { x: x + a, y: y - b, z },
    { x: x + a, y: y + b, z },
    { x: x - a, y: y + b, z },
  ];
}

/** Radius of a lamp or an emitter on the drawing; about that of a usual one, common practice [m]. */
const emitterM = 0.05;

export function thingsInside(enclosure: Enclosure): readonly Line[] {
  const { box, hides, bowl, perch, heaters, thermostats } = enclosure;
  const floorM = enclosure.substrate?.depthM ?? 0;
  const all: Line[] = [];
  const add = (key: string, className: string, points: readonly Point[], closed = true): void => {
    all.push({ key, className, closed, points });
  };
  hides.forEach((hide, i) => {
    const foot = level(hide.xM, hide.yM, floorM, hide.lengthM, hide.depthM);
    const roof = foot.map((one) => ({ ...one, z: floorM + hide.heightM }));
    for (let side = 0; side < 4; side++) {
      const next = (side + 1) % 4;
      add(`hide-${i}-${side}`, 'turned-hide', [foot[side]!, foot[next]!, roof[next]!, roof[side]!]);
    }
    add(`hide-${i}-roof`, 'turned-hide', roof);
  });
  if (bowl) {
    add('bowl', 'bowl', ring(bowl.xM, bowl.yM, floorM, bowl.diameterM / 2));
    add('water', 'water turned-water', ring(bowl.xM, bowl.yM, floorM + 0.005, bowl.diameterM / 2.5));
  }
  for (const heater of heaters) addHeater(heater, floorM, box.heightM, add);
  for (const { id, probe } of thermostats) {
    const z = probe.at === 'floor' || probe.at === 'mat' ? floorM : probe.zM;
    add(
      `probe-drop-${id}`,
      'turned-drop',
      [
        { x: probe.xM, y: probe.yM, z },
        { x: probe.xM, y: probe.yM, z: floorM },
      ],
      false,
    );
    add(`probe-${id}`, 'probe-dot', ring(probe.xM, probe.yM, z, 0.015));
  }
  if (perch) {
    const from = Math.max(0.02, perch.xM - 0.22);
    const to = Math.min(box.lengthM - 0.02, perch.xM + 0.24);
    add(
      'perch',
      'perch',
      [
        { x: from, y: perch.yM, z: perch.zM },
        { x: to, y: perch.yM, z: perch.zM },
      ],
      false,
    );
  }
  box.vents.forEach((vent, i) => {
    add(`vent-${i}`, 'turned-vent', ventOutline(vent, box.lengthM, box.depthM, box.heightM));
  });
  return all;
}

/** Height of a heater; that of a mat or a panel follows from where it is fixed [m]. */
export function heaterHeightM(heater: Heater, floorM: number, heightM: number): number {
  if (heater.mount === 'under-floor') return 0;
  if (heater.mount === 'on-floor') return floorM;
  const flat = heater.lengthM !== undefined && heater.depthM !== undefined;
  return flat || heater.mount === 'above-mesh' ? heightM : Math.min(heater.zM, heightM);
}

function addHeater(
  heater: Heater,
  floorM: number,
  heightM: number,
  add: (key: string, className: string, points: readonly Point[], closed?: boolean) => void,
): void {
  const { id, xM, yM } = heater;
  const z = heaterHeightM(heater, floorM, heightM);
  if (heater.lengthM !== undefined && heater.depthM !== undefined) {
    add(`heater-${id}`, 'heater-area', level(xM, yM, z, heater.lengthM, heater.depthM));
    return;
  }
  add(`heater-${id}`, 'heater-area', ring(xM, yM, z, emitterM));
  if (heater.beamDeg === undefined) {
    add(
      `heater-drop-${id}`,
      'turned-drop',
      [
        { x: xM, y: yM, z },
        { x: xM, y: yM, z: floorM },
      ],
      false,
    );
    return;
  }
  const spotM = (z - floorM) * Math.tan((Math.min(heater.beamDeg, 150) * Math.PI) / 360);
  add(`spot-${id}`, 'turned-spot', ring(xM, yM, floorM, spotM));
  for (const side of [-1, 1])
    add(
      `beam-${id}-${side}`,
      'turned-drop',
      [
        { x: xM, y: yM, z },
        { x: xM + side * spotM, y: yM, z: floorM },
      ],
      false,
    );
}

/** A vent is drawn twice as wide as high, on its panel. */
function ventOutline(vent: Vent, lengthM: number, depthM: number, heightM: number): readonly Point[] {
  const high = Math.sqrt(vent.areaM2 / 2);
  const [a0, a1] = [vent.alongM - high, vent.alongM + high];
  const [z0, z1] = [vent.heightM - high / 2, vent.heightM + high / 2];
  const { panel } = vent;
  if (panel === 'front' || panel === 'back') {
    const y = panel === 'front' ? 0 : depthM;
    return [
      { x: a0, y, z: z0 },
      { x: a1, y, z: z0 },
      { x: a1, y, z: z1 },
      { x: a0, y, z: z1 },
    ];
  }
  if (panel === 'left' || panel === 'right') {
    const x = panel === 'left' ? 0 : lengthM;
    return [
      { x, y: a0, z: z0 },
      { x, y: a1, z: z0 },
      { x, y: a1, z: z1 },
      { x, y: a0, z: z1 },
    ];
  }
  return level(vent.alongM, depthM / 2, panel === 'top' ? heightM : 0, 2 * high, high);
}
