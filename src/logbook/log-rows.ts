import type { EntityManager } from 'typeorm';
import { hoursOf, show, tenthsOf } from '../platform/http/views.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import { type Instant, localDateOf, toSeconds } from '../rules/calendar/instants.js';
import { aircraftFlown, type AircraftFlown } from './aircraft-flown.js';
import { timesAnew } from './import/untimed.js';
import { assertAddsUp, type Settled } from './log.checks.js';
import { type LogEntryChanges, LogEntryView } from './log.dto.js';
import type { LogEntry } from './log-entry.entity.js';

/** An entry as the API shows it. */
export const viewOf = (row: LogEntry): LogEntryView =>
  show(LogEntryView, row, {
    totalH: hoursOf(row.totalTenths),
    nightH: hoursOf(row.nightTenths),
    dualGivenH: hoursOf(row.dualGivenTenths),
    crossCountryH: hoursOf(row.crossCountryTenths),
    actualInstrumentH: hoursOf(row.actualInstrumentTenths),
    simulatedInstrumentH: hoursOf(row.simulatedInstrumentTenths),
  });

const AIRCRAFT_FIELDS = [
  'aircraftId',
  'modelId',
  'aircraftWords',
  'category',
  'class',
  'typeRating',
  'tailwheel',
] as const;

/**
 * Every column of an entry: what the request says, over what was there, completed from the club's aircraft and
 * airfields, and checked as a whole.
 * @throws 422
 */
export async function settle(
  em: EntityManager,
  clubId: string,
  request: LogEntryChanges,
  now: Instant,
  before?: LogEntry,
): Promise<Settled> {
  const { totalH, nightH, dualGivenH, crossCountryH, actualInstrumentH, simulatedInstrumentH, ...plain } =
    request;
  const given = defined({
    ...plain,
    totalTenths: tenthsOf(totalH),
    nightTenths: tenthsOf(nightH),
    dualGivenTenths: tenthsOf(dualGivenH),
    crossCountryTenths: tenthsOf(crossCountryH),
    actualInstrumentTenths: tenthsOf(actualInstrumentH),
    simulatedInstrumentTenths: tenthsOf(simulatedInstrumentH),
  });
  const merged = { ...DEFAULTS, ...(before && defined(columnsOf(before))), ...given } as Partial<Settled>;
  const entry = {
    ...merged,
    ...(await aircraftOf(em, clubId, given, before)),
    flownOn: await dateFlown(em, clubId, merged, given, before),
  } as Settled;
  if (before !== undefined && !before.timesKnown) Object.assign(entry, timesAnew(entry, given, before));
  assertAddsUp(entry, now);
  return entry;
}

/**
 * What the entry says of the aircraft. An edit that does not touch it keeps what was recorded, even if the aircraft has
 * changed since; naming another aircraft starts afresh.
 */
async function aircraftOf(
  em: EntityManager,
  clubId: string,
  given: Partial<Settled>,
  before?: LogEntry,
): Promise<AircraftFlown> {
  const asked = pick(
    given,
    AIRCRAFT_FIELDS.filter((field) => field in given),
  );
  if (before === undefined || 'aircraftId' in asked || 'modelId' in asked)
    return aircraftFlown(em, clubId, asked);
  const kept = pick(before, AIRCRAFT_FIELDS) as AircraftFlown;
  if (Object.keys(asked).every((field) => field === 'aircraftWords')) return { ...kept, ...asked };
  const { aircraftId, modelId, aircraftWords } = kept;
  if (aircraftId === null && modelId === null) return aircraftFlown(em, clubId, { ...kept, ...asked });
  return aircraftFlown(em, clubId, {
    aircraftWords,
    ...(aircraftId === null ? { modelId } : { aircraftId }),
    ...asked,
  });
}

/** The date at the place of departure: as given, as it was, or by the zone of an airfield the club knows. */
async function dateFlown(
  em: EntityManager,
  clubId: string,
  { departedAt, fromAirfield, flownOn }: Partial<Settled>,
  given: Partial<Settled>,
  before?: LogEntry,
): Promise<string> {
  const moved = given.departedAt !== undefined || given.fromAirfield !== undefined;
  if (given.flownOn !== undefined || (before !== undefined && !moved)) return flownOn!;
  const [airfield] = await em.query<{ zone: string }[]>(
    'SELECT zone FROM airfields WHERE club_id = $1 AND code = $2',
    [clubId, fromAirfield],
  );
  if (airfield === undefined) {
    const detail = 'The club does not know the airfield of departure, so give the date there.';
    throw new ProblemException('log-does-not-add-up', { detail, field: 'flownOn' });
  }
  return localDateOf(toSeconds(departedAt!), airfield.zone);
}

const DEFAULTS = {
  timesKnown: true,
  approaches: 0,
  holding: false,
  interceptTrack: false,
  device: null,
  nightTenths: 0,
  dualGivenTenths: 0,
  crossCountryTenths: 0,
  actualInstrumentTenths: 0,
  simulatedInstrumentTenths: 0,
  remarks: '',
};
const NOT_COLUMNS_TO_WRITE = new Set([
  ...['clubId', 'id', 'memberId', 'rowVersion', 'recordedAt', 'voidedAt', 'importId', 'bookingId'],
]);

const pick = (
  from: Partial<AircraftFlown>,
  fields: readonly (keyof AircraftFlown)[],
): Partial<AircraftFlown> => Object.fromEntries(fields.map((field) => [field, from[field]]));

const defined = <T extends object>(values: T): Partial<T> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Partial<T>;

const columnsOf = (row: LogEntry): Partial<LogEntry> =>
  Object.fromEntries(Object.entries(row).filter(([name]) => !NOT_COLUMNS_TO_WRITE.has(name)));
