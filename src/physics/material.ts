// A material as the physics room is handed it: one row of data/materials.json, with units in the names.

export interface Material {
  readonly id: string;
  readonly name: string;
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly heatCapacityJPerKgK: number;
  /** Long-wave emissivity of its surface, 0..1. */
  readonly emissivity: number;
  /** Short-wave (lamp and sun) share let through by a usual thickness, 0 unless clear. */
  readonly shortWaveThroughFrac: number;
}

export type MaterialTable = Readonly<Record<string, Material>>;
