// How long is the enquiry of somebody who took no animal kept? Reads data/privacy.json.
import { dataFile } from './data-files.ts';

export interface KeptDays {
  readonly value: number;
  readonly source: string;
  readonly read: string;
  readonly note: string;
}

let known: KeptDays | undefined;

export function enquiryKeptDays(): KeptDays {
  known ??= (dataFile('privacy.json') as Readonly<Record<string, unknown>>).enquiryKeptDays as KeptDays;
  return known;
}
