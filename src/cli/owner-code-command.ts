// warmstead owner-code: for an owner who forgot the password. Leaves out what a code is (desk/accounts/codes.ts).
import { ownerCode } from '../desk/accounts/owner-code.ts';
import { systemClock } from '../desk/desk-context.ts';
import { dbOn } from '../records/open.ts';
import { restoreFaults } from '../records/restore-faults.ts';
import type { Language } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import type { RawOptions } from './options.ts';
import { hasTable, refused, withRecords } from './records-commands.ts';
import { recordsMessages } from './records-messages.ts';
import { type RunContext, writeJson, writeLines } from './run-context.ts';

export async function ownerCodeCommand(raw: RawOptions, language: Language, run: RunContext): Promise<number> {
  return await withRecords(run.terminal.env, raw, run, language, async (pool) => {
    if (!(await hasTable(pool, 'person_code'))) return refused([restoreFaults.none()], raw, run);
    const name = typeof raw.name === 'string' ? raw.name : '';
    const given = await ownerCode({ db: dbOn(pool), clock: systemClock }, name);
    if (!given.ok) return refused(given.faults, raw, run);
    if (raw.json === true) writeJson(run.terminal, { ok: true, ...given.value });
    else writeLines(run.terminal, recordsMessages(language).ownerCode(given.value.name, given.value.code));
    return exitCodes.holds;
  });
}
