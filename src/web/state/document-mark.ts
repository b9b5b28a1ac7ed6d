// A short mark of a document's content, to see whether what the server has is what stands here.
import type { PlanDocument } from './document.ts';

/** A document is never changed in place, so its mark is worked out once. */
const marks = new WeakMap<PlanDocument, string>();

/** FNV-1a over the JSON text, 32 bits; two different sheets sharing a mark by chance would delay one save, no more. */
export function markOf(document: PlanDocument): string {
  const known = marks.get(document);
  if (known !== undefined) return known;
  const text = JSON.stringify(document);
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  const mark = `${text.length}-${(hash >>> 0).toString(16)}`;
  marks.set(document, mark);
  return mark;
}
