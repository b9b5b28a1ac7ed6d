// Numbers in the words of verdicts: centimetres, watts, degrees. Screens may convert again from the raw values.

/** Metres as whole centimetres, "120 cm"; one decimal below 10 cm. */
export const cm = (m: number): string => {
  const value = m * 100;
  const digits = value < 10 && Math.abs(value - Math.round(value)) > 0.05 ? 1 : 0;
  return `${value.toFixed(digits)} cm`;
};

/** Metres as millimetres, "12 mm". */
export const mm = (m: number): string => {
  const value = m * 1000;
  return `${Math.abs(value - Math.round(value)) > 0.05 ? value.toFixed(1) : value.toFixed(0)} mm`;
};

export const squareMetres = (m2: number): string => `${m2.toFixed(m2 < 0.1 ? 3 : 2)} m²`;
export const watts = (w: number): string => `${Math.round(w)} W`;
export const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** "a, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
