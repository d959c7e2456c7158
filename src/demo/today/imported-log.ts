import type { EntityManager } from 'typeorm';
import type { Choices } from '../../logbook/import/choices.js';
import { readLogFile } from '../../logbook/import/read-log.js';
import { gatherKnown, writeEntries } from '../../logbook/import/log-import-rows.js';
import { sha256 } from '../../platform/sha256.js';
import { addDays } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import { byKey, type Person } from '../people/person.js';
import type { When } from '../when.js';

/** Whose flights of before the club came from a file. */
const WRITER = 'luis';
const NEWEST_DAYS_AGO = 820;
const FLIGHTS = 24;
const AIRCRAFT = 'Plover 2';

/** A file as somebody keeps it in a spreadsheet: one line a flight, hours with a point. */
export function logFile(when: When): string {
  const lines = ['Date,Aircraft,From,To,Total,Dual received,PIC,Landings,Remarks'];
  for (let index = FLIGHTS - 1; index >= 0; index -= 1) {
    const tenths = 9 + ((index * 7) % 6);
    const alone = index < FLIGHTS / 3;
    const hours = (tenths / 10).toFixed(1);
    lines.push(
      [
        ...[addDays(when.daysAgo(NEWEST_DAYS_AGO), -9 * index), AIRCRAFT],
        ...[
          'Cold Fork',
          alone ? 'Ember Flat' : 'Cold Fork',
          hours,
          alone ? '0.0' : hours,
          alone ? hours : '0.0',
        ],
        ...[String(alone ? 1 : 4), alone ? 'Cross-country alone' : 'Lesson'],
      ].join(','),
    );
  }
  return `${lines.join('\n')}\n`;
}

/** Takes the file over as the page does, with ids that are the same every time. */
export async function importedLog(em: EntityManager, people: readonly Person[], when: When): Promise<void> {
  const memberId = byKey(people, WRITER).id;
  const bytes = new TextEncoder().encode(logFile(when));
  const known = await gatherKnown(em, { clubId: DEMO_CLUB_ID, memberId, now: when.asOf });
  const choices: Choices = {
    ...{ dates: 'year-first', takeoffsAsLandings: true },
    kinds: [{ words: AIRCRAFT, category: 'airplane', class: 'single-engine-land', tailwheel: false }],
  };
  const read = readLogFile({ bytes, choices, remembered: {}, known, now: when.asOf }, () => undefined);
  if (!read.ok) throw new Error(`the demo's log file cannot be read: ${JSON.stringify(read)}`);
  const { reading } = read;
  const { drafts, questions, bad } = reading;
  if (questions.length > 0 || bad.length > 0)
    throw new Error(
      `the demo's log file leaves something open: ${JSON.stringify({ questions, bad, kinds: reading.kinds })}`,
    );
  const days = drafts.map(({ flownOn }) => flownOn).sort();
  const importId = demoId('log-import', WRITER);
  await em.query(
    `INSERT INTO log_imports (club_id, id, member_id, imported_by, file_sha256, headings_sha256, choices, file_rows, entries,
       unreadable_rows, repeated_rows, first_flown_on, last_flown_on)
     VALUES (bellcrank_club(), $1, $2, $2, $3, $4, $5, $6, $7, 0, 0, $8, $9)`,
    [
      ...[importId, memberId, sha256(bytes), reading.headingsSha256, JSON.stringify(reading.choices)],
      ...[reading.rows, drafts.length, days[0], days.at(-1)],
    ],
  );
  await writeEntries(em, { clubId: DEMO_CLUB_ID, memberId, importId }, drafts, (line) =>
    demoId('log-import', WRITER, line),
  );
}
