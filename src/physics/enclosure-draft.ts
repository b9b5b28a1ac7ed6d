// An enclosure of which any part may still be missing or broken, as the checks between fields see it.
// Leaves out: the checks themselves (enclosure-cross.ts, enclosure-times.ts).

/** The same shape with any part missing. */
export type Draft<T> = T extends readonly (infer U)[]
  ? readonly (Draft<U> | undefined)[]
  : T extends object
    ? { readonly [K in keyof T]?: Draft<T[K]> | undefined }
    : T;
