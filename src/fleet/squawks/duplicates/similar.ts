/** How alike two reports are. Pure, so that it is the same on every server, whatever extensions its database has. */

/** What is compared of a report. */
export interface Reported {
  title: string;
  detail: string;
  equipmentId: string | null;
}

/** From this on a squawk is offered as the same fault. Chosen on the demo club's squawks: common practice, no source. */
export const ALIKE_FROM = 0.3;
/** What naming the same piece of equipment counts for. */
const SAME_EQUIPMENT = 0.35;

/** Words that say nothing about which fault it is. */
const EMPTY = new Set(
  'a an and are at be been by do does for from has have in is it its not of off on or out that the there this to was were when while with'.split(
    ' ',
  ),
);

/** Likeness of two reports, 0 to 1: their words by trigrams, and the equipment they name. */
export function likeness(a: Reported, b: Reported): number {
  const titles = dice(trigrams(a.title), trigrams(b.title));
  const whole = dice(trigrams(`${a.title} ${a.detail}`), trigrams(`${b.title} ${b.detail}`));
  const words = Math.max(titles, whole);
  if (a.equipmentId === null || a.equipmentId !== b.equipmentId) return words;
  return Math.min(1, words + SAME_EQUIPMENT);
}

/** Runs of three letters of each word, its edges marked, so that word order and endings matter little. */
export function trigrams(text: string): Set<string> {
  const words = text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '' && !EMPTY.has(word));
  const found = new Set<string>();
  for (const word of words) {
    const marked = `  ${word} `;
    for (let at = 0; at + 3 <= marked.length; at += 1) found.add(marked.slice(at, at + 3));
  }
  return found;
}

/** Sørensen–Dice coefficient: twice what both have over what each has. Nothing is like nothing. */
export function dice(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  if (a.size + b.size === 0) return 0;
  let both = 0;
  for (const one of a) if (b.has(one)) both += 1;
  return (2 * both) / (a.size + b.size);
}
