// What this does: says of a run of tests which failed, each with its file, its name and the first lines of what it said.
// Why: whoever reads only the end of a long run must find there what is broken, not how many.
import { relative } from 'node:path';

/** So many lines of one message, and so many failures, are said; the rest is counted. */
const mostLines = 8;
const mostFailures = 40;
const indent = '        ';

/** @param report  what the JSON reporter of vitest wrote
 *  @param root    folder that files are named from
 *  @returns one text for each failure: a line that says which, then the message, indented */
export function failedTests(report, root) {
  return report.testResults.flatMap((file) => {
    const name = relative(root, file.name);
    const failed = file.assertionResults.filter((one) => one.status === 'failed');
    if (failed.length === 0 && file.status === 'failed') return [failureText(name, file.message)];
    return failed.map((one) =>
      failureText([name, ...one.ancestorTitles, one.title].filter(Boolean).join(' > '), one.failureMessages.join('\n')),
    );
  });
}

/** @param said  all that it said, of which the first lines are kept */
export function failureText(name, said) {
  const lines = stripColours(said)
    .split('\n')
    .map((line) => line.trimEnd())
    .filter((line) => line.trim() !== '' && !/^\s+at /.test(line))
    .slice(0, mostLines);
  return [`failed: ${name}`, ...lines.map((line) => `${indent}${line.slice(0, 300)}`)].join('\n');
}

/** The last words of a run but for its count. */
export function failureList(failures) {
  const more = failures.length - mostFailures;
  return [...failures.slice(0, mostFailures), ...(more > 0 ? [`failed: and ${more} more`] : [])].join('\n');
}

const stripColours = (text) => text.replace(new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g'), '');
