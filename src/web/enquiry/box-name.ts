// The name of a ready enclosure in this language; its file's own name when the books do not know it.
import { isMessageKey, type Translate } from '../messages/translate.ts';
import { examples } from './examples.ts';

export function boxName(id: string, t: Translate): string {
  const key = `example.${id}`;
  if (isMessageKey(key)) return t(key);
  return examples.find((row) => row.id === id)?.enclosure.name ?? id;
}
