// What stands where a buyer's own words stood once they are erased, and whether a text is such a note.

/** @param day  ISO date */
export const erasedNote = (day: string, by: string, why: string): string => `erased on ${day} by ${by} because ${why}`;

/** The day on which what stood there was erased; null for every other text. */
export const erasedOn = (text: string): string | null =>
  /^erased on (\d{4}-\d{2}-\d{2}) by .+ because .+$/s.exec(text)?.[1] ?? null;
