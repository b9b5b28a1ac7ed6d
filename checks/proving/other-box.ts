// A heated box by a deliberately different model, to stand in for the real boxes that nobody has measured: a circulation
// cell instead of eddy mixing, a star of radiation instead of grey exchange, simple power-law films, a Gaussian patch of
// direct radiation, three-node walls, dial errors. Shares no code with src/physics, only the shape of an enclosure.
// Leaves out moisture, sun and mesh lids.
import type { Enclosure, Layer, PanelName } from '../../src/physics/enclosure.ts';
import type { MaterialTable } from '../../src/physics/material.ts';

/** What is true of one such box and hidden from the fit. */
export interface HiddenTruth {
  readonly conductivity: number;
  readonly substrateConductivity: number;
  readonly insideFilm: number;
  readonly outsideWPerM2K: number;
  readonly circulation: number;
  readonly leak: number;
  readonly convectedFrac: number;
  readonly toCeilingFrac: number;
  readonly floorFrac: number;
  readonly patchM: number;
  readonly power: number;
  readonly dialErrorK: number;
  readonly probeDirect: number;
  readonly hideShade: number;
}

export type TruePlace = 'basking-surface' | 'warm-hide' | 'cool-air' | 'cool-floor' | 'warm-air';

interface Node {
  tempC: number;
  readonly capacity: number;
  readonly links: { readonly to: Node | 'room'; g: number }[];
  heatW: number;
  /** Ties of this step to air, to radiation and to the room: conductance, and conductance times temperature. */
  tieG: number;
  tieQ: number;
}

const airJPerM3K = 1200;
const stepS = 20;

/** What goes wrong during a step. */
export interface Wrong {
  /** The switch of the thermostat sticks at this duty. */
  readonly stuckDuty?: number;
  /** The thermostat's probe lies in the room. */
  readonly probeOut?: boolean;
  /** Sun on the front [W/m2]. */
  readonly sunWPerM2?: number;
}

export interface OtherBox {
  /** One step of 20 s. @param hour of the day as the heater's timer has it */
  readonly step: (hour: number, roomC: number, wrong?: Wrong) => void;
  readonly read: (place: TruePlace) => number;
  readonly powerW: () => number;
}

/** Build it, everything at a start temperature. One heater: a free body inside, a ceiling panel or a floor mat. */
export function otherBox(enclosure: Enclosure, materials: MaterialTable, truth: HiddenTruth, startC: number): OtherBox {
  const { lengthM: L, depthM: D, heightM: H, panels } = enclosure.box;
  const heater = enclosure.heaters[0]!;
  const thermostat = enclosure.thermostats[0]!;
  const mat = heater.kind === 'heat-mat';
  const sheet = mat || heater.kind === 'radiant-panel';
  const count = Math.max(6, Math.round(L / 0.1));
  const w = L / count;
  const node = (capacity: number): Node => ({ tempC: startC, capacity, links: [], heatW: 0, tieG: 0, tieQ: 0 });
  const link = (a: Node, b: Node | 'room', g: number) => {
    a.links.push({ to: b, g });
    if (b !== 'room') b.links.push({ to: a, g });
  };
  const all: Node[] = [];
  const add = (capacity: number): Node => {
    const n = node(capacity);
    all.push(n);
    return n;
  };
  /** Three nodes through some layers, inside first; the last is tied to the room. */
  const slab = (layers: readonly (Layer & { k: number })[], area: number, extraR: number): Node[] => {
    let r = 0;
    let c = 0;
    for (const l of layers) {
      const m = materials[l.materialId]!;
      r += l.thicknessM / (m.conductivityWPerMK * l.k);
      c += m.densityKgPerM3 * m.heatCapacityJPerKgK * l.thicknessM;
    }
    const nodes = [add((c * area) / 4), add((c * area) / 2), add((c * area) / 4)];
    link(nodes[0]!, nodes[1]!, (2 * area) / Math.max(r, 1e-4));
    link(nodes[1]!, nodes[2]!, (2 * area) / Math.max(r, 1e-4));
    link(nodes[2]!, 'room', area / (1 / truth.outsideWPerM2K + extraR));
    return nodes;
  };
  const panel = (name: PanelName) => panels[name].layers.map((l) => ({ ...l, k: truth.conductivity }));
  const baseR = enclosure.box.base.kind === 'legs' ? 0 : 0.14;
  const xOf = (i: number) => (i + 0.5) * w;
  const columns = Array.from({ length: count }, (_, i) => {
    const inMat = sheet && Math.abs(xOf(i) - heater.xM) <= (heater.lengthM ?? 0.3) / 2 + 1e-9;
    const below = enclosure.substrate
      ? slab(
          [
            {
              materialId: enclosure.substrate.materialId,
              thicknessM: Math.max(0.003, enclosure.substrate.depthM),
              k: truth.substrateConductivity,
            },
          ],
          w * D,
          0,
        )
      : null;
    const board = slab(panel('bottom'), w * D, baseR);
    if (below) {
      // the substrate's outer face lies on the board, not in the room
      const last = below[2]!;
      last.links.splice(
        last.links.findIndex((l) => l.to === 'room'),
        1,
      );
      link(last, board[0]!, 60 * w * D);
    }
    return {
      xM: xOf(i),
      inMat,
      low: add((airJPerM3K * w * D * H) / 2),
      high: add((airJPerM3K * w * D * H) / 2),
      floor: (below ?? board)[0]!,
      matNode: board[heater.mount === 'under-floor' ? 2 : 0]!,
      ceiling: slab(panel('top'), w * D, 0)[0]!,
      front: slab(panel('front'), w * H, 0)[0]!,
      back: slab(panel('back'), w * H, 0)[0]!,
    };
  });
  const ends = [slab(panel('left'), D * H, 0)[0]!, slab(panel('right'), D * H, 0)[0]!];
  const surfaces: { n: Node; area: number; air: Node[]; kind: 'up' | 'down' | 'side' }[] = [];
  for (const c of columns) {
    surfaces.push({ n: c.floor, area: w * D, air: [c.low], kind: 'up' });
    surfaces.push({ n: c.ceiling, area: w * D, air: [c.high], kind: 'down' });
    surfaces.push({ n: c.front, area: w * H, air: [c.low, c.high], kind: 'side' });
    surfaces.push({ n: c.back, area: w * H, air: [c.low, c.high], kind: 'side' });
  }
  surfaces.push({ n: ends[0]!, area: D * H, air: [columns[0]!.low, columns[0]!.high], kind: 'side' });
  surfaces.push({ n: ends[1]!, area: D * H, air: [columns[count - 1]!.low, columns[count - 1]!.high], kind: 'side' });
  const areaSum = surfaces.reduce((s, f) => s + f.area, 0);

  const nearest = (x: number) => columns.reduce((a, b) => (Math.abs(b.xM - x) < Math.abs(a.xM - x) ? b : a));
  const hot = nearest(heater.xM);
  const hotAt = columns.indexOf(hot);
  const patchM = heater.kind === 'radiant-panel' ? truth.patchM + 0.12 : truth.patchM;
  const patch = columns.map((c) => Math.exp(-0.5 * ((c.xM - heater.xM) / patchM) ** 2));
  const patchSum = patch.reduce((s, v) => s + v, 0);
  const vents = enclosure.box.vents.reduce((s, v) => s + v.areaM2 * v.openFrac, 0) + enclosure.box.gapAreaM2;

  let duty = 1;
  let on = true;
  let probeC = startC;
  let watts = 0;
  const directOn = (i: number) =>
    sheet ? 0 : ((1 - truth.convectedFrac) * truth.floorFrac * patch[i]!) / patchSum / (w * D);

  const step = (hour: number, roomC: number, wrong: Wrong = {}): void => {
    const isDay =
      enclosure.day.startH <= enclosure.day.endH
        ? hour >= enclosure.day.startH && hour < enclosure.day.endH
        : hour >= enclosure.day.startH || hour < enclosure.day.endH;
    const set = (isDay ? thermostat.setDayC : thermostat.setNightC) + truth.dialErrorK;
    const felt = wrong.probeOut === true ? roomC : probeFelt();
    probeC += (felt - probeC) * (1 - Math.exp(-stepS / 90));
    if (thermostat.control === 'on-off') {
      if (probeC > set + thermostat.bandK / 2) on = false;
      if (probeC < set - thermostat.bandK / 2) on = true;
      duty = on ? 1 : 0;
    } else {
      const want = Math.max(0, Math.min(1, 0.5 + (set - probeC) / thermostat.bandK));
      duty += 0.2 * (want - duty);
    }
    watts = (wrong.stuckDuty ?? duty) * heater.powerW * truth.power;
    for (const n of all) n.heatW = 0;
    shine(wrong.sunWPerM2 ?? 0);
    spreadHeat();
    advance(roomC);
  };

  function probeFelt(): number {
    if (thermostat.probe.at === 'mat') {
      const under = columns.filter((c) => c.inMat);
      return under.reduce((s, c) => s + c.matNode.tempC, 0) / under.length;
    }
    const c = nearest(thermostat.probe.xM);
    const share = Math.max(0, Math.min(1, thermostat.probe.zM / H / 0.5 - 0.5));
    const air = c.low.tempC * (1 - share) + c.high.tempC * share;
    const wall = thermostat.probe.at === 'wall' ? c.back.tempC : air;
    const far = Math.hypot(
      thermostat.probe.xM - heater.xM,
      thermostat.probe.yM - heater.yM,
      thermostat.probe.zM - heater.zM,
    );
    const direct = sheet
      ? 0
      : (truth.probeDirect * watts * (1 - truth.convectedFrac)) / (4 * Math.PI * Math.max(0.04, far * far)) / 45;
    return 0.55 * air + 0.3 * wall + 0.15 * radiant() + direct;
  }

  const radiant = () => surfaces.reduce((s, f) => s + f.area * f.n.tempC, 0) / areaSum;

  /** Sun through a clear front: four fifths pass, most of it lands on the floor, the rest on the back. */
  function shine(sunWPerM2: number): void {
    const clear = (materials[panels.front.layers[0]!.materialId]?.shortWaveThroughFrac ?? 0) > 0.1 ? 0.8 : 0.05;
    const each = (sunWPerM2 * clear * L * H) / count;
    for (const c of columns) {
      c.floor.heatW += 0.6 * each;
      c.back.heatW += 0.3 * each;
    }
  }

  function spreadHeat(): void {
    if (mat) {
      const under = columns.filter((c) => c.inMat);
      for (const c of under) c.matNode.heatW += watts / under.length;
      return;
    }
    if (sheet) {
      const over = columns.filter((c) => c.inMat);
      // a ceiling panel: most of it radiates down from the sheet, a little warms the top air, the rest the ceiling
      for (const c of over) c.ceiling.heatW += (watts * (1 - truth.floorFrac * 0.65)) / over.length;
      columns.forEach((c, i) => {
        c.floor.heatW += (watts * truth.floorFrac * 0.65 * patch[i]!) / patchSum;
      });
      return;
    }
    const convected = watts * truth.convectedFrac;
    const radiated = watts - convected;
    hot.high.heatW += convected * (1 - truth.toCeilingFrac);
    for (const k of [-1, 0, 1])
      columns[Math.max(0, Math.min(count - 1, hotAt + k))]!.ceiling.heatW += (convected * truth.toCeilingFrac) / 3;
    const rest = radiated * (1 - truth.floorFrac);
    columns.forEach((c, i) => {
      c.floor.heatW += (radiated * truth.floorFrac * patch[i]!) / patchSum;
      const near = patch[i]! / patchSum;
      c.front.heatW += 0.25 * rest * near;
      c.back.heatW += 0.3 * rest * near;
      c.ceiling.heatW += 0.25 * rest * near;
    });
    ends[heater.xM < L / 2 ? 0 : 1]!.heatW += 0.2 * rest;
  }

  function film(f: (typeof surfaces)[number], airC: number): number {
    const d = Math.abs(f.n.tempC - airC) + 0.05;
    const rising = f.kind === 'up' ? f.n.tempC > airC : f.kind === 'down' ? f.n.tempC < airC : true;
    const law = f.kind === 'side' ? 1.5 * d ** 0.3 : rising ? 1.8 * d ** 0.33 : 0.7 * d ** 0.25;
    return truth.insideFilm * law;
  }

  function advance(roomC: number): void {
    const mrt = radiant();
    for (const n of all) {
      n.tieG = 0;
      n.tieQ = 0;
    }
    const tie = (n: Node, g: number, toC: number) => {
      n.tieG += g;
      n.tieQ += g * toC;
    };
    for (const f of surfaces) {
      tie(f.n, 5.4 * f.area, mrt);
      for (const air of f.air) {
        const g = (film(f, air.tempC) * f.area) / f.air.length;
        tie(f.n, g, air.tempC);
        tie(air, g, f.n.tempC);
      }
    }
    // circulation cell: up over the heater, along under the lid, down everywhere, back along the floor
    const drive = mat ? watts * 0.45 : sheet ? watts * 0.12 : watts * truth.convectedFrac;
    const reach = mat || sheet ? H : Math.max(0.1, H - heater.zM + 0.1);
    const flow = truth.circulation * 0.071 * Math.cbrt(Math.max(0.5, drive) / 1000) * reach ** (5 / 3) * 1006;
    columns.forEach((c, i) => {
      tie(c.low, flow * (w / L), c.high.tempC);
      if (c === hot) tie(c.high, flow, c.low.tempC);
      // neighbours nearer to the heater feed the upper layer, those farther away feed the lower one
      const nearer = columns[i + Math.sign(hotAt - i)];
      const beyond = i <= hotAt ? (i + (i === hotAt ? 0 : 1)) * w : (count - i) * w;
      if (nearer && c !== hot) {
        tie(c.high, (flow * beyond) / L, nearer.high.tempC);
        tie(nearer.low, (flow * beyond) / L, c.low.tempC);
      }
      tie(c.low, 0.25, c.high.tempC);
      tie(c.high, 0.25, c.low.tempC);
    });
    const meanAir = columns.reduce((s, c) => s + c.low.tempC + c.high.tempC, 0) / (2 * count);
    const leakM3PerS = truth.leak * 0.3 * vents * Math.sqrt((9.81 * 0.5 * H * Math.abs(meanAir - roomC)) / 295);
    for (const c of columns) tie(c.low, (leakM3PerS * airJPerM3K) / count, roomC);
    const next = all.map((n) => {
      let g = n.capacity / stepS;
      let q = g * n.tempC + n.heatW;
      for (const l of n.links) {
        g += l.g;
        q += l.g * (l.to === 'room' ? roomC : l.to.tempC);
      }
      return (q + n.tieQ) / (g + n.tieG);
    });
    all.forEach((n, i) => {
      n.tempC = next[i]!;
    });
  }

  const warmLeft = heater.xM <= L / 2;
  const hideAt = (enclosure.hides.find((h) => h.xM <= L / 2 === warmLeft) ?? { xM: warmLeft ? L * 0.25 : L * 0.75 }).xM;
  const meanOver = (from: number, to: number, value: (c: (typeof columns)[number]) => number) => {
    const some = columns.filter((c) => c.xM >= from - w / 2 && c.xM <= to + w / 2);
    return some.reduce((s, c) => s + value(c), 0) / some.length;
  };
  const read = (place: TruePlace): number => {
    const farX = warmLeft ? L * (15 / 16) : L / 16;
    if (place === 'basking-surface') {
      const half = sheet ? (mat ? (heater.lengthM ?? 0.3) / 2 - w / 2 : 0.1) : 0.1 - w / 2;
      return meanOver(heater.xM - half, heater.xM + half, (c) => c.floor.tempC);
    }
    if (place === 'warm-hide') {
      const c = nearest(hideAt);
      const shade = (truth.hideShade * directOn(columns.indexOf(c)) * watts) / 10;
      return 0.55 * (c.floor.tempC - shade) + 0.45 * c.low.tempC;
    }
    if (place === 'cool-floor') return meanOver(farX - L / 16, farX + L / 16, (c) => c.floor.tempC);
    if (place === 'warm-air') return nearest(warmLeft ? L / 16 : L * (15 / 16)).low.tempC;
    return nearest(farX).low.tempC;
  };
  return { step, read, powerW: () => watts };
}
