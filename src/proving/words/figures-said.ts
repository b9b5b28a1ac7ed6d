// Which figures of a refusal can stand beside a sentence of any language? Apart from the refusals themselves, which only
// who reads German loads.
import type { Language } from '../../shared/languages.ts';
import { withDecimals } from './say-told.ts';

/** "0.2 to 4 m", "1.2": numbers, units and signs, nothing that is English. */
const figures =
  /^[\d.,\s–−×%°<>≤≥-]*(?:(?:to|mm|cm|m|g|kg|oz|in|C|F|K|W|h|s|min|MB|kB|days?)(?![\w])[\d.,\s–−×%°-]*)*$/;

/** Figures with the decimal sign of the language; null for what holds a word. */
export function figuresSaid(text: string, language: Language): string | null {
  if (!/\d/.test(text) || !figures.test(text)) return null;
  return withDecimals(text.replace(/(\d) to (\d)/g, '$1–$2'), language);
}
