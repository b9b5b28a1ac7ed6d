// Which tables are in the chain (migrations/0070-chain.sql), and which kept tables are not, with the reason.
// The list stands here too, so that a row taken out of the database's own list does not go unnoticed.

export const chainedTables = [
  'animal',
  'animal_event',
  'animal_fact',
  'animal_photo',
  'enquiry_version',
  'hand_reading',
  'hand_reading_standing',
  'instrument',
  'instrument_check',
  'overlay',
  'overlay_withdrawal',
  'pack_given',
  'placement',
  'placement_event',
  'plan_result',
  'plan_result_standing',
  'proof_result',
  'reading_file',
  'reading_file_answer',
  'reading_file_withdrawal',
] as const;

/** Tables that are only added to and still stand outside the chain. */
export const unchainedTables: Readonly<Record<string, string>> = {
  calendar_feed: 'says who may look, not what was done for an animal',
  calendar_feed_withdrawal: 'says who may look, not what was done for an animal',
  chain_link: 'it is the chain',
  erasure: 'the erased rows have links of their own, which say who, when and why',
  keeper_link: 'says who may look, not what was done for an animal',
  keeper_link_withdrawal: 'says who may look, not what was done for an animal',
  live_reading: 'too many rows; what a proof made of them is kept with the proof',
  live_source: 'says where readings come from, not what was done for an animal',
  pack_print: 'says in which language and units a paper was asked for, not what was done for an animal',
  person_change: 'says who may sign in, not what was done for an animal',
  shelf_version: 'kit and prices of the shop, not what was done for an animal',
};

/** Tables that hold a file, which is in the chain by its hash. */
export const tablesWithFiles: readonly string[] = ['animal_photo', 'pack_given', 'reading_file'];
