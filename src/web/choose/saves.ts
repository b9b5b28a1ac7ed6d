// Does the browser ask to save data? Then nothing is loaded before it is asked for.
export const saves = (): boolean =>
  (navigator as Navigator & { readonly connection?: { readonly saveData?: boolean } }).connection?.saveData === true;
