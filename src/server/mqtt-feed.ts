// Live readings from a message broker (MQTT): listens to the topics that live sources name, keeps what they say.
// A retained message is the broker's memory of long ago: it counts only when it carries its own time.
import mqtt, { type MqttClient } from 'mqtt';
import type { Clock } from '../desk/desk-context.ts';
import { keepSaid, type SaidReading } from '../desk/live-feed.ts';
import { type LiveSource, liveSourcesWithTopic } from '../records/live-sources.ts';
import type { Db } from '../records/schema.ts';

export interface MqttChoice {
  /** mqtt://host:port or mqtts://… */
  readonly url: string;
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
  const client: MqttClient = mqtt.connect(choice.url, { reconnectPeriod: 2000, connectTimeout: 5000 });
  const listening = new Set<string>();
  const problem = choice.onProblem ?? (() => {});
  client.on('error', (error) => problem(`broker: ${error.message}`));

  const refresh = async (): Promise<void> => {
    if (!client.connected) return;
    const topics = new Set((await liveSourcesWithTopic(db)).map((s) => s.topic!));
    for (const topic of topics) {
      if (listening.has(topic)) continue;
      listening.add(topic);
      await client.subscribeAsync(topic);
    }
  };
  const safely = (work: () => Promise<void>) =>
    void work().catch((error: unknown) => problem(String(error).slice(0, 200)));
  client.on('connect', () => {
    listening.clear();
    safely(refresh);
  });
  const timer = setInterval(() => safely(refresh), choice.refreshMs ?? 15_000);
  timer.unref();

  client.on('message', (topic, payload, packet) => {
    safely(async () => {
      for (const source of await liveSourcesWithTopic(db, topic)) {
        const said = readingFrom(payload, source, packet.retain);
        if (said === null) continue;
        const kept = await keepSaid(db, clock, source, [said]);
        if (!kept.ok) problem(`${source.label}: ${kept.faults[0]?.say ?? ''}`);
      }
    });
  });
  return {
    connected: () => client.connected,
    close: async () => {
      clearInterval(timer);
      await client.endAsync(true);
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
