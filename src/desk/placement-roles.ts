// Who may do what with a placement: an inspector only looks, an override is a manager's.
import type { Fault } from '../shared/fault.ts';
import type { DeskContext } from './desk-context.ts';
import { placementFaults } from './placement-faults.ts';

/** Faults: "PLACEMENT_ROLE". */
export const lookingOnly = ({ actor }: DeskContext): readonly Fault[] =>
  actor.role === 'inspector'
    ? [placementFaults.role(actor.role, 'assistant, manager or owner', 'Changing a placement')]
    : [];

export const mayOverride = ({ actor }: DeskContext): boolean => actor.role === 'manager' || actor.role === 'owner';

/** Faults: "PLACEMENT_ROLE". */
export const overrideRoleFaults = (desk: DeskContext): readonly Fault[] =>
  mayOverride(desk) ? [] : [placementFaults.role(desk.actor.role, 'manager or owner', 'Overriding a requirement')];
