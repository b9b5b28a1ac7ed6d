// Which quantities in a heated box are uncertain, and their best values.
// Their priors (range, shape, source) are rows of data/priors.json; a test keeps the two equal.
// All are dimensionless multipliers or shares unless the name carries a unit (parameters.test.ts compares them with the data).

export interface Parameters {
  /** Eddy mixing along a layer: multiplier on the fitted coefficient. */
  readonly mixingAlong: number;
  /** Eddy mixing between layers: multiplier on the fitted coefficient. */
  readonly mixingUp: number;
  /** Inside natural-convection films: multiplier on the published law. */
  readonly insideFilm: number;
  /** Outside natural-convection films: multiplier on the published law. */
  readonly outsideFilm: number;
  /** Conductivity of every panel layer: multiplier on the table value. */
  readonly panelConductivity: number;
  /** Conductivity of the substrate: multiplier on the table value. */
  readonly substrateConductivity: number;
  /** Vents, gaps: multiplier on the effective area. */
  readonly leakage: number;
  /** What passes open mesh, of a plume and by trading places: multiplier on both laws. */
  readonly meshExchange: number;
  /** Share of an emitter's radiation that goes downward by the cosine law, the rest going all round. */
  readonly downwardFrac: number;
  /** Share of the convected heat of a heater near the ceiling that ends in the ceiling. */
  readonly plumeToCeilingFrac: number;
  /** Evaporation from bowl and wet substrate: multiplier on the transfer law. */
  readonly evaporation: number;
  /** True power of a heater relative to its rating. */
  readonly heaterPower: number;
  /** Share of what a probe feels that is radiation rather than air. */
  readonly probeRadiantFrac: number;
  /** Share of what a probe fixed to a wall feels that is the wall itself. */
  readonly probeWallFrac: number;
  /** What a thermostat reads too high [K]: its own calibration, and its probe some centimetres from where it was meant. */
  readonly probeErrorK: number;
  /** Outer film held at this value instead of the published laws, for comparison with programs that do so [W/m2K]. */
  readonly heldOuterFilmWPerM2K?: number;
}

export const bestParameters: Parameters = {
  mixingAlong: 1,
  mixingUp: 1,
  insideFilm: 1.2,
  outsideFilm: 1,
  panelConductivity: 1,
  substrateConductivity: 1,
  leakage: 1,
  meshExchange: 1,
  downwardFrac: 0.5,
  plumeToCeilingFrac: 0.83,
  evaporation: 1,
  heaterPower: 1,
  probeRadiantFrac: 0.3,
  probeWallFrac: 0.4,
  probeErrorK: 0,
};

export type ParameterName = Exclude<keyof Parameters, 'heldOuterFilmWPerM2K'>;
export const parameterNames = Object.keys(bestParameters) as readonly ParameterName[];
