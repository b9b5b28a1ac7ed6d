// Live readings from a message broker (MQTT): listens to the topics that live sources name, keeps what they say.
// The broker holds what was sent while nobody listened and hands it over later; it gets its receipt only when the records
// have the reading. What may be old (retained, or held) counts only when it carries its own time.
import { setTimeout as sleep } from 'node:timers/promises';
import mqtt, { type IPublishPacket, type MqttClient } from 'mqtt';
import type { Clock } from '../desk/desk-context.ts';
import { keepSaid, type SaidReading } from '../desk/live-feed.ts';
import { type LiveSource, liveSourcesWithTopic } from '../records/live-sources.ts';
import type { Db } from '../records/schema.ts';

export interface MqttChoice {
  /** mqtt://host:port or mqtts://… */
  readonly url: string;
  /** Under which name the broker holds what was missed; the same for all processes of one set of records. Without one
   *  nothing is held. */
  readonly clientId?: string;
  /** How often new sources are looked for [ms]. */
  readonly refreshMs?: number;
  /** Told what could not be kept; never the broker's password. */
  readonly onProblem?: (what: string) => void;
}

export interface MqttFeed {
  readonly close: () => Promise<void>;
  /** Whether the broker answers at this moment. */
  readonly connected: () => boolean;
}

/** Starts listening and keeps trying when the broker is away. */
export function startMqttFeed(db: Db, clock: Clock, choice: MqttChoice): MqttFeed {
  const held = choice.clientId !== undefined;
  const client: MqttClient = mqtt.connect(choice.url, {
    reconnectPeriod: 2000,
    connectTimeout: 5000,
    clean: !held,
    ...(held ? { clientId: choice.clientId } : {}),
  });
  const listening = new Set<string>();
  const problem = choice.onProblem ?? (() => {});
  const closing = new AbortController();
  const heldBack = heldGate();
  client.on('error', (error) => problem(`broker: ${error.message}`));

  const refresh = async (): Promise<void> => {
    if (!client.connected) return;
    const topics = new Set((await liveSourcesWithTopic(db)).map((s) => s.topic!));
    for (const topic of topics) {
      if (listening.has(topic)) continue;
      listening.add(topic);
      await client.subscribeAsync(topic, { qos: 1 });
    }
  };
  const safely = (work: () => Promise<void>) =>
    void work().catch((error: unknown) => problem(String(error).slice(0, 200)));
  client.on('connect', ({ sessionPresent }) => {
    heldBack.connected(sessionPresent);
    listening.clear();
    safely(refresh);
  });
  const timer = setInterval(() => safely(refresh), choice.refreshMs ?? 15_000);
  timer.unref();

  const keep = async (packet: IPublishPacket): Promise<void> => {
    const old = packet.retain || (packet.qos > 0 && heldBack.mayBeOld());
    const payload = typeof packet.payload === 'string' ? Buffer.from(packet.payload) : packet.payload;
    for (const source of await liveSourcesWithTopic(db, packet.topic)) {
      const said = readingFrom(payload, source, old);
      if (said === null) continue;
      const kept = await keepSaid(db, clock, source, [said]);
      if (!kept.ok) problem(`${source.label}: ${kept.faults[0]?.say ?? ''}`);
    }
  };
  // The receipt goes out when this calls back: a reading is tried until the records have it, and one that was on its way
  // when the process died is handed over again.
  client.handleMessage = (packet, done) => {
    void (async () => {
      for (let told = false; !closing.signal.aborted; ) {
        try {
          await keep(packet);
          heldBack.handled();
          return done();
        } catch (error) {
          if (!told) problem(String(error).slice(0, 200));
          told = true;
          await sleep(500, undefined, { signal: closing.signal }).catch(() => undefined);
        }
      }
    })();
  };
  return {
    connected: () => client.connected,
    close: async () => {
      closing.abort();
      clearInterval(timer);
      await client.endAsync(true);
    },
  };
}

/** What the broker held comes first and without a pause; how old it is, it does not say. [ms, our choice] */
const heldAtLeastMs = 5000;
const heldAtMostMs = 60_000;
const pauseMs = 500;

/** May a message that is no retained one still be old? Only after a connection that took up where an earlier one ended. */
export function heldGate(nowMs: () => number = () => performance.now()) {
  let sinceMs: number | null = null;
  let lastMs = 0;
  return {
    connected: (takenUp: boolean): void => {
      sinceMs = takenUp ? nowMs() : null;
      lastMs = nowMs();
    },
    mayBeOld: (): boolean => {
      if (sinceMs === null) return false;
      const forMs = nowMs() - sinceMs;
      if (forMs >= heldAtMostMs || (forMs >= heldAtLeastMs && nowMs() - lastMs >= pauseMs)) sinceMs = null;
      return sinceMs !== null;
    },
    handled: (): void => {
      lastMs = nowMs();
    },
  };
}

/** A number alone, or a number within JSON, with its time when the message has one. */
export function readingFrom(
  payload: Uint8Array,
  source: Pick<LiveSource, 'valueKey'>,
  retained: boolean,
): SaidReading | null {
  if (payload.length > 4096) return null;
  const text = new TextDecoder().decode(payload).trim();
  let value = Number.NaN;
  let at: string | undefined;
  if (/^[+-]?\d+(?:\.\d+)?$/.test(text)) value = Number(text);
  else {
    const body = objectFrom(text);
    if (body === null) return null;
    value = Number(pick(body, source.valueKey ?? 'value') ?? Number.NaN);
    const time = body.time ?? body.timestamp ?? body.at;
    if (typeof time === 'string' && Number.isFinite(Date.parse(time))) at = new Date(time).toISOString();
    if (typeof time === 'number') at = new Date(time > 1e11 ? time : time * 1000).toISOString();
  }
  if (!Number.isFinite(value) || (retained && at === undefined)) return null;
  return at === undefined ? { value } : { value, at };
}

function objectFrom(text: string): Record<string, unknown> | null {
  try {
    const body: unknown = JSON.parse(text);
    return typeof body === 'object' && body !== null ? (body as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}

/** "a.b" of an object; own fields only. */
function pick(body: Record<string, unknown>, path: string): unknown {
  let at: unknown = body;
  for (const key of path.split('.')) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<string, unknown>)[key];
  }
  return at;
}
