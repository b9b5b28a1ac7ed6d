// A look-over that is half done, kept on this device so that a lost connection or a closed page costs nothing.
import type { ExaminationBody } from '../../animal/examination.ts';

const keyOf = (id: string): string => `warmstead-look-${id}`;

export function keptDraft(id: string): ExaminationBody | null {
  try {
    const raw: unknown = JSON.parse(localStorage.getItem(keyOf(id)) ?? 'null');
    const fits = typeof raw === 'object' && raw !== null && 'answers' in raw && 'outline' in raw && 'note' in raw;
    return fits ? (raw as ExaminationBody) : null;
  } catch {
    return null;
  }
}

export function keepDraft(id: string, body: ExaminationBody): void {
  try {
    localStorage.setItem(keyOf(id), JSON.stringify(body));
  } catch {
    // Storage may be full or refused; the shop computer has it too.
  }
}

export const dropDraft = (id: string): void => localStorage.removeItem(keyOf(id));
