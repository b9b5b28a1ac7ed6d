// The numbers of one box and its start, in the order that bench/c-twin/box.c reads them: 8-byte numbers, one after another.
// The twin knows one heater with a body, one on/off thermostat, a bowl, plain panels; anything else is refused here.
import { probeLagS } from '../src/physics/control.ts';
import type { RoomDay } from '../src/physics/enclosure.ts';
import { layoutOf } from '../src/physics/kernel/layout.ts';
import { mixingAlongFitted, mixingUpFitted } from '../src/physics/mixing.ts';
import { type BoxModel, columnAt } from '../src/physics/model.ts';
import type { RunOptions, RunState } from '../src/physics/run.ts';
import { ratedW, roomRatioOf } from '../src/physics/steady.ts';

export function twinData(model: BoxModel, roomDay: RoomDay, start: RunState, options: RunOptions): Float64Array {
  refuseUnknown(model, roomDay);
  const { grid, enclosure, parameters: p, heaters, openings, readings } = model;
  const layout = layoutOf(model);
  const heater = heaters[0]!;
  const thermostat = enclosure.thermostats[0]!;
  const probe = readings.probes[0]!;
  const { box } = enclosure;
  const bowl = enclosure.bowl!;
  const { moisture } = start;
  return Float64Array.from([
    ...[grid.columns, grid.layers, layout.airNodes, layout.patches, layout.behind],
    ...[openings.list.length, heater.stands.length],
    ...[box.lengthM, box.depthM, box.heightM, p.insideFilm, p.outsideFilm, p.mixingAlong, p.mixingUp],
    ...[p.leakage, p.evaporation, mixingAlongFitted, mixingUpFitted],
    ...[options.stepS, options.renewS, options.probeLagS ?? probeLagS],
    ...[thermostat.setDayC, thermostat.setNightC, thermostat.bandK, enclosure.day.startH, enclosure.day.endH],
    ...[roomDay.lowC, roomDay.highC, roomRatioOf((roomDay.lowC + roomDay.highC) / 2, roomDay.rhPct)],
    ...[ratedW(model, 0, { isDay: true }), heater.body.diameterM, heater.body.emissivity, heater.areaM2],
    ...[heater.body.heatCapacity, probe.perRadiatedW[0]!, columnAt(grid, bowl.xM), bowl.diameterM],
    ...[heater.shortWaveFrac, probe.perShortWaveW[0]!],
    heater.riseFrac,
    ...[start.bodyC[0]!, start.probeC[0]!, start.duty[0]!],
    ...grid.edgeM,
    ...grid.columnXM,
    ...layout.first,
    ...layout.capacity,
    ...layout.conductance,
    ...layout.airAt,
    ...layout.order,
    ...grid.patches.map((x) => ['floor', 'ceiling', 'wall'].indexOf(x.facing)),
    ...layout.riseFrac,
    ...grid.patches.map((x) => x.column),
    ...grid.patches.map((x) => x.layer),
    ...model.areas,
    ...model.chains.map((c) => c.baseResistance),
    ...model.greyExchange,
    ...model.airVolumeM3,
    ...heater.longWave,
    ...heater.shortWave,
    ...heater.plumeAir,
    ...heater.plumePatch,
    ...heater.stands.map((x) => x.node),
    ...heater.stands.map((x) => x.weight),
    ...probe.air,
    ...probe.surface,
    ...openings.list.map((o) => o.zM),
    ...openings.list.map((o) => o.effectiveM2),
    ...openings.list.map((o) => o.heightM),
    ...openings.list.map((o) => o.airNode),
    ...start.box.row,
    ...moisture.ratio,
    ...[...moisture.airW, ...moisture.surfaceW, ...moisture.surfaceSlope, ...moisture.atSurfaceC],
  ]);
}

function refuseUnknown({ enclosure, grid, heaters, radiant }: BoxModel, roomDay: RoomDay): void {
  const { box } = enclosure;
  const unknown = [
    heaters.length !== 1 || heaters[0]!.body.form !== 'body' || heaters[0]!.outside ? 'its heaters' : '',
    heaters.some((h) => h.heater.period !== 'all') ? 'a heater for the day alone' : '',
    enclosure.thermostats.length !== 1 || enclosure.thermostats[0]!.control !== 'on-off' ? 'its thermostats' : '',
    enclosure.thermostats.some((t) => t.cutOutC !== null) ? 'a cut-out' : '',
    enclosure.bowl === null || enclosure.misting ? 'its water' : '',
    (enclosure.substrate?.wetFrac ?? 0) > 0 ? 'wet substrate' : '',
    grid.patches.some((p) => p.role === 'mesh' || p.role === 'mat' || p.role === 'panel') ? 'mesh or sheets' : '',
    grid.patches.length !== radiant.count ? 'radiant groups' : '',
    box.base.kind === 'stacked' || roomDay.hourlyC || roomDay.sunPeakWPerM2 > 0 ? 'its surroundings' : '',
  ].filter((u) => u !== '');
  if (unknown.length > 0) throw new Error(`the C twin does not know ${unknown.join(', ')}`);
}
