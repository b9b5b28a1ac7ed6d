// Is the animal in slough? In that window it is neither sold nor given a feeding trial.
import { addDays, daysBetween, type IsoDate } from './calendar.ts';
import { type CareFacts, numberOf } from './care-facts.ts';
import { type AnimalEvent, eventsOf } from './event.ts';

export interface SloughState {
  /** under-way: cloudy or cleared, skin not off; just-off: within the rest after it; pieces: came off in pieces. */
  readonly state: 'none' | 'under-way' | 'just-off' | 'pieces';
  readonly since: IsoDate | null;
  /** Day by which it is usually over. */
  readonly usuallyOverBy: IsoDate | null;
  /** Cloudy for so long that somebody should look again. */
  readonly overdue: boolean;
  readonly last: IsoDate | null;
}

export function sloughState(events: readonly AnimalEvent[], facts: CareFacts, today: IsoDate): SloughState {
  const entries = eventsOf(events, 'slough').filter((event) => event.on <= today);
  const lastOff = entries.findLast(({ body }) => body.stage === 'complete' || body.stage === 'pieces');
  const openSince = entries.find(
    ({ body, at }) => (body.stage === 'cloudy' || body.stage === 'clear') && (lastOff === undefined || at > lastOff.at),
  );
  const last = lastOff?.on ?? null;
  if (openSince) {
    const since = openSince.on;
    return {
      state: 'under-way',
      since,
      usuallyOverBy: addDays(since, numberOf(facts.quarantine, 'sloughUsualDays')),
      overdue: daysBetween(since, today) > numberOf(facts.quarantine, 'sloughOverdueDays'),
      last,
    };
  }
  const none = { since: null, usuallyOverBy: null, overdue: false, last };
  if (!lastOff) return { state: 'none', ...none };
  if (lastOff.body.stage === 'pieces') return { state: 'pieces', ...none, since: lastOff.on };
  const resting = daysBetween(lastOff.on, today) < numberOf(facts.quarantine, 'sloughRestDays');
  return resting ? { state: 'just-off', ...none, since: lastOff.on } : { state: 'none', ...none };
}
