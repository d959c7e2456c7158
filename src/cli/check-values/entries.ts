/** Reads a file of check values. Whatever is wrong with it is reported with its place. */

/** One entry as written. */
export interface Entry {
  id: string;
  rule: string;
  facts: Record<string, unknown>;
  expect: Record<string, unknown>;
  why: string;
  source: string;
  source_status: string;
}

const KEYS: readonly (keyof Entry)[] = ['id', 'rule', 'facts', 'expect', 'why', 'source', 'source_status'];

/** An entry that can be run, or why it cannot. `name` says which entry it is. */
export type Reading = { name: string } & ({ entry: Entry } | { malformed: string });

/** The file is not a list of entries at all. */
export class BadFile extends Error {}

export function readEntries(text: string): Reading[] {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch (error) {
    throw new BadFile(
      `not JSON: ${error instanceof Error ? error.message : String(error)}${lineOf(error, text)}`,
    );
  }
  if (!Array.isArray(document)) throw new BadFile('the top of the file should be a list of entries');
  if (document.length === 0) throw new BadFile('the list holds no entries, so nothing would be checked');
  const seen = new Set<string>();
  return document.map((one: unknown, index) => {
    const id = isObject(one) && typeof one.id === 'string' ? one.id : null;
    const name = id ?? `entry ${index + 1} of the list`;
    const wrong = isObject(one) ? whatIsWrong(one) : 'should be an object';
    if (wrong !== null) return { name, malformed: wrong };
    if (seen.has(id!))
      return { name, malformed: `entry ${index + 1} of the list uses an id that an earlier one has` };
    seen.add(id!);
    return { name, entry: one as Entry };
  });
}

function whatIsWrong(one: Record<string, unknown>): string | null {
  const missing = KEYS.filter((key) => !(key in one));
  if (missing.length > 0) return `lacks ${missing.join(', ')}`;
  const extra = Object.keys(one).filter((key) => !(KEYS as readonly string[]).includes(key));
  if (extra.length > 0) return `has ${extra.join(', ')}, which no entry has`;
  for (const key of KEYS) {
    const object = key === 'facts' || key === 'expect';
    if (object ? !isObject(one[key]) : typeof one[key] !== 'string' || one[key] === '')
      return `${key} should be ${object ? 'an object' : 'a text'}`;
  }
  return null;
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** ' (line 3)' where the parser gives a position and no line. */
function lineOf(error: unknown, text: string): string {
  const message = error instanceof Error ? error.message : '';
  const position = /at position (\d+)/.exec(message)?.[1];
  if (position === undefined || message.includes('line')) return '';
  return ` (line ${text.slice(0, Number(position)).split('\n').length})`;
}
