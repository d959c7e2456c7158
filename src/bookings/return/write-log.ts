import type { EntityManager } from 'typeorm';
import { addRecord, writeRecord } from '../../platform/database/records.js';
import { ProblemException } from '../../platform/problems/index.js';
import { LogEntry } from '../../logbook/log-entry.entity.js';
import { settle } from '../../logbook/log-rows.js';
import type { LogEntryDto } from '../../logbook/log.dto.js';
import type { BookingRow } from '../booking.entity.js';
import type { FlightFlownDto, ReturnEntryDto } from './return.dto.js';
import type { Given, ReturnRow } from './return.sql.js';

const ENTRIES = { entity: LogEntry, noun: 'log entry' };
const FLIGHT_FIELDS = ['departedAt', 'arrivedAt', 'fromAirfield', 'toAirfield'] as const;

interface Flown {
  clubId: string;
  booking: BookingRow;
  body: FlightFlownDto;
  now: string;
}

/** Writes the flight into the logs of its crew. @throws 422 naming the entry's field */
export async function writeLog(em: EntityManager, of: Flown): Promise<ReturnRow['entries']> {
  const written: ReturnRow['entries'] = [];
  for (const [index, entry] of of.body.entries.entries()) written.push(await addEntry(em, of, entry, index));
  return written;
}

/**
 * Brings the logs after a correction: what it changes is changed there, what the member wrote otherwise since stays, a person
 * left out is taken out of the count, and an entry that the member took out stays out.
 */
export async function correctLog(
  em: EntityManager,
  of: Flown,
  before: ReturnRow,
): Promise<ReturnRow['entries']> {
  const written: ReturnRow['entries'] = [];
  for (const [index, entry] of of.body.entries.entries()) {
    const old = before.entries.find(({ memberId }) => memberId === entry.memberId);
    const row = old && (await entryOf(em, of.clubId, old.logEntryId));
    if (!old || !row) {
      written.push(await addEntry(em, of, entry, index));
      continue;
    }
    const given = givenBy(entry);
    const changes = { ...changed(old.given, given), ...changedFlight(before, of.body) };
    if (row.voidedAt === null && Object.keys(changes).length > 0) {
      const values = await fieldsNamed(index, () => settle(em, of.clubId, changes, of.now, row));
      await writeRecord(em, ENTRIES, row, values);
    }
    written.push({ memberId: entry.memberId, logEntryId: row.id, given });
  }
  for (const old of before.entries) {
    if (of.body.entries.some(({ memberId }) => memberId === old.memberId)) continue;
    const row = await entryOf(em, of.clubId, old.logEntryId);
    if (row && row.voidedAt === null) await writeRecord(em, ENTRIES, row, { voidedAt: of.now });
  }
  return written;
}

const entryOf = (em: EntityManager, clubId: string, id: string): Promise<LogEntry | null> =>
  em.findOne(LogEntry, { where: { clubId, id }, lock: { mode: 'pessimistic_write' } });

async function addEntry(
  em: EntityManager,
  { clubId, booking, body, now }: Flown,
  entry: ReturnEntryDto,
  index: number,
): Promise<ReturnRow['entries'][number]> {
  const { memberId } = entry;
  const given = givenBy(entry);
  const draft: LogEntryDto = {
    ...given,
    aircraftId: booking.aircraftId,
    ...Object.fromEntries(FLIGHT_FIELDS.map((field) => [field, body[field]])),
    remarks: entry.remarks ?? '',
  } as LogEntryDto;
  const values = await fieldsNamed(index, () => settle(em, clubId, draft, now));
  const { id } = await addRecord(em, ENTRIES, { ...values, clubId, memberId, bookingId: booking.id });
  return { memberId, logEntryId: id, given };
}

/** Every figure that goes into a log; what was left out is none. */
function givenBy({ memberId: _whose, remarks: _words, ...entry }: ReturnEntryDto): Given {
  return {
    ...{ actualInstrumentH: 0, simulatedInstrumentH: 0, dualGivenH: 0 },
    ...{ approaches: 0, holding: false, interceptTrack: false },
    ...entry,
  };
}

const changed = (before: Given, after: Given): Partial<Given> =>
  Object.fromEntries(
    Object.entries(after).filter(([field, value]) => before[field as keyof Given] !== value),
  ) as Partial<Given>;

const changedFlight = (before: ReturnRow, after: FlightFlownDto): Partial<FlightFlownDto> =>
  Object.fromEntries(
    FLIGHT_FIELDS.filter((field) => before[field] !== after[field]).map((field) => [field, after[field]]),
  );

/** What the log refuses is told of the entry it came in. */
async function fieldsNamed<T>(index: number, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof ProblemException) || error.errors.length === 0) throw error;
    const ofFlight = new Set<string>(FLIGHT_FIELDS);
    throw new ProblemException(error.code, {
      ...{ status: error.getStatus(), title: error.title, detail: error.errors[0]!.message },
      errors: error.errors.map(({ field, message }) => {
        const name = ofFlight.has(field) ? field : `entries[${index}].${field}`;
        return { field: name, pointer: `/${name.replace(/\[(\d+)\]\./, '/$1/')}`, in: 'body', message };
      }),
    });
  }
}
