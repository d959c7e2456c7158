/** Runs a command written in TypeScript, without a build: `node test/support/run.mjs FILE ARGUMENTS`. */
import { TypeScriptModules } from './typescript-modules.mjs';

const [file, ...args] = process.argv.slice(2);
const modules = new TypeScriptModules(new URL('../..', import.meta.url).pathname);
process.exitCode = await modules.load(file).main(args);
