/** `npm run mutation:check`: is the list of survivors about the rules as they are, and is each explained? Runs no mutant. */
import { filesOf, mutantsOf } from './catalogue.mjs';
import { OWED, readSurvivors, wrongWithList } from './survivors.mjs';

const list = readSurvivors();
const listed = new Set(list.entries.map(({ file }) => file));
const there = filesOf([]);
const mutants = await mutantsOf(there.filter((file) => listed.has(file)));
const wrong = wrongWithList(list, mutants);
if (wrong.length > 0) {
  console.error(wrong.join('\n'));
  console.error(
    '`npm run mutation -- --list FILE` writes the list anew for a file; then explain what is new in it',
  );
  process.exitCode = 1;
} else {
  const owed = list.entries.filter(({ why }) => why === OWED).length;
  const explained =
    owed === 0 ? 'all there and explained' : `known; ${owed} of them still want a case or an argument`;
  console.log(`${list.entries.length} listed survivors, ${explained}`);
}
