// How thick is a snake, and how much floor does it cover when it lies coiled? For hides and bowls.
// Leaves out: body condition, which the examination judges.

/** A snake tapers: its volume against that of a cylinder of its thickest diameter, share. From memory, our choice. */
const taperFrac = 0.8;
/** Flesh and water weigh about the same [g/cm³]; from memory. */
const densityGPerCm3 = 1.0;
/** Thickness against length when nobody has weighed the animal; between slim colubrids (1/45) and pythons (1/27), from memory. */
const slenderness = 35;

/** Thickest diameter of the body [m].
 *  @param totalLengthM 0.1..6     @param massG or null when not weighed
 *  Source: OUR-CHOICE (a tapering cylinder). */
export function bodyDiameterM(totalLengthM: number, massG: number | null): number {
  if (massG === null) return totalLengthM / slenderness;
  const volumeM3 = (massG / densityGPerCm3) * 1e-6;
  return Math.sqrt((4 * volumeM3) / (taperFrac * Math.PI * totalLengthM));
}

/** Floor that the animal covers when coiled flat in one layer [m²]. */
export const coilAreaM2 = (totalLengthM: number, massG: number | null): number =>
  totalLengthM * bodyDiameterM(totalLengthM, massG);
