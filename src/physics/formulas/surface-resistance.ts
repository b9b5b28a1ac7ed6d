// What does the film of air at a surface add to a wall's resistance? A vivarium stands in a room, so both of its faces
// are inside faces. Leaves out: small boxes whose faces see each other cold (there these figures are too warm).
import { blackBodyCoefficientWPerM2K } from './black-body-coefficient.ts';

/** Direction of the heat flow through the surface. */
export type HeatFlow = 'up' | 'horizontal' | 'down';

/** Inside surface resistance of the standard's table [m²K/W]. Source: ISO6946 tab. 7. */
export const insideResistanceM2KPerW: Readonly<Record<HeatFlow, number>> = { up: 0.1, horizontal: 0.13, down: 0.17 };

/** Convective part behind that table [W/m²K]. Source: ISO6946 annex (memory). */
export const insideConvectionWPerM2K: Readonly<Record<HeatFlow, number>> = { up: 5, horizontal: 2.5, down: 0.7 };

/** Surface resistance from its convective and radiative part.
 *  @param convectionWPerM2K [W/m²K] @param emissivity 0..1 @param tempC mean of surface and surroundings [°C]
 *  @returns [m²K/W]. Source: ISO6946 annex. Checks: P-005, P-006, P-007. */
export const surfaceResistanceM2KPerW = (convectionWPerM2K: number, emissivity: number, tempC: number): number =>
  1 / (convectionWPerM2K + emissivity * blackBodyCoefficientWPerM2K(tempC));
