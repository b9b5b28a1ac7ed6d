// What can be wrong with an enquiry before or when it is put down, said once for every action.
import type { EnquiryDocument } from '../records/enquiries.ts';
import type { Fault } from '../shared/fault.ts';

/** An enquiry is a page of answers and one enclosure; the six ready ones are under 10 kB (our choice of limit). */
export const largestDocumentBytes = 256_000;

/** A half-finished enquiry is welcome; only what cannot be kept is refused.
 *  Faults: "ENQUIRY_TOO_LARGE", "ENQUIRY_TEXT". */
export function documentFaults(document: EnquiryDocument): Fault[] {
  const text = JSON.stringify(document);
  const faults: Fault[] = [];
  const bytes = new TextEncoder().encode(text).length;
  if (bytes > largestDocumentBytes) {
    faults.push({
      code: 'ENQUIRY_TOO_LARGE',
      field: 'document',
      got: `${bytes} bytes`,
      allowed: `at most ${largestDocumentBytes} bytes`,
      say: 'This enquiry is larger than any real one.',
      fix: 'Take out what does not belong in it, such as pasted pictures.',
    });
  }
  if (/(?<!\\)(?:\\\\)*\\u(?:0000|d[89a-f][0-9a-f]{2})/.test(text)) {
    faults.push({
      code: 'ENQUIRY_TEXT',
      field: 'document',
      got: 'a text with a character that cannot be kept',
      allowed: 'text without null characters and broken half characters',
      say: 'A text in this enquiry holds a character that cannot be stored.',
      fix: 'Type the text again instead of pasting it.',
    });
  }
  return faults;
}

export function enquiryUnknown(id: string): Fault {
  return {
    code: 'ENQUIRY_UNKNOWN',
    field: 'id',
    got: id,
    allowed: 'an enquiry of this branch',
    say: 'There is no such enquiry here.',
    fix: 'Open the list and choose one from there.',
  };
}

export function enquiryChanged(fromVersion: number, nowVersion: number): Fault {
  return {
    code: 'ENQUIRY_CHANGED',
    field: 'version',
    got: `a change made from version ${fromVersion}`,
    allowed: `a change made from version ${nowVersion}, the present one`,
    say: 'Somebody else changed this enquiry in the meantime; nothing was overwritten.',
    fix: 'Open the present version, then make your change again.',
  };
}
