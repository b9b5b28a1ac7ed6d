// warmstead proof FILE...: what readings prove about one home. Works without a database.
// Leaves out: understanding and judging (src/proving) and how it is worded (proof-text.ts).
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { type LoggerFile, readLoggerFile } from '../desk/logger-file.ts';
import { runProofJob } from '../desk/proof-job.ts';
import { branchRule } from '../desk/proof-policy.ts';
import { shopFactsFor } from '../husbandry/used-shop-values.ts';
import type { DateOrder } from '../proving/files/stamp.ts';
import type { LogHints, LogQuestion } from '../proving/files/understood.ts';
import type { Instrument } from '../proving/instrument.ts';
import { mergeLogs } from '../proving/merge-logs.ts';
import { type LogPlace, logPlaces } from '../proving/reading-log.ts';
import { versions } from '../records/versions.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { displayFor, type Language } from './display.ts';
import { displayName } from './input.ts';
import { optionRanges } from './option-ranges.ts';
import { numberOf, OptionReader, type RawOptions, unitSystems } from './options.ts';
import { proofMessages } from './proof-messages.ts';
import { proofExit } from './proof-register.ts';
import { proofLines } from './proof-text.ts';
import {
  factsOfProgram,
  fileLabel,
  type RunContext,
  readEnclosure,
  refuse,
  writeJson,
  writeLines,
} from './run-context.ts';
import { shopValuesOf } from './shop-values.ts';

const orders: readonly DateOrder[] = ['dmy', 'mdy', 'ymd'];

export async function proofCommand(
  files: readonly string[],
  raw: RawOptions,
  language: Language,
  run: RunContext,
): Promise<number> {
  const { terminal, messages } = run;
  const options = new OptionReader(raw, messages);
  const asJson = options.flag('json');
  const units = options.word('units', unitSystems, 'metric');
  const nights = options.ranged('nights');
  const clockH = options.ranged('clock');
  const places = pairs(raw.place);
  const checks = pairs(raw.check);
  for (const [label, place] of places)
    if (!logPlaces.includes(place as LogPlace))
      badPair(options, 'place', `${label}=${place}`, logPlaces.join(' | '), messages);
  for (const [label, shown] of checks)
    if (!(numberOf(shown) >= optionRanges.check.low && numberOf(shown) <= optionRanges.check.high))
      badPair(
        options,
        'check',
        `${label}=${shown}`,
        `${optionRanges.check.low} to ${optionRanges.check.high} °C`,
        messages,
      );
  const dateOrder = raw.dates === undefined ? undefined : options.word('dates', orders, 'dmy');
  const tempUnit = raw.tempUnit === undefined ? undefined : options.word('tempUnit', ['C', 'F'] as const, 'C');
  if (options.faults.length > 0) return refuse(options.faults, messages.check.commandLine, asJson, run);

  const facts = factsOfProgram();
  const valuesFile = options.text('shopValues');
  const values = await shopValuesOf(valuesFile, run);
  if (!values.ok) return refuse(values.faults, valuesFile ?? '', asJson, run);
  const own = branchRule(values.value);
  const enclosureFile = String(raw.enclosure);
  const enclosure = await readEnclosure(enclosureFile, facts, run);
  if (!enclosure.ok) return refuse(enclosure.faults, fileLabel(enclosureFile, messages), asJson, run);
  const hints: LogHints = {
    places: Object.fromEntries(places) as Record<string, LogPlace>,
    instruments: Object.fromEntries(checks.map(([label]) => [label, label])),
    ...(dateOrder === undefined ? {} : { dateOrder }),
    ...(tempUnit === undefined ? {} : { tempUnit }),
    ...(clockH === null ? {} : { homeOffsetMin: clockH * 60 }),
  };
  const read: { name: string; file: LoggerFile }[] = [];
  for (const name of files) {
    const file = await readFile(name, hints, run);
    if (!file.ok) return refuse(file.faults, fileLabel(name, messages), asJson, run);
    read.push({ name: fileLabel(name, messages), file: file.value });
  }
  const log = mergeLogs(read.map((r) => r.file.understood.log));
  const questions: LogQuestion[] = read.flatMap((r) => r.file.understood.questions);
  const { animal } = enclosure.value;
  const { used } = shopFactsFor(facts, values.value, { use: 'proof', animal, enclosure: enclosure.value });
  const job = {
    enclosure: enclosure.value,
    log,
    instruments: instrumentsFrom(checks, log.timesS[0]!),
    questions,
    rule: { ...own.rule, ...(nights === null ? {} : { nights }), humidity: options.flag('humidity') },
    ruleSettings: own.settings.filter(({ key }) => key !== 'nights' || nights === null),
    shopValues: used.shopValues,
  };
  const proof = runProofJob(job, facts);
  if (!proof.ok) return refuse(proof.faults, messages.check.commandLine, asJson, run);
  const answer = proof.value;
  if (asJson) {
    const understood = read.map(({ name, file }) => ({
      file: name,
      sha256: file.sha256,
      bytes: file.bytes,
      ...file.understood,
      log: {
        ...file.understood.log,
        timesS: undefined,
        channels: file.understood.log.channels.map((c) => ({ ...c, values: undefined })),
      },
    }));
    writeJson(terminal, { ok: true, versions: versions(), understood, answer, ...used });
  } else
    writeLines(
      terminal,
      proofLines({
        read,
        answer,
        used,
        enclosure: enclosure.value,
        show: displayFor(units, language),
        terminal,
        words: proofMessages(language),
        messages,
      }),
    );
  return proofExit[answer.verdict];
}

async function readFile(
  name: string,
  hints: LogHints,
  { terminal, messages }: RunContext,
): Promise<Result<LoggerFile>> {
  if (name === '-') return await readLoggerFile(terminal.stdin, hints);
  const label = displayName(name);
  try {
    if ((await stat(name)).isDirectory())
      return bad([
        {
          code: 'CLI_IS_FOLDER',
          field: '',
          got: label,
          allowed: messages.check.file,
          ...messages.faults.isFolder(label),
        },
      ]);
    const file = await readLoggerFile(createReadStream(name), hints);
    return file.ok ? good(file.value) : file;
  } catch (error) {
    const absent = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return bad([
      absent
        ? {
            code: 'CLI_NO_FILE',
            field: '',
            got: label,
            allowed: messages.check.fileThere,
            ...messages.faults.noFile(label),
          }
        : {
            code: 'CLI_NOT_READABLE',
            field: '',
            got: label,
            allowed: messages.check.fileReadable,
            ...messages.faults.notReadable(label),
          },
    ]);
  }
}

/** "label=value" pairs; the last sign of equality counts, labels may hold others. */
function pairs(raw: unknown): [string, string][] {
  return (Array.isArray(raw) ? (raw as string[]) : []).map((text) => {
    const at = text.lastIndexOf('=');
    return [text.slice(0, Math.max(0, at)).trim(), text.slice(at + 1).trim()];
  });
}

function badPair(
  options: OptionReader,
  name: string,
  got: string,
  allowed: string,
  messages: RunContext['messages'],
): void {
  options.fault('CLI_CHOICE', name, got, allowed, messages.faults.choice(`--${name}`));
}

/** An instrument for each checked label: one ice point, done before the readings. */
function instrumentsFrom(checks: readonly [string, string][], firstS: number): Instrument[] {
  return checks.map(([label, shown]) => ({
    id: label,
    name: label,
    checks: [{ quantity: 'tempC', atS: firstS - 86400, truth: 0, shown: numberOf(shown), how: 'ice' }],
  }));
}
