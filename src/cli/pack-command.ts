// warmstead pack FILE --out PDF: the keeper's pack of one home, made from its file alone. Works without a database.
// Leaves out: what only the records know of the animal, and who decided (desk/print-pack.ts).
import { writeFile } from 'node:fs/promises';
import { type PackFigures, runPackJob } from '../desk/pack/pack-job.ts';
import { packPages } from '../desk/pack/pack-pages.ts';
import type { PackSubject } from '../desk/pack/pack-subject.ts';
import { paperUnits } from '../desk/paper-units.ts';
import { places } from '../husbandry/law-rule.ts';
import { allFacts } from '../records/animal-facts.ts';
import type { Language } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import { OptionReader, type RawOptions, unitSystems } from './options.ts';
import { packMessages } from './pack-messages.ts';
import { factsOfProgram, fileLabel, type RunContext, readEnclosure, refuse, writeLines } from './run-context.ts';

export async function packCommand(file: string, raw: RawOptions, language: Language, run: RunContext): Promise<number> {
  const { terminal, messages } = run;
  const words = packMessages(language);
  const options = new OptionReader(raw, messages);
  const us = options.word('units', unitSystems, 'metric') === 'us';
  const place = options.word('place', places, 'england');
  const out = options.text('out') ?? '';
  if (options.faults.length > 0) return refuse(options.faults, messages.check.commandLine, false, run);
  const read = await readEnclosure(file, factsOfProgram(), run);
  if (!read.ok) return refuse(read.faults, fileLabel(file, messages), false, run);
  const made = runPackJob({ kind: 'pack', plan: { enclosure: read.value } });
  if (!made.ok) return refuse(made.faults, fileLabel(file, messages), false, run);
  const printedOn = new Date().toISOString().slice(0, 10);
  const units = paperUnits({ language, temperature: us ? 'F' : 'C', length: us ? 'in' : 'cm' }, place);
  const { pages } = packPages(subjectOf(made.value, printedOn, place), made.value, units);
  try {
    await writeFile(out, pages.pdf(new Date(`${printedOn}T00:00:00Z`)), { flag: 'wx' });
  } catch (error) {
    const got = (error as NodeJS.ErrnoException).code ?? 'error';
    const fault = { code: 'CLI_NOT_WRITABLE', field: '--out', got, allowed: run.messages.check.fileNew };
    return refuse([{ ...fault, ...words.cannotWrite }], out, false, run);
  }
  writeLines(terminal, [words.written(out, pages.count), words.noRecord]);
  return exitCodes.holds;
}

/** The animal as the file knows it: no record, no name, nothing decided. */
function subjectOf({ enclosure }: PackFigures, printedOn: string, place: PackSubject['places'][number]): PackSubject {
  const { facts, care } = allFacts();
  const { speciesId, stage, totalLengthM, massG } = enclosure.animal!;
  return {
    printedOn,
    shopName: '',
    branchName: '',
    places: [place],
    southern: place === 'new-south-wales' || place === 'victoria',
    animal: {
      registerId: null,
      species: facts.species[speciesId]!,
      stage,
      entry: {},
      events: [],
      massG,
      totalLengthCm: totalLengthM * 100,
      movedOn: null,
      fitness: null,
    },
    proof: null,
    state: 'open',
    ended: null,
    overrides: [],
    shopValues: [],
    vetName: '',
    facts,
    care,
  };
}
