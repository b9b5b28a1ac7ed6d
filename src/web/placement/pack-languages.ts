// Languages that a pack can be printed in; the shop's own computer holds its words.
export const packLanguages = ['en', 'de'] as const;
export type PackLanguage = (typeof packLanguages)[number];
