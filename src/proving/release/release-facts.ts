// From the rows of data/release.json to checked requirements, in their order: none missing, none twice, each with a source.
import { type CheckContext, dataFault, isRecord, sourceFaults } from '../../husbandry/fact-check.ts';
import type { Fault } from '../../shared/fault.ts';
import { isRequirementId, type RequirementRow, requirementIds, statementForms } from './requirement.ts';

const words = {
  group: ['home', 'animal', 'law', 'keeper'],
  absolute: ['always', 'shop', 'no'],
  answeredBy: ['program', 'person', 'either'],
} as const;

/** @param sourceKeys keys of sources.json. Faults: "DATA_FORM", "DATA_LINK", those of a source. */
export function requirementsFrom(
  raw: unknown,
  sourceKeys: ReadonlySet<string>,
): { readonly rows: readonly RequirementRow[]; readonly faults: readonly Fault[] } {
  const ctx: CheckContext = { file: 'release.json', sourceKeys };
  const list: readonly unknown[] = Array.isArray(raw) ? raw : [];
  const faults = list.flatMap((row, i) => rowFaults(ctx, row, i));
  const rows = list.filter((row): row is RequirementRow => isRecord(row) && isRequirementId(String(row.id)));
  const ids = rows.map((row) => row.id);
  if (ids.join() !== requirementIds.join())
    faults.push(
      dataFault(
        ctx,
        '',
        'DATA_FORM',
        ids.join(),
        requirementIds.join(),
        'Requirements are missing, twice or out of order.',
      ),
    );
  return { rows, faults };
}

function rowFaults(ctx: CheckContext, row: unknown, i: number): Fault[] {
  if (!isRecord(row) || !isRequirementId(String(row.id)))
    return [dataFault(ctx, String(i), 'DATA_FORM', row, requirementIds.join(', '), 'This is no known requirement.')];
  const at = String(row.id);
  const bad = Object.entries(words).flatMap(([key, allowed]) =>
    (allowed as readonly unknown[]).includes(row[key])
      ? []
      : [dataFault(ctx, `${at}.${key}`, 'DATA_FORM', row[key], allowed.join(', '), `No known word for "${key}".`)],
  );
  const stated = isRequirementId(at) && at in statementForms;
  const asked = row.answeredBy !== 'program';
  if (stated !== asked)
    bad.push(
      dataFault(
        ctx,
        `${at}.answeredBy`,
        'DATA_FORM',
        row.answeredBy,
        'as its statement says',
        'Who answers is unclear.',
      ),
    );
  return [...bad, ...sourceFaults(ctx, at, row)];
}
