/** What an import reads from the database, and how it writes. Runs inside `TenantDb.run`. */
import type { EntityManager } from 'typeorm';
import { clubZone } from '../../clubs/club-time.js';
import { newId } from '../../platform/ids.js';
import { type Instant, localDateOf, toInstant, toSeconds } from '../../rules/index.js';
import type { KnownAircraft } from './aircraft.js';
import type { Choices } from './choices.js';
import type { LoggedFlight } from './duplicates.js';
import type { Known } from './read-log.js';
import type { Draft } from './read-row.js';
import { sumOf } from './sums.js';

/** What files are read by: the club's aircraft and airfields, and the member's log. */
export async function gatherKnown(
  em: EntityManager,
  of: { clubId: string; memberId: string; now: Instant },
): Promise<Known> {
  const zone = await clubZone(em, of.clubId);
  const aircraft: KnownAircraft[] = await em.query(
    `SELECT a.id AS "aircraftId", a.registration, m.id AS "modelId", m.make_model AS "makeModel", m.category, m.class,
            m.type_rating AS "typeRating", m.tailwheel
       FROM aircraft_models m LEFT JOIN aircraft a ON a.club_id = m.club_id AND a.model_id = m.id
      WHERE m.club_id = $1 ORDER BY m.id, a.id`,
    [of.clubId],
  );
  const airfields: Known['airfields'] = await em.query(
    'SELECT code, zone FROM airfields WHERE club_id = $1 ORDER BY code',
    [of.clubId],
  );
  const rows: (Omit<LoggedFlight, 'departedAt'> &
    Parameters<typeof sumOf>[0][number] & { departed: number })[] = await em.query(
    `SELECT id, extract(epoch FROM departed_at)::float8 AS departed, times_known AS "timesKnown", flown_on::text AS "flownOn",
            total_tenths AS "totalTenths", aircraft_id AS "aircraftId", aircraft_words AS "aircraftWords",
            night_tenths AS "nightTenths", cross_country_tenths AS "crossCountryTenths",
            actual_instrument_tenths AS "actualInstrumentTenths", simulated_instrument_tenths AS "simulatedInstrumentTenths",
            dual_given_tenths AS "dualGivenTenths", takeoffs, landings
       FROM log_entries WHERE club_id = $1 AND member_id = $2 AND voided_at IS NULL ORDER BY id`,
    [of.clubId, of.memberId],
  );
  const log = rows.map(({ id, departed, timesKnown, flownOn, totalTenths, aircraftId, aircraftWords }) => ({
    ...{ id, departedAt: toInstant(Math.floor(departed)), timesKnown, flownOn, totalTenths },
    ...{ aircraftId, aircraftWords },
  }));
  return { zone, today: localDateOf(toSeconds(of.now), zone), aircraft, airfields, log, before: sumOf(rows) };
}

/** The newest choices of a member for each set of headings. */
export async function rememberedChoices(
  em: EntityManager,
  of: { clubId: string; memberId: string },
): Promise<Record<string, Choices>> {
  const rows: { headings: string; choices: Choices }[] = await em.query(
    `SELECT DISTINCT ON (headings_sha256) headings_sha256 AS headings, choices FROM log_imports
      WHERE club_id = $1 AND member_id = $2 ORDER BY headings_sha256, id DESC LIMIT 100`,
    [of.clubId, of.memberId],
  );
  return Object.fromEntries(rows.map(({ headings, choices }) => [headings, choices]));
}

/** Columns of an entry as they are written, by the name of the draft's field. */
const COLUMNS: Readonly<Record<Exclude<keyof Draft, 'line'>, [column: string, type: string]>> = {
  aircraftId: ['aircraft_id', 'uuid'],
  modelId: ['model_id', 'uuid'],
  aircraftWords: ['aircraft_words', 'text'],
  category: ['category', 'text'],
  class: ['class', 'text'],
  typeRating: ['type_rating', 'text'],
  tailwheel: ['tailwheel', 'boolean'],
  departedAt: ['departed_at', 'timestamptz'],
  arrivedAt: ['arrived_at', 'timestamptz'],
  timesKnown: ['times_known', 'boolean'],
  flownOn: ['flown_on', 'date'],
  fromAirfield: ['from_airfield', 'text'],
  toAirfield: ['to_airfield', 'text'],
  role: ['role', 'text'],
  soleManipulator: ['sole_manipulator', 'boolean'],
  takeoffs: ['takeoffs', 'smallint'],
  landings: ['landings', 'smallint'],
  fullStopLandings: ['full_stop_landings', 'smallint'],
  nightTakeoffs: ['night_takeoffs', 'smallint'],
  nightFullStopLandings: ['night_full_stop_landings', 'smallint'],
  approaches: ['approaches', 'smallint'],
  holding: ['holding', 'boolean'],
  interceptTrack: ['intercept_track', 'boolean'],
  device: ['device', 'text'],
  totalTenths: ['total_tenths', 'integer'],
  nightTenths: ['night_tenths', 'integer'],
  dualGivenTenths: ['dual_given_tenths', 'integer'],
  crossCountryTenths: ['cross_country_tenths', 'integer'],
  actualInstrumentTenths: ['actual_instrument_tenths', 'integer'],
  simulatedInstrumentTenths: ['simulated_instrument_tenths', 'integer'],
  remarks: ['remarks', 'text'],
};
const NAMES = Object.values(COLUMNS).map(([column]) => column);
const INSERT = `INSERT INTO log_entries (club_id, member_id, import_id, id, ${NAMES.join(', ')})
  SELECT $1::uuid, $2::uuid, $3::uuid, r.id, ${NAMES.map((name) => `r.${name}`).join(', ')}
    FROM jsonb_to_recordset($4::jsonb) AS r (id uuid, ${Object.values(COLUMNS)
      .map((column) => column.join(' '))
      .join(', ')})`;

/** Entries written by one statement. */
export const BATCH = 1000;

/** Writes entries, so many with each statement; `idOf` gives the entry of a line of the file its id. */
export async function writeEntries(
  em: EntityManager,
  of: { clubId: string; memberId: string; importId: string },
  drafts: readonly Draft[],
  idOf: (line: number) => string = newId,
): Promise<void> {
  for (let at = 0; at < drafts.length; at += BATCH) {
    const rows = drafts.slice(at, at + BATCH).map((draft) => ({
      id: idOf(draft.line),
      ...Object.fromEntries(
        Object.entries(COLUMNS).map(([field, [column]]) => [column, draft[field as keyof Draft]]),
      ),
    }));
    await em.query(INSERT, [of.clubId, of.memberId, of.importId, JSON.stringify(rows)]);
  }
}
