// What share of a ceramic-type emitter's watts leaves as radiation? The emitter as a grey ball in still air.
// Leaves out socket, cage and reflector. Our own calculation: no measured share for such emitters was found.
import { kelvinFromCelsius, stefanBoltzmannWPerM2K4 } from './constants.ts';
import { dryAir } from './dry-air.ts';
import { nusseltSphereChurchill } from './nusselt-churchill-chu.ts';
import { filmWPerM2K, rayleighNumber } from './rayleigh.ts';

export interface EmitterBall {
  readonly diameterM: number;
  readonly emissivity: number;
  readonly surfaceC: number;
  readonly airC: number;
  readonly wallsC: number;
}

/** Watts radiated and convected by the ball, and the radiated share.
 *  Source: CHURCHILL1983 and Stefan-Boltzmann, own combination. Checks: P-100. */
export function emitterSplit(ball: EmitterBall): { radiatedW: number; convectedW: number; radiantFrac: number } {
  const areaM2 = Math.PI * ball.diameterM ** 2;
  const air = dryAir((ball.surfaceC + ball.airC) / 2);
  const deltaK = ball.surfaceC - ball.airC;
  const nusselt = nusseltSphereChurchill(rayleighNumber(air, deltaK, ball.diameterM), air.prandtl);
  const convectedW = filmWPerM2K(nusselt, air, ball.diameterM) * areaM2 * deltaK;
  const radiatedW =
    ball.emissivity *
    stefanBoltzmannWPerM2K4 *
    areaM2 *
    (kelvinFromCelsius(ball.surfaceC) ** 4 - kelvinFromCelsius(ball.wallsC) ** 4);
  return { radiatedW, convectedW, radiantFrac: radiatedW / (radiatedW + convectedW) };
}
