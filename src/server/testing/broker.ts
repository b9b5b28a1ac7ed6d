// A real message broker (Debian's mosquitto) on this machine for a test, with a port and a configuration of its own.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import mqtt from 'mqtt';

const usualPlaces = ['/usr/sbin/mosquitto', '/usr/local/sbin/mosquitto', '/opt/homebrew/sbin/mosquitto'];
/** Undefined where none is installed: apt-get install mosquitto. */
export const brokerProgram = usualPlaces.find((path) => existsSync(path));

export interface TestBroker {
  readonly url: string;
  readonly start: () => Promise<void>;
  readonly end: () => Promise<void>;
  /** Says it with a receipt, as a sensor does that wants to be heard. */
  readonly say: (topic: string, text: string, retain?: boolean) => Promise<void>;
  readonly close: () => Promise<void>;
}

export async function startBroker(): Promise<TestBroker> {
  if (brokerProgram === undefined) throw new Error('no broker here: apt-get install mosquitto');
  const program = brokerProgram;
  const folder = mkdtempSync(join(tmpdir(), 'warmstead-broker-'));
  const port = await freePort();
  const url = `mqtt://127.0.0.1:${port}`;
  const file = join(folder, 'broker.conf');
  writeFileSync(file, `listener ${port} 127.0.0.1\nallow_anonymous true\npersistence false\nuser root\n`);
  let child: ChildProcess;
  const start = async (): Promise<void> => {
    child = spawn(program, ['-c', file], { stdio: 'ignore' });
    for (let tries = 0; !(await answers(url)); tries++) {
      if (tries > 100) throw new Error('the broker does not answer');
      await sleep(100);
    }
  };
  const end = async (): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const gone = new Promise((done) => child.once('exit', done));
    child.kill();
    await gone;
  };
  await start();
  return {
    url,
    start,
    end,
    say: async (topic, text, retain = false) => {
      const client = await mqtt.connectAsync(url);
      await client.publishAsync(topic, text, { qos: 1, retain });
      await client.endAsync();
    },
    close: async () => {
      await end();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function answers(url: string): Promise<boolean> {
  const probe = mqtt.connect(url, { reconnectPeriod: 0, connectTimeout: 500 });
  const open = await new Promise<boolean>((done) =>
    probe
      .on('connect', () => done(true))
      .on('error', () => done(false))
      .on('close', () => done(false)),
  );
  await probe.endAsync(true);
  return open;
}

/** A port that nothing listens on at this moment. */
function freePort(): Promise<number> {
  return new Promise((done) => {
    const server = createServer();
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => done(port));
    });
  });
}
