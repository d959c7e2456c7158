import type { EntityManager } from 'typeorm';
import { addDays, type LocalDate } from '../rules/calendar/dates.js';
import { hoursOf } from '../platform/http/views.js';
import type { AircraftCategory, AircraftClass, LogFact } from '../rules/facts/person.js';
import type { Owner } from './log-list.js';
import type { HoursView, LogTotalsView } from './log-totals.dto.js';

const inRole = (...roles: LogFact['role'][]): string =>
  `CASE WHEN e.role IN (${roles.map((role) => `'${role}'`).join(', ')}) THEN e.total_tenths ELSE 0 END`;

/** What is added up of each flight. Hours are summed in tenths. */
const SUMS: Record<keyof HoursView, string> = {
  flights: '1',
  totalH: 'e.total_tenths',
  nightH: 'e.night_tenths',
  crossCountryH: 'e.cross_country_tenths',
  actualInstrumentH: 'e.actual_instrument_tenths',
  simulatedInstrumentH: 'e.simulated_instrument_tenths',
  dualGivenH: 'e.dual_given_tenths',
  dualReceivedH: inRole('dual-received'),
  soloH: inRole('solo'),
  // 14 CFR 61.51(e)(1), (3) and (4), from memory: command, an instructor while instructing, a student alone.
  commandH: inRole('pilot-in-command', 'solo', 'instructor'),
  takeoffs: 'e.takeoffs',
  landings: 'e.landings',
  fullStopLandings: 'e.full_stop_landings',
  nightTakeoffs: 'e.night_takeoffs',
  nightFullStopLandings: 'e.night_full_stop_landings',
  approaches: 'e.approaches',
};
const NAMES = Object.keys(SUMS) as (keyof HoursView)[];

const sums = (which = ''): string =>
  NAMES.map((name) => `'${name}', coalesce(sum(${SUMS[name]})${which}, 0)`).join(', ');

/** Each way the log is divided, as a bit of `sets` that is 0 where a row is of it. */
const SETS = { category: 0b0111, class: 0b0011, role: 0b1110, model: 0b1101, all: 0b1111 } as const;

/** One pass over the log. The model is the club's, or else the aircraft in words. */
const SQL = `
  WITH flown AS (
    SELECT l.*, coalesce(m.make_model, l.aircraft_words) AS model
      FROM log_entries l LEFT JOIN aircraft_models m ON m.club_id = l.club_id AND m.id = l.model_id
     WHERE l.club_id = $1 AND l.member_id = $2 AND l.voided_at IS NULL AND l.flown_on <= $4)
  SELECT grouping(e.category, e.class, e.model, e.role) AS sets, e.category, e.class, e.role, e.model,
         e.model_id AS "modelId", jsonb_build_object(${sums()}) AS hours,
         jsonb_build_object(${sums(' FILTER (WHERE e.flown_on >= $3)')}) AS recent,
         (SELECT jsonb_build_array(coalesce(sum(d.total_tenths), 0),
             coalesce(sum(d.actual_instrument_tenths + d.simulated_instrument_tenths), 0))
            FROM flown d WHERE d.device IS NOT NULL) AS device
    FROM flown e
   WHERE e.device IS NULL
   GROUP BY GROUPING SETS ((e.category), (e.category, e.class), (e.model, e.model_id), (e.role), ())
   ORDER BY sets, e.category, e.class, e.role, sum(e.total_tenths) DESC, e.model`;

type Tenths = Record<keyof HoursView, number>;

interface Row {
  sets: number;
  category: AircraftCategory;
  class: AircraftClass;
  role: LogFact['role'];
  model: string;
  modelId: string | null;
  hours: Tenths;
  recent: Tenths;
  device: [total: number, instrument: number];
}

/** A member's sums on a day. The 90 days are the preceding 90 and that day (14 CFR 61.57 counts the same way). */
export async function totalsOf(em: EntityManager, of: Owner, on: LocalDate): Promise<LogTotalsView> {
  const from = addDays(on, -90);
  const rows = await em.query<Row[]>(SQL, [of.clubId, of.memberId, from, on]);
  const each = (sets: number): Row[] => rows.filter((row) => row.sets === sets);
  const all = each(SETS.all)[0]!;
  const [device, deviceInstrument] = all.device;
  return {
    ...{ on, ...shown(all.hours), deviceH: hoursOf(device), deviceInstrumentH: hoursOf(deviceInstrument) },
    byCategory: each(SETS.category).map(({ category, hours }) => ({ category, ...shown(hours) })),
    byClass: each(SETS.class).map((row) => ({
      ...{ category: row.category, class: row.class },
      ...shown(row.hours),
    })),
    byModel: each(SETS.model).map(({ model, modelId, hours }) => ({ modelId, model, ...shown(hours) })),
    byRole: each(SETS.role).map(({ role, hours }) => ({ role, ...shown(hours) })),
    last90Days: { from, through: on, ...shown(all.recent) },
  };
}

/** Tenths as hours; counts as they are. */
const shown = (tenths: Tenths): HoursView =>
  Object.fromEntries(
    NAMES.map((name) => [name, name.endsWith('H') ? hoursOf(tenths[name]) : tenths[name]]),
  ) as unknown as HoursView;
