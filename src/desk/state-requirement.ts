// Somebody at the desk says something of a requirement: seen, explained, asked. Who and when are kept with it; the newest
// stands. Of the household only "explained" is kept.
import { type Place, places } from '../husbandry/law-rule.ts';
import { isRequirementId, type RequirementId, type Statement, statementForms } from '../proving/release/requirement.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, type Result } from '../shared/result.ts';
import { actOnPlacement } from './act-on-placement.ts';
import type { DeskContext } from './desk-context.ts';
import { placementFaults } from './placement-faults.ts';
import type { StatementBody } from './placement-said.ts';
import type { PlacementThread } from './placement-thread.ts';

export interface NewStatement {
  readonly requirement: string;
  /** "open" takes back what was said. */
  readonly answer: Statement['answer'];
  readonly text: string;
  readonly place: string | null;
  readonly years: number | null;
  readonly token: string;
}

/** Faults, all at once: "STATEMENT_FIELD"; "PLACEMENT_UNKNOWN", "PLACEMENT_STATE", "PLACEMENT_ROLE". */
export async function stateRequirement(
  desk: DeskContext,
  placementId: string,
  said: NewStatement,
): Promise<Result<PlacementThread>> {
  const faults = statementFaults(said);
  if (faults.length > 0) return bad(faults);
  const { answer, token } = said;
  const body: StatementBody = {
    requirement: said.requirement as RequirementId,
    answer,
    text: answer === 'open' ? '' : said.text.trim(),
    place: answer === 'yes' ? (said.place as Place | null) : null,
    years: said.years,
  };
  return await actOnPlacement(desk, { placementId, token, kind: 'statement', from: 'open', body: () => body });
}

export function statementFaults({ requirement, answer, text, place, years }: NewStatement): readonly Fault[] {
  const form = isRequirementId(requirement) ? statementForms[requirement] : undefined;
  if (form === undefined)
    return [placementFaults.statement('requirement', requirement, Object.keys(statementForms).join(', '))];
  if (answer === 'open') return [];
  const faults: Fault[] = [];
  const words = text.trim();
  if (form.text === 'none' && words !== '')
    faults.push(placementFaults.statement('text', 'words', 'no words: only that it was done is kept'));
  if (form.text === 'needed' && answer === 'yes' && words.length < 2)
    faults.push(placementFaults.statement('text', 'nothing', 'a few words'));
  const known = (places as readonly string[]).includes(place ?? '');
  if (form.place ? answer !== 'yes' || !known : place !== null)
    faults.push(placementFaults.statement('place', place ?? 'nothing', form.place ? places.join(', ') : 'no place'));
  if (form.years ? years === null || years < 10 || years > 30 : years !== null)
    faults.push(
      placementFaults.statement('years', String(years), form.years ? 'the age asked against, 10 to 30' : 'no years'),
    );
  return faults;
}
