// How much heat passes by radiation between grey faces: two that see only each other, and any number in a closed box.
import { kelvinFromCelsius, stefanBoltzmannWPerM2K4 } from './constants.ts';
import { solveLinear } from './linear-solve.ts';

const emission = (tempC: number): number => stefanBoltzmannWPerM2K4 * kelvinFromCelsius(tempC) ** 4;

/** Net flux between two large parallel faces. @param warmC [°C] @param warmEmissivity 0..1 @param coolC [°C] @param coolEmissivity 0..1
 *  @returns [W/m²], positive from the first to the second. Source: INCROPERA eq. 13.19. Checks: P-093. */
export const greyParallelFluxWPerM2 = (
  warmC: number,
  warmEmissivity: number,
  coolC: number,
  coolEmissivity: number,
): number => (emission(warmC) - emission(coolC)) / (1 / warmEmissivity + 1 / coolEmissivity - 1);

export interface GreyFace {
  readonly tempC: number;
  readonly emissivity: number;
}

/** Net radiation lost by every face of a closed enclosure, by radiosity: J = e sigma T^4 + (1-e) sum F J.
 *  @param faces        temperature and emissivity (0..1, not 0) of each
 *  @param viewFactors  viewFactors[i][j] from i to j, every row summing to 1
 *  @returns flux [W/m²] of each face, positive = loses heat
 *  Source: INCROPERA ch. 13.3. Checks: P-093 by two faces, heat closure over random boxes. */
export function greyNetFluxWPerM2(faces: readonly GreyFace[], viewFactors: readonly (readonly number[])[]): number[] {
  const matrix = faces.map((face, i) =>
    faces.map((_, j) => (i === j ? 1 : 0) - (1 - face.emissivity) * (viewFactors[i]?.[j] ?? 0)),
  );
  const radiosity = solveLinear(
    matrix,
    faces.map((face) => face.emissivity * emission(face.tempC)),
  );
  return faces.map((_, i) => {
    const incoming = faces.reduce((sum, __, j) => sum + (viewFactors[i]?.[j] ?? 0) * (radiosity[j] ?? 0), 0);
    return (radiosity[i] ?? 0) - incoming;
  });
}
