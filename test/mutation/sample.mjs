/** Draws a sample of the changes: the same for the same rules, another when anything in them changes. */
import { createHash } from 'node:crypto';

/** So many of the mutants. */
export function sampleOf(mutants, size) {
  const seed = createHash('sha256');
  for (const { place, was } of mutants) seed.update(place).update(was);
  const drawn = seed.digest('hex');
  const rank = ({ place }) => createHash('sha256').update(drawn).update(place).digest('hex');
  // Changes of whole blocks would bring all that is inside them along.
  const single = mutants.filter(({ lines }) => lines === 1).map((mutant) => [rank(mutant), mutant]);
  single.sort(([a], [b]) => (a < b ? -1 : 1));
  return single.slice(0, size).map(([, mutant]) => mutant);
}

/** Ranges of source, as Stryker takes them, that hold the mutants. */
export const rangesOf = (mutants) => [
  ...new Set(mutants.map(({ file, place }) => `${file}:${rangeOf(place, file)}`)),
];

/** 'line:column-line:column', lines counted from 1. */
function rangeOf(place, file) {
  const [from, to] = place.slice(file.length + 1).split(' ');
  const [start, end] = [from, to].map((at) => at.split(':').map(Number));
  return `${start[0] + 1}:${start[1]}-${end[0] + 1}:${end[1]}`;
}
