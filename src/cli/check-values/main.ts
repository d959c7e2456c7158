/** `npm run check-values -- FILE`: holds neutral check values against the real rules and functions. */
import { resolve } from 'node:path';
import { checkValues } from './command.js';

// npm changes into the project's folder; a relative FILE is meant from where the command was typed.
const [file, ...more] = process.argv.slice(2);
const args = file === undefined ? [] : [resolve(process.env.INIT_CWD ?? '.', file), ...more];
const { lines, exitCode } = checkValues(args);
console.log(lines.join('\n'));
process.exitCode = exitCode;
