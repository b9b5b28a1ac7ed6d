// A client of the HTTP doors in plain Node.js: signs in, opens an enquiry, asks for the plan of a ready enclosure, keeps
// nothing. The doors are described in docs/openapi.json and, by a running program, at /api/openapi.json.
// Usage: WARMSTEAD_URL=http://127.0.0.1:7430 WARMSTEAD_NAME=… WARMSTEAD_PASSWORD=… node docs/client/example.mjs FILE
import { readFile } from 'node:fs/promises';

const { WARMSTEAD_URL: url, WARMSTEAD_NAME: name, WARMSTEAD_PASSWORD: password } = process.env;
const file = process.argv[2];
if (!url || !name || !password || !file) {
  console.error('Set WARMSTEAD_URL, WARMSTEAD_NAME and WARMSTEAD_PASSWORD, and name an enclosure file.');
  process.exit(64);
}

let cookie = '';

/** One question to a door; a refusal is told with every fault it names. */
async function ask(method, path, body) {
  const headers = { accept: 'application/json', ...(cookie === '' ? {} : { cookie }) };
  if (body !== undefined) headers['content-type'] = 'application/json';
  const answer = await fetch(`${url}${path}`, {
    method,
    headers,
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const set = answer.headers.getSetCookie()[0];
  if (set !== undefined) cookie = set.split(';')[0];
  const text = await answer.text();
  const said = text === '' ? {} : JSON.parse(text);
  if (answer.ok) return said;
  for (const fault of said.faults ?? []) console.error(`${fault.code} ${fault.field}: ${fault.say} ${fault.fix}`);
  process.exit(1);
}

await ask('POST', '/api/session', { name, password });
const enclosure = JSON.parse(await readFile(file, 'utf8'));
const planned = await ask('POST', '/api/plan', { enclosure });
console.log(`${enclosure.name}: ${planned.answer.verdict}`);
for (const need of planned.answer.needs.filter((one) => one.verdict !== 'holds'))
  console.log(`  ${need.verdict}: ${need.title}`);
await ask('POST', '/api/session/end');
