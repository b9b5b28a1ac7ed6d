// What this does: lets only one process at a time install and build in this copy of the program.
// Why: two starts at once, or one that follows a broken-off one whose npm still runs, would install over each other.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { root } from './prepare-run.mjs';

const folder = join(root, 'data-local');
const file = join(folder, '.preparing');

/** Does the work while nobody else does; waits when somebody else is at it. */
export async function alone(work) {
  mkdirSync(folder, { recursive: true });
  let told = false;
  while (!taken()) {
    if (!told) console.log('Another start is installing or building; waiting for it ...');
    told = true;
    await sleep(500);
  }
  try {
    await work();
  } finally {
    rmSync(file, { force: true });
  }
}

/** The file holds the number of the process at work; one that is gone holds nothing. */
function taken() {
  try {
    writeFileSync(file, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
  }
  if (!isAlive(Number(readOwner()))) rmSync(file, { force: true });
  return false;
}

function readOwner() {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

function isAlive(pid) {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}
