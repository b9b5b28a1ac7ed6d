// What was entered and not sent yet, kept on this device with the token it will be sent under.
import type { AftercareAnswers } from '../../proving/aftercare/answer.ts';

export interface AnswerDraft {
  readonly token: string;
  readonly said: AftercareAnswers;
}

const key = (place: string): string => `warmstead-answer-${place}`;

export function keptDraft(place: string): AnswerDraft | null {
  try {
    return JSON.parse(localStorage.getItem(key(place)) ?? 'null') as AnswerDraft | null;
  } catch {
    return null;
  }
}

export const keepDraft = (place: string, draft: AnswerDraft): void =>
  localStorage.setItem(key(place), JSON.stringify(draft));

export const forgetDraft = (place: string): void => localStorage.removeItem(key(place));
