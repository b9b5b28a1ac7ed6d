// Do the hours and the room's temperatures of an enclosure make sense together?
// Leaves out: everything that has a place in the box (enclosure-cross.ts).
import type { Fault } from '../shared/fault.ts';
import type { Enclosure } from './enclosure.ts';
import type { Draft } from './enclosure-draft.ts';

const seasons = ['winter', 'summer'] as const;

export function dayFaults(draft: Draft<Enclosure>): Fault[] {
  const { startH, endH } = draft.day ?? {};
  if (startH === undefined || endH === undefined || !(startH >= endH)) return [];
  return [
    {
      code: 'ENC_ORDER',
      field: 'day',
      got: `${startH} to ${endH} h`,
      allowed: 'startH before endH, both within one calendar day',
      say: `day: it starts at ${startH} h and ends at ${endH} h, so it has no length.`,
      fix: 'Write the start before the end, for example 8 and 20.',
    },
  ];
}

export function roomFaults(draft: Draft<Enclosure>): Fault[] {
  return seasons.flatMap((season) => {
    const room = draft.room?.[season];
    if (room === undefined) return [];
    const at = `room.${season}`;
    return [...spanFaults(at, room.lowC, room.highC), ...sunFaults(at, room.sunFromH, room.sunToH)];
  });
}

function spanFaults(at: string, lowC = Number.NaN, highC = Number.NaN): Fault[] {
  if (!(lowC > highC)) return [];
  return [
    {
      code: 'ENC_ORDER',
      field: at,
      got: `${lowC} to ${highC} °C`,
      allowed: 'lowC not above highC',
      say: `${at}: the lowest temperature (${lowC} °C) is above the highest (${highC} °C).`,
      fix: 'Swap them, or correct the one that is wrong.',
    },
  ];
}

function sunFaults(at: string, fromH: number | undefined, toH: number | undefined): Fault[] {
  if (fromH === undefined && toH === undefined) return [];
  if (fromH !== undefined && toH !== undefined && !(fromH >= toH)) return [];
  return [
    {
      code: 'ENC_ORDER',
      field: fromH === undefined ? `${at}.sunFromH` : `${at}.sunToH`,
      got: `${fromH ?? 'nothing'} to ${toH ?? 'nothing'} h`,
      allowed: 'both hours or neither, sunFromH before sunToH',
      say: `${at}: the hours of sun need a start before their end.`,
      fix: 'Give sunFromH and sunToH, for example 14 and 18, or leave both out.',
    },
  ];
}
