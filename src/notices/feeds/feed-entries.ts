import type { EntityManager } from 'typeorm';
import { instant } from '../../platform/database/instant.js';
import { hasAnyRole, type Role } from '../../accounts/roles.js';
import type { Instant } from '../../rules/index.js';
import type { CalendarEntry } from './calendar-text.js';
import type { FEEDS } from './feeds.dto.js';

/** Whose feed it is, and of what. */
export interface FeedOf {
  memberId: string;
  roles: readonly Role[];
  shows: (typeof FEEDS)[number];
  aircraftId: string | null;
}

interface Row {
  id: string;
  kind: 'flight' | 'maintenance' | 'club';
  registration: string;
  makeModel: string;
  departs: Instant;
  arrives: Instant;
  cancelled: boolean;
  sequence: number;
  changedAt: Instant;
  note: string;
  own: boolean;
  people: { id: string; name: string; role: string }[];
}

/** A calendar of some months back and all that is to come. */
const BACK = "interval '60 days'";
const MOST_ENTRIES = 5000;
/** Who reads names of other people's flights out of a calendar that lies with whoever keeps it. */
const NAMED_TO: Role[] = ['instructor', 'safety-officer', 'maintenance-coordinator', 'administrator'];

/** The bookings of a feed. */
export async function feedEntries(em: EntityManager, of: FeedOf, now: Instant): Promise<CalendarEntry[]> {
  const rows: Row[] = await em.query(
    `SELECT b.id, b.kind, a.registration, k.make_model AS "makeModel", ${instant('lower(b.during)')} AS departs,
        ${instant('upper(b.during)')} AS arrives, b.status = 'cancelled' AS cancelled, b.row_version - 1 AS sequence,
        ${instant('greatest(b.recorded_at, b.cancelled_at)')} AS "changedAt", b.note,
        b.member_id = $2 OR EXISTS (SELECT 1 FROM booking_people p
          WHERE p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = $2) AS own,
        (SELECT coalesce(jsonb_agg(jsonb_build_object('id', m.id, 'name', m.name, 'role', p.role) ORDER BY p.role, m.id), '[]')
          FROM booking_people p JOIN members m ON m.club_id = p.club_id AND m.id = p.member_id
          WHERE p.club_id = b.club_id AND p.booking_id = b.id) AS people
       FROM bookings b
       JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
       JOIN aircraft_models k ON k.club_id = a.club_id AND k.id = a.model_id
      WHERE b.club_id = bellcrank_club() AND upper(b.during) > $1::timestamptz - ${BACK}
        AND ($3::uuid IS NULL OR b.aircraft_id = $3)
        AND (NOT $4::boolean OR b.member_id = $2 OR EXISTS (SELECT 1 FROM booking_people p
          WHERE p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = $2))
      ORDER BY lower(b.during), b.id LIMIT ${MOST_ENTRIES}`,
    [now, of.memberId, of.aircraftId, of.shows === 'own'],
  );
  const named = hasAnyRole(of, ...NAMED_TO);
  return rows.map((row) => ({
    ...{ id: row.id, departs: row.departs, arrives: row.arrives, cancelled: row.cancelled },
    ...{ sequence: row.sequence, changedAt: row.changedAt },
    ...wordsOf(row, of, named),
  }));
}

const BLOCKS = { maintenance: 'in the shop', club: 'kept by the club' };

function wordsOf(row: Row, of: FeedOf, named: boolean): Pick<CalendarEntry, 'summary' | 'description'> {
  const open = row.own || named;
  const others = row.people.filter(({ id }) => id !== of.memberId).map(({ name }) => name);
  const who = open && others.length > 0 ? `, ${row.own ? 'with ' : ''}${others.join(' and ')}` : '';
  const what = row.kind === 'flight' ? (row.own ? who : who || ', booked') : `, ${BLOCKS[row.kind]}`;
  return {
    summary: `${row.registration}${what}`,
    description: [row.makeModel, open ? row.note : ''].filter((text) => text !== '').join('\n'),
  };
}
