// A short mark of a document's content, to see whether what the server has is what stands here.
import type { PlanDocument } from './document.ts';

/** FNV-1a over the JSON text, 32 bits; two different sheets sharing a mark by chance would delay one save, no more. */
export function markOf(document: PlanDocument): string {
  const text = JSON.stringify(document);
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return `${text.length}-${(hash >>> 0).toString(16)}`;
}
