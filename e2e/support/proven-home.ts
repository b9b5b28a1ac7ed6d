// A home whose readings prove it: the logger file is made by the simulation of that very home, sent and judged through the
// program's own doors.
import { answeredDocument } from '../../src/server/testing/fit-animal.ts';
import { fittingHome, logFileOf } from '../../src/server/testing/fitting-home.ts';

const dayS = 86_400;
/** Noon four days ago: three nights up to this morning. */
export const noonFourDaysAgoS = (): number => Math.floor(Date.now() / 1000 / dayS) * dayS - 4 * dayS + dayS / 2;

/** @returns id of the enquiry; throws when the home is not proven */
export async function provenHome(
  url: string,
  label: string,
  { proven, enclosure = {} }: { readonly proven: boolean; readonly enclosure?: object },
): Promise<string> {
  const send = async (path: string, body: string, type = 'application/json') => {
    const answer = await fetch(`${url}${path}`, { method: 'POST', headers: { 'content-type': type }, body });
    const json = (await answer.json()) as { id?: string; answer?: { verdict: string; reason: string } };
    if (!answer.ok) throw new Error(`${path}: ${JSON.stringify(json)}`);
    return json;
  };
  const box = fittingHome(enclosure);
  const { id = '' } = await send('/api/enquiries', JSON.stringify({ document: answeredDocument(label, box) }));
  if (!proven) return id;
  await send(
    `/api/enquiries/${id}/reading-files?name=log.csv`,
    logFileOf(box, noonFourDaysAgoS()),
    'application/octet-stream',
  );
  const { answer } = await send(`/api/enquiries/${id}/proof`, '{}');
  if (answer?.verdict !== 'proven') throw new Error(`the home of ${label} is not proven: ${answer?.reason}`);
  return id;
}
