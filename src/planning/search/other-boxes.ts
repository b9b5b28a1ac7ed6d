// No kit of the shelf may be used in this box: which boxes of the shelf would take one, and does its best kit hold there?
// Each is searched in a few versions. Leaves out: changes of a box in which some kit may be used (what-helps.ts).
import { itemsOf } from '../shelf/shelf.ts';
import { helpVersions } from './judge-home.ts';
import type { SearchAnswer } from './search-answer.ts';
import type { SearchInput } from './search-input.ts';
import { compareHelp, type HelpingChange } from './what-helps.ts';

/** So many boxes are looked at, the cheapest first; our choice. */
const mostBoxes = 6;

/** @param search to the end; null when nobody wants to know any more, and so is the answer then */
export async function otherBoxes(
  input: SearchInput,
  search: (input: SearchInput) => Promise<SearchAnswer | null>,
): Promise<readonly HelpingChange[] | null> {
  const { shelf, ownedIds } = input;
  const price = (item: { readonly id: string; readonly price: number }) =>
    ownedIds.includes(item.id) ? 0 : item.price;
  const boxes = itemsOf(shelf, 'enclosure')
    .filter((item) => item.inStock || ownedIds.includes(item.id))
    .sort((a, b) => price(a) - price(b));
  const found: HelpingChange[] = [];
  for (const item of boxes.slice(0, mostBoxes)) {
    const answer = await search({ ...input, boxIds: [item.id], members: helpVersions });
    if (!answer) return null;
    const first = answer.choices[0];
    if (!first) continue;
    const parts = first.parts.filter((part) => ['box', 'insulation', 'cover'].includes(part.role));
    found.push({
      steps: [
        { id: 'box-and-kit', name: item.name, kit: first.name, heart: first.heart },
        ...first.changes.map((id) => ({ id })),
      ],
      parts,
      cost: parts.reduce((sum, part) => sum + part.price, 0),
      verdict: first.verdict,
      chanceFrac: first.chanceFrac,
      stillOpen: first.needs.filter((need) => need.verdict !== 'holds').map((need) => need.id),
      enclosure: first.enclosure,
    });
  }
  return found.sort(compareHelp);
}
