import { readFileSync } from 'node:fs';
import { BadFile, readEntries } from './entries.js';
import { report } from './report.js';
import { runAll } from './run.js';

/** Holds a file of check values against the rules: what to print, and the exit status. */
export function checkValues(args: readonly string[]): { lines: string[]; exitCode: 0 | 1 } {
  const [file, ...more] = args;
  if (file === undefined || more.length > 0) {
    return {
      lines: [
        'Usage: npm run check-values -- FILE',
        'FILE is a JSON list of {id, rule, facts, expect, why, source, source_status}.',
      ],
      exitCode: 1,
    };
  }
  try {
    return report(runAll(readEntries(readFileSync(file, 'utf8'))));
  } catch (error) {
    const because = error instanceof BadFile ? error.message : `cannot be read (${(error as Error).message})`;
    return { lines: [`FAILED ${file}: ${because}`, '0 passed, 1 failed, 0 skipped'], exitCode: 1 };
  }
}
