// What is kept of aftercare with a placement: answers and what the desk did, each an event of its own, never overwritten.
import type { AftercareAnswers, Concern } from '../../proving/aftercare/answer.ts';
import type { AftercareTask } from '../../proving/aftercare/task.ts';
import type { FollowedEvent } from '../../records/aftercare-inputs.ts';

/** Who said it: the keeper on the phone's page, or somebody at the desk who spoke with the keeper. */
export type Via = 'keeper' | 'desk';

export type FollowedBody =
  | {
      readonly what: 'answer';
      readonly task: AftercareTask;
      /** Day that the answer speaks of. */
      readonly on: string;
      readonly via: Via;
      readonly answers: AftercareAnswers;
      readonly settles: boolean;
      readonly concerns: readonly Concern[];
    }
  | { readonly what: 'not-reached'; readonly task: AftercareTask; readonly on: string }
  | { readonly what: 'set-aside'; readonly task: AftercareTask; readonly on: string; readonly why: string }
  /** Takes back the event it names. */
  | { readonly what: 'undone'; readonly of: string }
  /** Somebody at the desk looked at the concern of the event it names. */
  | { readonly what: 'looked-at'; readonly of: string };

export interface Followed<B extends FollowedBody = FollowedBody> {
  readonly id: string;
  readonly at: Date;
  readonly by: string;
  readonly body: B;
}
export type FollowedAnswer = Followed<Extract<FollowedBody, { readonly what: 'answer' }>>;

/** What stands: without what was taken back. Taking back can itself be taken back. */
export function standing(events: readonly FollowedEvent[]): readonly Followed[] {
  const all = events.filter((one) => one.kind === 'aftercare').map((one) => one as unknown as Followed);
  const undone = new Set<string>();
  // The newest word counts: an undoing that was undone later does nothing.
  for (const { id, body } of [...all].reverse()) if (body.what === 'undone' && !undone.has(id)) undone.add(body.of);
  return all.filter((one) => one.body.what !== 'undone' && !undone.has(one.id));
}

export const answersIn = (followed: readonly Followed[]): readonly FollowedAnswer[] =>
  followed.filter((one): one is FollowedAnswer => one.body.what === 'answer');
