// Starts the terminal program. Everything it does is in program.ts.
import { resolve } from 'node:path';
import { compileLater } from '../desk/compile-later.ts';
import { teachLanguages } from '../records/languages.ts';
import { programRoot } from '../records/root.ts';
import { runProgram } from './program.ts';
import { ownTerminal } from './terminal.ts';

compileLater();
// A file of a language that cannot be used changes nothing here: `npm run language` says what is wrong with it.
teachLanguages(resolve(programRoot(), process.env.WARMSTEAD_DATA || 'data-local'));
process.exitCode = await runProgram(process.argv.slice(2), ownTerminal());
