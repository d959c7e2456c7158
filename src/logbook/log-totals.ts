import type { EntityManager } from 'typeorm';
import { Shown } from '../platform/http/fields.js';
import { hoursOf } from '../platform/http/views.js';
import { addDays } from '../rules/calendar/dates.js';
import type { Instant } from '../rules/calendar/instants.js';
import type { AircraftCategory, AircraftClass, LogFact } from '../rules/facts/person.js';
import { clubToday } from '../clubs/club-time.js';
import { AIRCRAFT_CATEGORIES, AIRCRAFT_CLASSES } from '../members/vocabulary.js';
import { LOG_ROLES } from './words.js';

/** Hours in aircraft. Time in training devices is never among them. */
export class HoursView {
  @Shown({ type: 'integer' })
  flights: number;

  @Shown({ type: 'number' })
  totalH: number;

  @Shown({ type: 'number' })
  nightH: number;
}

/** Hours in a category and class. */
export class ClassHoursView extends HoursView {
  @Shown({ type: 'string', enum: AIRCRAFT_CATEGORIES })
  category: AircraftCategory;

  @Shown({ type: 'string', enum: AIRCRAFT_CLASSES })
  class: AircraftClass;
}

/** Hours in a role. */
export class RoleHoursView extends HoursView {
  @Shown({ type: 'string', enum: LOG_ROLES })
  role: LogFact['role'];
}

/** Take-offs and landings of the last 90 days, in aircraft of every kind together; what they count for, the rules say. */
export class RecentView extends HoursView {
  @Shown({
    type: 'string',
    format: 'date',
    description: 'First day counted, in the zone of the place flown from',
  })
  from: string;

  @Shown({ type: 'string', format: 'date', description: "Last day counted: today in the club's zone" })
  through: string;

  @Shown({ type: 'integer' })
  takeoffs: number;

  @Shown({ type: 'integer' })
  landings: number;

  @Shown({ type: 'integer' })
  fullStopLandings: number;

  @Shown({ type: 'integer' })
  nightTakeoffs: number;

  @Shown({ type: 'integer' })
  nightFullStopLandings: number;
}

/** Sums over a member's log, without voided entries. */
export class LogTotalsView extends HoursView {
  @Shown({ type: 'number', description: 'Instruction given' })
  dualGivenH: number;

  @Shown({ type: 'number', description: 'In simulators and training devices' })
  deviceH: number;

  @Shown({ type: () => ClassHoursView, isArray: true })
  byClass: ClassHoursView[];

  @Shown({ type: () => RoleHoursView, isArray: true })
  byRole: RoleHoursView[];

  @Shown({ type: () => RecentView })
  last90Days: RecentView;
}

const hours = (sum: string): string => `coalesce(${sum}, 0)::int`;
const recent = (column: string): string =>
  hours(`sum(${column}) FILTER (WHERE e.flown_on BETWEEN $3 AND $4)`);

/** One pass over the log: by class, by role, and all in all. `sets` tells which of the three a row is. */
const SQL = `
  SELECT grouping(e.category, e.class, e.role) AS sets, e.category, e.class, e.role,
         count(*)::int AS flights, ${hours('sum(e.total_tenths)')} AS total, ${hours('sum(e.night_tenths)')} AS night,
         ${hours('sum(e.dual_given_tenths)')} AS "dualGiven",
         count(*) FILTER (WHERE e.flown_on BETWEEN $3 AND $4)::int AS "recentFlights",
         ${recent('e.total_tenths')} AS "recentTotal", ${recent('e.night_tenths')} AS "recentNight",
         ${recent('e.takeoffs')} AS takeoffs, ${recent('e.landings')} AS landings,
         ${recent('e.full_stop_landings')} AS "fullStopLandings", ${recent('e.night_takeoffs')} AS "nightTakeoffs",
         ${recent('e.night_full_stop_landings')} AS "nightFullStopLandings",
         (SELECT ${hours('sum(d.total_tenths)')} FROM log_entries d WHERE d.club_id = $1 AND d.member_id = $2
             AND d.voided_at IS NULL AND d.device IS NOT NULL) AS device
    FROM log_entries e
   WHERE e.club_id = $1 AND e.member_id = $2 AND e.voided_at IS NULL AND e.device IS NULL
   GROUP BY GROUPING SETS ((e.category, e.class), (e.role), ())
   ORDER BY sets, e.category, e.class, e.role`;

interface Row {
  sets: number;
  category: AircraftCategory;
  class: AircraftClass;
  role: LogFact['role'];
  [sum: string]: unknown;
}
const BY_CLASS = 0b001;
const BY_ROLE = 0b110;
const ALL = 0b111;

/** A member's sums. The 90 days are the preceding 90 and today (14 CFR 61.57 counts the same way). */
export async function totalsOf(
  em: EntityManager,
  clubId: string,
  memberId: string,
  now: Instant,
): Promise<LogTotalsView> {
  const through = await clubToday(em, clubId, now);
  const from = addDays(through, -90);
  const rows = await em.query<Row[]>(SQL, [clubId, memberId, from, through]);
  const of = (sets: number): Row[] => rows.filter((row) => row.sets === sets);
  const all = of(ALL)[0]!;
  const n = (name: string): number => Number(all[name]);
  return {
    ...hoursView(all),
    dualGivenH: hoursOf(n('dualGiven')),
    deviceH: hoursOf(n('device')),
    byClass: of(BY_CLASS).map((row) => ({ category: row.category, class: row.class, ...hoursView(row) })),
    byRole: of(BY_ROLE).map((row) => ({ role: row.role, ...hoursView(row) })),
    last90Days: {
      ...{
        from,
        through,
        flights: n('recentFlights'),
        totalH: hoursOf(n('recentTotal')),
        nightH: hoursOf(n('recentNight')),
      },
      ...{ takeoffs: n('takeoffs'), landings: n('landings'), fullStopLandings: n('fullStopLandings') },
      ...{ nightTakeoffs: n('nightTakeoffs'), nightFullStopLandings: n('nightFullStopLandings') },
    },
  };
}

const hoursView = ({ flights, total, night }: Row): HoursView => ({
  flights: Number(flights),
  totalH: hoursOf(Number(total)),
  nightH: hoursOf(Number(night)),
});
