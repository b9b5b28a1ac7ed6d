// What the simulator has to know about each generic kind of heater.
// Bodies as in data/heaters.json (heater-kinds.test.ts compares them), sheets per area; radiant and short-wave shares follow
// the black-body split at the source temperature (data/sources.json: INCROPERA, checks P-096, P-100).
import type { HeaterKind } from './enclosure.ts';

export interface HeaterBody {
  /** body: a hot lump in the air; area: a warm sheet on the floor or ceiling. */
  readonly form: 'body' | 'area';
  /** Diameter of the sphere that stands for the body [m]. */
  readonly diameterM: number;
  /** Long-wave emissivity of the body. */
  readonly emissivity: number;
  /** Heat capacity of the body [J/K]; for sheets [J/(m2 K)]. */
  readonly heatCapacity: number;
  /** Share of the electrical power that leaves at once as short-wave radiation below 2.8 um (passes glass). */
  readonly shortWaveFrac: number;
  /** Full angle of the usual beam of the short-wave part [deg]; 180 = a hemisphere. */
  readonly beamDeg: number;
  /** Whether it gives light (night rule). */
  readonly emitsLight: boolean;
}

/** From this short-wave share on a heater shines a beam; below it its radiation is that of its warm body. */
export const beamFromShortWaveFrac = 0.1;

export const heaterBodies: Readonly<Record<HeaterKind, HeaterBody>> = {
  'ceramic-emitter': {
    form: 'body',
    diameterM: 0.075,
    emissivity: 0.93,
    heatCapacity: 250,
    shortWaveFrac: 0.02,
    beamDeg: 180,
    emitsLight: false,
  },
  'infrared-projector': {
    form: 'body',
    diameterM: 0.095,
    emissivity: 0.84,
    heatCapacity: 200,
    shortWaveFrac: 0.31,
    beamDeg: 90,
    emitsLight: false,
  },
  'basking-lamp': {
    form: 'body',
    diameterM: 0.08,
    emissivity: 0.84,
    heatCapacity: 60,
    shortWaveFrac: 0.67,
    beamDeg: 60,
    emitsLight: true,
  },
  'halogen-lamp': {
    form: 'body',
    diameterM: 0.095,
    emissivity: 0.84,
    heatCapacity: 170,
    shortWaveFrac: 0.7,
    beamDeg: 30,
    emitsLight: true,
  },
  'radiant-panel': {
    form: 'area',
    diameterM: 0,
    emissivity: 0.9,
    heatCapacity: 6000,
    shortWaveFrac: 0,
    beamDeg: 180,
    emitsLight: false,
  },
  'heat-mat': {
    form: 'area',
    diameterM: 0,
    emissivity: 0.9,
    heatCapacity: 1500,
    shortWaveFrac: 0,
    beamDeg: 180,
    emitsLight: false,
  },
};
