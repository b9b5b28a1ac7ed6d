// What a heated enclosure is: the shape of the JSON that people write, open and change.
// Coordinates: x from the left inside wall along the length, y from the front glass to the back,
// z up from the inside of the bottom panel. Metres, watts, degrees Celsius, percent at this edge.
// Limits of every number: enclosure-fields.ts. Leaves out: what the animal needs (husbandry).

export const enclosureFormat = 'warmstead-enclosure';
export const enclosureVersion = 1;

export type PanelName = 'front' | 'back' | 'left' | 'right' | 'top' | 'bottom';
export const panelNames: readonly PanelName[] = ['front', 'back', 'left', 'right', 'top', 'bottom'];

/** One layer of a panel; material is a key of data/materials.json. */
export interface Layer {
  readonly materialId: string;
  readonly thicknessM: number;
}

export interface Panel {
  /** Inside to outside, at least one layer. */
  readonly layers: readonly Layer[];
  /** Share of this panel that is mesh instead of the layers, 0..1. */
  readonly meshShareFrac?: number;
  /** Open share of the mesh itself, 0..1; common practice for fly mesh about 0.6. */
  readonly meshOpenFrac?: number;
  /** Diameter of the wires of the mesh [m]; fly mesh 0.0003 when absent (data/mesh.json). */
  readonly meshWireM?: number;
  /** Share of the mesh that is covered over, 0..1. */
  readonly meshCoveredFrac?: number;
}

/** A planned opening. Centre position along the panel: alongM = x for front/back/top/bottom, y for left/right; heightM = z (ignored for top/bottom). */
export interface Vent {
  readonly panel: PanelName;
  readonly alongM: number;
  readonly heightM: number;
  readonly areaM2: number;
  /** Open share of the grille, 0..1. */
  readonly openFrac: number;
}

/** shelf: stands flat on furniture; legs: air under it; floor: on the room's floor; stacked: on another heated box. */
export type BaseKind = 'shelf' | 'legs' | 'floor' | 'stacked';

export interface Base {
  readonly kind: BaseKind;
  /** Temperature of the box below, only for "stacked". */
  readonly belowC?: number;
}

export interface Box {
  readonly lengthM: number;
  readonly depthM: number;
  readonly heightM: number;
  readonly panels: Readonly<Record<PanelName, Panel>>;
  readonly vents: readonly Vent[];
  /** Sum of unplanned gaps (door edges, cable holes). */
  readonly gapAreaM2: number;
  /** Widest single gap, for the escape check; null when nobody measured it. */
  readonly widestGapM: number | null;
  readonly base: Base;
}

export type HeaterKind =
  | 'ceramic-emitter'
  | 'infrared-projector'
  | 'basking-lamp'
  | 'halogen-lamp'
  | 'radiant-panel'
  | 'heat-mat';
export const heaterKinds: readonly HeaterKind[] = [
  'ceramic-emitter',
  'infrared-projector',
  'basking-lamp',
  'halogen-lamp',
  'radiant-panel',
  'heat-mat',
];

/** Where a heater sits: free in the box, on the ceiling inside, above a mesh lid, on the floor inside, or under the bottom panel. */
export type HeaterMount = 'inside' | 'ceiling' | 'above-mesh' | 'on-floor' | 'under-floor';

export interface Heater {
  readonly id: string;
  readonly kind: HeaterKind;
  readonly powerW: number;
  readonly mount: HeaterMount;
  /** Centre of the heater. For mats and panels the centre of their area; zM ignored for them. */
  readonly xM: number;
  readonly yM: number;
  readonly zM: number;
  /** Size of a mat or a panel along x and y; ignored for lamps and emitters. */
  readonly lengthM?: number;
  readonly depthM?: number;
  /** Full angle of a reflector's or a lamp's beam. */
  readonly beamDeg?: number;
  readonly guarded: boolean;
  /** Thermostat that drives it; null = always on while its period is on (no thermostat). */
  readonly thermostatId: string | null;
  /** all: day and night; day: only while the day period lasts (a light-emitting heater). */
  readonly period: 'all' | 'day';
  /** Load rating of the lampholder material, for the safety rules. */
  readonly holder?: 'ceramic' | 'plastic' | 'none';
}

export type ControlKind = 'on-off' | 'pulse' | 'dimming';
export const controlKinds: readonly ControlKind[] = ['on-off', 'pulse', 'dimming'];

export interface Thermostat {
  readonly id: string;
  readonly control: ControlKind;
  /** Probe: anywhere inside; snap "mat" places it between a heat mat and the floor it heats. */
  readonly probe: {
    readonly xM: number;
    readonly yM: number;
    readonly zM: number;
    readonly at: 'air' | 'wall' | 'floor' | 'mat';
  };
  readonly setDayC: number;
  readonly setNightC: number;
  /** on-off: whole switching differential; pulse and dimming: proportional band. */
  readonly bandK: number;
  /** Cycle of a pulse thermostat. */
  readonly cycleS?: number;
  readonly ratingW: number;
  /** A second, independent cut-out that opens above this temperature at the same probe place; null = none. */
  readonly cutOutC: number | null;
}

export interface Substrate {
  readonly materialId: string;
  readonly depthM: number;
  /** Share of the surface that is kept wet, 0..1. */
  readonly wetFrac: number;
}

export interface Hide {
  readonly xM: number;
  readonly yM: number;
  readonly lengthM: number;
  readonly depthM: number;
  readonly heightM: number;
}

export interface Bowl {
  readonly xM: number;
  readonly yM: number;
  readonly diameterM: number;
}

export interface Perch {
  readonly xM: number;
  readonly yM: number;
  readonly zM: number;
}

export interface Misting {
  /** Water sprayed in a day. */
  readonly waterGPerDay: number;
  /** Hours of the day at which it happens. */
  readonly atHours: readonly number[];
}

/** One day of the room; the yearly span of the room gives two of these. */
export interface RoomDay {
  readonly lowC: number;
  readonly highC: number;
  readonly rhPct: number;
  /** Peak sun on the outside of the front glass; 0 when it never gets sun. */
  readonly sunPeakWPerM2: number;
  readonly sunFromH?: number;
  readonly sunToH?: number;
  /** Optional 24 hourly readings (0:00, 1:00 ...) that replace the smooth day between lowC and highC. */
  readonly hourlyC?: readonly number[];
}

export interface Room {
  readonly winter: RoomDay;
  readonly summer: RoomDay;
}

export interface DayPeriod {
  readonly startH: number;
  readonly endH: number;
}

export type LifeStage = 'hatchling' | 'young' | 'adult';

/** The animal that the home is for; optional in a file that is only simulated. */
export interface PlannedAnimal {
  readonly speciesId: string;
  readonly stage: LifeStage;
  readonly totalLengthM: number;
  readonly massG: number | null;
}

export interface Thermometer {
  readonly place: 'basking' | 'warm-end' | 'cool-end';
  readonly kind: 'digital-probe' | 'infrared-gun' | 'stick-on-dial';
}

export interface Enclosure {
  readonly format: typeof enclosureFormat;
  readonly version: typeof enclosureVersion;
  readonly name: string;
  readonly box: Box;
  readonly heaters: readonly Heater[];
  readonly thermostats: readonly Thermostat[];
  readonly day: DayPeriod;
  readonly substrate: Substrate | null;
  readonly hides: readonly Hide[];
  readonly bowl: Bowl | null;
  readonly perch: Perch | null;
  readonly misting: Misting | null;
  /** Share of the floor under plants, leaf litter or other cover, 0..1. */
  readonly coverFrac: number;
  readonly lock: 'lock' | 'catch' | 'none';
  readonly thermometers: readonly Thermometer[];
  readonly room: Room;
  readonly animal: PlannedAnimal | null;
}
