// The check module of the animal: its tables, and the register against the headings of the English schedule.
import { readdirSync, readFileSync } from 'node:fs';
import { registerFindings } from '../../src/animal/register.ts';
import { allFacts } from '../../src/records/animal-facts.ts';
import type { CheckRow } from '../check-row.ts';
import { readTables, rowsOf } from '../table.ts';
import { animalRuleRunners } from './runners.ts';

interface Schedule {
  readonly source: string;
  readonly at: string;
  readonly headings: readonly { readonly letter: string; readonly about: string }[];
}

const here = new URL('./', import.meta.url);

export async function cases(): Promise<CheckRow[]> {
  const files = readdirSync(here).filter((name) => name.endsWith('.table.json'));
  const rows = files
    .sort()
    .flatMap((name) => readTables(new URL(name, here)).flatMap((table) => rowsOf(table, animalRuleRunners)));
  return [...rows, ...scheduleRows()];
}

/** Each heading of the schedule once, asked for by that law in England, and found missing or open in an empty register. */
function scheduleRows(): CheckRow[] {
  const schedule = JSON.parse(readFileSync(new URL('english-schedule.json', here), 'utf8')) as Schedule;
  const found = registerFindings({}, [], allFacts().care.register, 'england', 'none');
  return schedule.headings.map(({ letter, about }): CheckRow => {
    const ours = found.filter(
      ({ heading, law, state }) =>
        heading.paragraph === letter &&
        heading.say.en.toLowerCase().includes(about) &&
        law?.source === schedule.source &&
        law.at.endsWith(`2(1)(${letter})`) &&
        state !== 'there',
    ).length;
    return {
      id: `REG-${letter}`,
      title: `Register heading (${letter}): ${about}`,
      quantity: 'headings',
      kind: 'published',
      source: schedule.source,
      at: `${schedule.at} (${letter})`,
      provenance: 'read',
      expected: 1,
      ours,
      unit: 'count',
      tolerance: { abs: 0 },
      why: 'The schedule was read as made in 2018; each of its headings must stand in the register once, by that law, and an empty register must not pass.',
    };
  });
}
