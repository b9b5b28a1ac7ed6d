// Words of the pack on the placement's sheet, in English. What stands in the pack itself is printed by the shop's computer.
export const packEn = {
  'pack.title': 'Pack',
  'pack.lead': 'A4 pages for the keeper: this animal, this box, this dial, black and white is enough.',
  'pack.leadDraft':
    'A4 pages for the keeper: this animal, this box, this dial. Until the release it says that it is a draft.',
  'pack.language': 'Language of the pack',
  'pack.units': 'Units of the pack',
  'pack.unitsSay': 'As the keeper reads. In English with inches the month comes before the day.',
  'pack.printed': 'Last made on {on} by {by}: {language}, {units}.',
  'pack.make': 'Make the pack',
  'pack.busy': 'Working out heat, power cut and heat wave for this very box …',
  'pack.ready': 'The pack is ready.',
  'pack.open': 'Open the pack',
  'pack.save': 'Save it',
  'pack.file': 'pack',
} as const;
