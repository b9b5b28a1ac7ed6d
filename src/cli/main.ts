// Starts the terminal program. Everything it does is in program.ts.
import { runProgram } from './program.ts';
import { ownTerminal } from './terminal.ts';

process.exitCode = await runProgram(process.argv.slice(2), ownTerminal());
