// Finds the words of a proof in a language where all languages lie at hand, as in a terminal. A screen has its own book
// with the same words, and loads one language only.
import { bookIn, type Language } from '../../shared/languages.ts';
import { filledPattern } from '../../shared/pattern.ts';
import { proofSaidDe } from './proof-de.ts';
import { type ProofSaidKey, proofSaidEn } from './proof-en.ts';
import type { SayProof } from './say-proof.ts';

/** The words of a language; those of a taught one are the words of the screens. */
export function proofSayer(language: Language): SayProof {
  const book = bookIn<Readonly<Record<ProofSaidKey, string>>>('web', language, { en: proofSaidEn, de: proofSaidDe });
  return (key, blanks = {}) => filledPattern(book[key], blanks, language);
}
