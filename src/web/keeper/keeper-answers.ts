// Answers on the keeper's phone: half given ones, and those that wait to be sent; each with the token it is sent under.
import type { TriageFacts } from '../../animal/triage.ts';
import type { Species } from '../../husbandry/fact.ts';
import type { LifeStage } from '../../physics/enclosure.ts';
import type { AftercareAnswers, ConcernLimits } from '../../proving/aftercare/answer.ts';
import { ask } from '../animal/animal-api.ts';
import type { TaskShown } from '../today/today-api.ts';

export interface KeeperAsked {
  readonly today: string;
  readonly latest: string;
  readonly releasedOn: string | null;
  readonly tasks: readonly TaskShown[];
  readonly species: Species | null;
  readonly stage: LifeStage;
  readonly lastMassG: number | null;
  readonly limits: ConcernLimits;
  readonly triage: TriageFacts | null;
}

export interface WaitingAnswer {
  readonly token: string;
  readonly key: string;
  readonly on: string;
  readonly answers: AftercareAnswers;
}

const storage = (secret: string, what: 'asked' | 'answers'): string => `warmstead-keeper-${what}-${secret}`;
const path = (secret: string): string => `/api/keeper/${encodeURIComponent(secret)}/aftercare`;

export const fetchAsked = (secret: string) => ask<KeeperAsked>(path(secret));

function kept<T>(name: string): T | null {
  try {
    return JSON.parse(localStorage.getItem(name) ?? 'null') as T | null;
  } catch {
    return null;
  }
}

export const keptAsked = (secret: string): KeeperAsked | null => kept<KeeperAsked>(storage(secret, 'asked'));
export const keepAsked = (secret: string, asked: KeeperAsked): void =>
  localStorage.setItem(storage(secret, 'asked'), JSON.stringify(asked));

export const waitingAnswers = (secret: string): readonly WaitingAnswer[] =>
  kept<readonly WaitingAnswer[]>(storage(secret, 'answers')) ?? [];

export const queueAnswer = (secret: string, answer: WaitingAnswer): void =>
  localStorage.setItem(storage(secret, 'answers'), JSON.stringify([...waitingAnswers(secret), answer]));

const unqueue = (secret: string, token: string): void =>
  localStorage.setItem(
    storage(secret, 'answers'),
    JSON.stringify(waitingAnswers(secret).filter((one) => one.token !== token)),
  );

/** A link that no longer works leaves nothing on the phone. */
export function forgetAsked(secret: string): void {
  localStorage.removeItem(storage(secret, 'asked'));
  localStorage.removeItem(storage(secret, 'answers'));
}

/** Sends what waits, one by one; one that is refused never holds the others back.
 *  @returns how many were refused, null when the shop was not reached */
export async function sendAnswers(secret: string): Promise<number | null> {
  let refused = 0;
  for (const answer of waitingAnswers(secret)) {
    const sent = await ask(path(secret), 'POST', answer);
    if (!sent.ok && (sent.status === 0 || sent.status >= 500 || sent.status === 429)) return null;
    if (!sent.ok) refused++;
    unqueue(secret, answer.token);
  }
  return refused;
}
