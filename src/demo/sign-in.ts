import { localClock, localDateOf, toSeconds, type Answer } from '../rules/index.js';
import { aircraftBy, FLEET } from './fleet/aircraft.js';
import { MODELS } from './fleet/models.js';
import { DEMO_SLUG } from './ids.js';
import { byKey, type Person } from './people/person.js';
import type { Try } from './tries.js';
import { ZONE } from './when.js';

/** The password of every demo account. It is printed at each start, so a demo is no place for anything private. */
export const DEMO_PASSWORD = 'fly-safely-demo';

/** Answers in the words of the pages. */
const WORDS: Record<Answer, string> = {
  yes: 'Yes',
  'yes-with-conditions': 'Yes, if',
  'dual-only': 'With an instructor',
  'ask-officer': 'Ask an officer',
  no: 'No',
};

const OFFICERS: readonly [key: string, what: string][] = [
  ['marta', 'administrator'],
  ['desmond', 'safety officer'],
  ['gus', 'maintenance coordinator'],
  ['iris', 'instructor, single engine and instrument'],
  ['anton', 'instructor, multi-engine too'],
  ['signe', 'instructor, tailwheel'],
];

/** The lines printed at the start: where and as whom to sign in, what to ask, and what the answer will be. */
export function signInLines(of: { url: string; people: readonly Person[]; tries: readonly Try[] }): string[] {
  const officers = OFFICERS.map(([key, what]) => {
    const person = byKey(of.people, key);
    return [person.email, what];
  });
  const rows = of.tries.map((one, index) => [
    of.tries[index - 1]?.person === one.person ? '' : one.person.email,
    aircraftBy(one.aircraft).registration,
    `${one.tells ? '* ' : ''}${one.what}${one.usual ? '' : ` (${time(one)})`}`,
    WORDS[one.answer],
    one.because,
  ]);
  const usual = (which: Try['usual']): string => time(of.tries.find((one) => one.usual === which)!);
  return [
    '',
    `Sign in at ${of.url}`,
    `  club      ${DEMO_SLUG}`,
    `  password  ${DEMO_PASSWORD}   (the same for all; everybody here is invented)`,
    '  e-mail    one of these, or one of those below:',
    '',
    ...columns(officers),
    '',
    'The aircraft:',
    '',
    ...columns(FLEET.map((one) => [one.registration, MODELS[one.model].makeModel, one.shows])),
    '',
    `What to ask, and what the answer is. By day is ${usual('day')}, after dark ${usual('dark')}, unless a time is given;`,
    'tell weather and fuel only where the line says so. Lines with * need fields beyond who, what, when and where (in the',
    'API: weather, loading, airspace, maxAltitudeFtMsl, usesVor, usesTransponder); without them the answer is another.',
    '',
    ...columns([['sign in as', 'aircraft', 'ask for a flight', 'answer', 'because'], ...rows]),
    '',
    'Bellcrank is an aid: the pilot in command decides. This is a demonstration and no real club.',
  ];
}

/** '2027-03-02 10:00 to 11:30'. */
function time({ ask }: Try): string {
  const [from, to] = [toSeconds(ask.departs), toSeconds(ask.arrives)];
  return `${localDateOf(from, ZONE)} ${localClock(from, ZONE)} to ${localClock(to, ZONE)}`;
}

/** Rows as aligned text; the last column runs free. */
function columns(rows: readonly string[][]): string[] {
  const widths = (rows[0] ?? []).map((_cell, index) => Math.max(...rows.map((row) => row[index]!.length)));
  return rows.map(
    (row) =>
      `  ${row.map((cell, index) => (index === row.length - 1 ? cell : cell.padEnd(widths[index]! + 2))).join('')}`,
  );
}
