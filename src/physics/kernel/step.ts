// One step of heat in the kernel: both stages, the heaters' bodies and the sums for the books. The same step in plain
// arithmetic is heat-step.ts, which hands over to this where there is a kernel.
import type { BoxModel } from '../model.ts';
import type { Moisture } from '../moisture.ts';
import type { Network } from '../network.ts';
import type { HeaterNow, Shining } from '../places.ts';
import type { Factored } from './factored.ts';
import { heaterSlot, heaterStride } from './heater-numbers.ts';
import { kernelInstance } from './instance.ts';
import { type Place, placeOf, tableByte } from './resident.ts';
import type { Sources } from './solve-plain.ts';

export interface KernelStep {
  readonly model: BoxModel;
  readonly net: Network;
  readonly factored: Factored;
  readonly roomC: number;
  /** What is given to the box besides its heaters; the same object for as long as it holds. */
  readonly ambient: Sources;
  readonly moisture: Moisture;
  readonly powerW: readonly number[];
}

export interface KernelStepped {
  readonly bodyC: number[];
  readonly now: HeaterNow[];
  /** What the heaters sent at the step's start. */
  readonly before: Shining[];
  /** Means over the step [W]: heat out of the box, latent heat it got, what its heaters kept inside. */
  readonly outW: number;
  readonly latentW: number;
  readonly keptW: number;
  /** Heat that air and panels took up [J]. */
  readonly storedJ: number;
}

const fixedLatent = new WeakMap<Moisture, number>();

/** Step from one row of temperatures to another; null where there is no kernel.
 *  @param bodyC heaters' bodies at the start [degC]   @param weight that of the implicit stages */
export function stepInKernel(
  step: KernelStep,
  old: Float64Array,
  bodyC: readonly number[],
  weight: number,
  row: Float64Array,
): KernelStepped | null {
  const kernel = kernelInstance();
  if (!kernel) return null;
  const { model, factored, powerW } = step;
  const place = placeOf(kernel, model, factored);
  const { bodies, books, outside } = place.part;
  bringAmbient(place, step);
  outside.set(step.net.outsideC);
  place.part.old.set(old);
  const stride = heaterStride(factored.layout);
  for (let h = 0; h < powerW.length; h++) {
    bodies[h * stride + heaterSlot.powerW] = powerW[h]!;
    bodies[h * stride + heaterSlot.bodyC] = bodyC[h]!;
  }
  kernel.heatStep(tableByte, factored.perS, weight, step.roomC);
  row.set(place.part.row);
  const after: number[] = [];
  const now: HeaterNow[] = [];
  const before: Shining[] = [];
  for (let h = 0; h < powerW.length; h++) {
    const at = h * stride;
    const isBody = bodies[at] === 1;
    const nowC = bodies[at + heaterSlot.bodyC + 2]!;
    after.push(nowC);
    before.push({ radiatedW: isBody ? bodies[at + heaterSlot.radiatedAtStartW]! : 0, shortWaveW: 0 });
    now.push({
      powerW: powerW[h]!,
      bodyC: nowC,
      convectedW: isBody ? bodies[at + heaterSlot.convectedW]! : 0,
      radiatedW: isBody ? bodies[at + heaterSlot.radiatedW]! : 0,
      shortWaveW: isBody ? powerW[h]! * model.heaters[h]!.shortWaveFrac : 0,
    });
  }
  const latentW = fixedLatentW(step.moisture) - books[1]!;
  return { bodyC: after, now, before, outW: books[0]!, latentW, keptW: books[2]!, storedJ: books[3]! };
}

function bringAmbient(place: Place, { ambient, moisture }: KernelStep): void {
  if (place.ambient === ambient) return;
  place.ambient = ambient;
  place.part.ambient.set(ambient.airW);
  place.part.ambient.set(ambient.surfaceW, place.layout.airNodes);
  place.part.slope.set(moisture.surfaceSlope);
}

/** Latent heat of a box at 0 degC [W]: what does not change while the water is not worked out anew. */
function fixedLatentW(moisture: Moisture): number {
  const found = fixedLatent.get(moisture);
  if (found !== undefined) return found;
  let w = moisture.airW.reduce((s, v) => s + v, 0);
  for (let s = 0; s < moisture.surfaceW.length; s++)
    w += moisture.surfaceW[s]! + moisture.surfaceSlope[s]! * moisture.atSurfaceC[s]!;
  fixedLatent.set(moisture, w);
  return w;
}
