// One line of a kit's parts list: what it is for, how many, what it costs. Leaves out: how it is chosen.

export type PartRole =
  | 'box'
  | 'heater'
  | 'night-heater'
  | 'thermostat'
  | 'night-thermostat'
  | 'guard'
  | 'holder'
  | 'basking-thermometer'
  | 'cool-thermometer'
  | 'insulation'
  | 'cover';

/** One line of the parts list. */
export interface KitPart {
  readonly itemId: string;
  readonly name: string;
  readonly role: PartRole;
  /** Pieces, or square metres for foam and covers. */
  readonly count: number;
  /** For all of them together; 0 when owned. */
  readonly price: number;
  readonly owned: boolean;
}
