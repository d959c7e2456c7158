/** Values that a field must refuse, by what the API description says it is. */
import type { Schema } from './operations.js';
import { typesOf } from './operations.js';

const LONG = 'x'.repeat(100_000);
const NUL = 'be\u0000fore';

/** A wrong value and what is wrong with it. */
export type Wrong = [what: string, value: unknown];

/** Wrong values for a field; null is wrong only where the description does not allow it. */
export function wrongFor(field: Schema): Wrong[] {
  const types = typesOf(field);
  const nullable = [field.type ?? []].flat().includes('null');
  const all: Wrong[] = nullable || types.length === 0 ? [] : [['null', null]];
  if (types.includes('string')) all.push(...wrongText(field));
  if (types.includes('integer') || types.includes('number')) all.push(...wrongNumber(types));
  if (types.includes('boolean')) all.push(['a word for yes', 'yes'], ['a number', 1], ['a list', [true]]);
  if (types.includes('array')) {
    all.push(['a text', 'x'], ['an object', {}], ['a list of lists', [[[]]]], ['a list of null', [null]]);
    all.push(['five thousand items', Array.from({ length: 5000 }, (_item, index) => `x${index}`)]);
  }
  if (field.properties || types.includes('object'))
    all.push(['a text', 'x'], ['a list', []], ['a number', 7]);
  return all;
}

function wrongText(field: Schema): Wrong[] {
  const all: Wrong[] = [
    ['a number', 7],
    ['a list', ['x']],
    ['an object', { toString: 'x' }],
    ['a zero byte', NUL],
    ['100,000 letters', LONG],
  ];
  if (field.format === 'uuid') all.push(['no identifier', '1'], ['SQL', "' OR '1'='1"]);
  if (field.format === 'date') all.push(...['2026-02-30', '1600-01-01', 'soon', '', '2026-3-1'].map(quoted));
  if (field.format === 'date-time') {
    all.push(
      ...['2026-02-30T10:00:00Z', '2026-03-08T02:30:00', '9999-01-01T00:00:00Z', 'soon', ''].map(quoted),
    );
  }
  if (field.format === 'email') all.push(['no address', 'nobody']);
  if (field.enum) all.push(['an unknown word', 'joyride'], ['a name every object has', 'constructor']);
  return all;
}

function wrongNumber(types: string[]): Wrong[] {
  const fraction: Wrong[] = types.includes('number') ? [] : [['a fraction', 1.5]];
  return [
    ['very negative', -1e9],
    ['huge', 1e300],
    ['beyond 32 bits', 2 ** 40],
    ['a text', '7'],
    ['an object', {}],
    ...fraction,
  ];
}

const quoted = (value: string): Wrong => [`"${value}"`, value];

/** A body nested deeper than any stack; 100 kB. */
export const DEEP = `${'{"a":'.repeat(16_000)}1${'}'.repeat(16_000)}`;
export const DEEP_LIST = `{"x":${'['.repeat(60_000)}${']'.repeat(60_000)}}`;
/** More than any body may hold. */
export const TEN_MEGABYTES = Buffer.from(`{"x":"${'x'.repeat(10_000_000)}"}`);

/** Bodies that are wrong as a whole, with their headers. */
export const WRONG_BODIES: [
  what: string,
  body: string,
  headers: Record<string, string>,
  statuses: number[],
][] = [
  ['a list', '[]', {}, [400]],
  ['a list of objects', '[{}]', {}, [400]],
  ['a text', '"x"', {}, [400]],
  ['null', 'null', {}, [400]],
  ['not JSON', '{"a":', {}, [400]],
  ['nested deep', DEEP, {}, [400]],
  ['lists nested deep', DEEP_LIST, {}, [400]],
  ['a form', 'a=1', { 'Content-Type': 'application/x-www-form-urlencoded' }, [415]],
  ['plain text', '{}', { 'Content-Type': 'text/plain' }, [415]],
  ['a strange charset', '{}', { 'Content-Type': 'application/json; charset=klingon' }, [415]],
  ['an unknown encoding', '{}', { 'Content-Encoding': 'rot13' }, [415]],
  ['no gzip', '{}', { 'Content-Encoding': 'gzip' }, [400]],
  ['a prototype', '{"__proto__":{"admin":true}}', {}, [400]],
  ['a constructor', '{"constructor":{"prototype":{"admin":true}}}', {}, [400]],
  ['an unknown field', '{"colour":"red"}', {}, [400]],
];
