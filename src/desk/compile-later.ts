// When the engine compiles. Short heavy runs (a plan, a search) on few cores: left to itself Node 20 compiles each function
// early and several times over, and the compiling takes the cores from the work. Newer ones have a quick compiler in between
// and want no such advice.
import { setFlagsFromString } from 'node:v8';

/** Work a function does before it is compiled for good [bytes of its code gone through]; 132 000 unless told. Our choice:
 *  of 60 000 to 1 500 000 the search was quickest from 700 000 on, in its first answer and in its settled one. */
const budgetBytes = 700_000;

/** Whether this engine gains from compiling later. */
export const compilesEarly = (nodeVersion: string): boolean => nodeVersion.startsWith('20.');

/** For a process that is started; nothing where the engine gains nothing. */
export const laterFlags: readonly string[] = compilesEarly(process.versions.node)
  ? [`--interrupt-budget=${budgetBytes}`]
  : [];

/** Before threads are started; for this process and its threads. */
export function compileLater(): void {
  for (const flag of laterFlags) setFlagsFromString(flag);
}
