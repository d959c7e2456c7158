import type { EntityManager } from 'typeorm';
import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { instant, object } from '../../decisions/gather/sql.js';

/** An entry of a member's, and what was offered for it last. */
export interface StandbyRow {
  id: string;
  memberId: string;
  aircraftId: string | null;
  registration: string | null;
  departs: string;
  arrives: string;
  request: FlightRequestDto;
  note: string;
  state: 'waiting' | 'booked' | 'withdrawn' | 'over';
  /** Who waits longer for time it shares, in an aircraft it would take. */
  ahead: number;
  offer: OfferRow | null;
  rowVersion: number;
}

/** An offer of one slot to one member. */
export interface OfferRow {
  id: string;
  aircraftId: string;
  registration: string;
  state: 'open' | 'accepted' | 'declined' | 'expired' | 'withdrawn';
  holds: boolean;
  decisionId: string;
  bookingId: string | null;
  madeAt: string;
  expiresAt: string;
}

const OFFER = `(SELECT ${object({
  id: 'o.id',
  aircraftId: 'o.aircraft_id',
  registration: 'oa.registration',
  state: 'o.state',
  holds: 'o.holds',
  decisionId: 'o.decision_id',
  bookingId: 'o.booking_id',
  madeAt: instant('o.made_at'),
  expiresAt: instant('o.expires_at'),
})} FROM standby_offers o JOIN aircraft oa ON oa.club_id = o.club_id AND oa.id = o.aircraft_id
  WHERE o.club_id = e.club_id AND o.entry_id = e.id ORDER BY (o.state IN ('open', 'accepted')) DESC, o.made_at DESC, o.id DESC LIMIT 1)`;

const SELECT = `SELECT e.id, e.member_id AS "memberId", e.aircraft_id AS "aircraftId", a.registration,
    ${instant('lower(e.during)')} AS departs, ${instant('upper(e.during)')} AS arrives, e.request, e.note, e.state,
    (SELECT count(*)::int FROM standby_entries x WHERE x.club_id = e.club_id AND x.state = 'waiting' AND x.during && e.during
        AND (x.aircraft_id = e.aircraft_id OR x.aircraft_id IS NULL OR e.aircraft_id IS NULL)
        AND (x.placed_at, x.id) < (e.placed_at, e.id)) AS ahead,
    ${OFFER} AS offer, e.row_version AS "rowVersion"
  FROM standby_entries e LEFT JOIN aircraft a ON a.club_id = e.club_id AND a.id = e.aircraft_id
  WHERE e.club_id = bellcrank_club()`;

/** A member's entries that are still to come, in order of id; those taken back are left out. */
export const listStandby = (
  em: EntityManager,
  of: { memberId: string; now: string; afterId: string | null; limit: number },
): Promise<StandbyRow[]> =>
  em.query(
    `${SELECT} AND e.member_id = $1 AND upper(e.during) > $2::timestamptz AND e.state <> 'withdrawn'
       AND ($3::uuid IS NULL OR e.id > $3) ORDER BY e.id LIMIT $4`,
    [of.memberId, of.now, of.afterId, of.limit],
  );

/** One entry of a member's. */
export async function findStandby(
  em: EntityManager,
  of: { id: string; memberId: string },
): Promise<StandbyRow | null> {
  const rows: StandbyRow[] = await em.query(`${SELECT} AND e.id = $1 AND e.member_id = $2`, [
    of.id,
    of.memberId,
  ]);
  return rows[0] ?? null;
}

/** Puts somebody on standby; the database refuses a second entry for shared time. */
export async function insertStandby(
  em: EntityManager,
  entry: Pick<StandbyRow, 'id' | 'memberId' | 'aircraftId' | 'departs' | 'arrives' | 'note'> & {
    request: object;
    now: string;
  },
): Promise<void> {
  await em.query(
    `INSERT INTO standby_entries (club_id, id, member_id, aircraft_id, during, request, note, placed_at)
     VALUES (bellcrank_club(), $1, $2, $3, tstzrange($4, $5, '[)'), $6, $7, $8)`,
    [
      ...[entry.id, entry.memberId, entry.aircraftId, entry.departs, entry.arrives],
      ...[JSON.stringify(entry.request), entry.note, entry.now],
    ],
  );
}

/** Another state of an entry. */
export async function setStandby(em: EntityManager, id: string, state: StandbyRow['state']): Promise<void> {
  await em.query('UPDATE standby_entries SET state = $2 WHERE club_id = bellcrank_club() AND id = $1', [
    id,
    state,
  ]);
}

/** What an answer to an offer needs of it. */
export interface OfferToAnswer {
  id: string;
  entryId: string;
  aircraftId: string;
  state: OfferRow['state'];
  expiresAt: string;
  bookingId: string | null;
  request: FlightRequestDto;
  note: string;
}

/** An offer to a member; with `lock` nobody else answers or ends it until the transaction is over. */
export async function findOffer(
  em: EntityManager,
  of: { id: string; memberId: string; lock: boolean },
): Promise<OfferToAnswer | null> {
  const rows: OfferToAnswer[] = await em.query(
    `SELECT o.id, o.entry_id AS "entryId", o.aircraft_id AS "aircraftId", o.state, ${instant('o.expires_at')} AS "expiresAt",
        o.booking_id AS "bookingId", e.request, e.note
       FROM standby_offers o JOIN standby_entries e ON e.club_id = o.club_id AND e.id = o.entry_id
      WHERE o.club_id = bellcrank_club() AND o.id = $1 AND o.member_id = $2 ${of.lock ? 'FOR UPDATE OF o' : ''}`,
    [of.id, of.memberId],
  );
  return rows[0] ?? null;
}

/** Keeps others from changing an entry, and from ending its offers, until the transaction is over. */
export async function lockStandby(em: EntityManager, id: string): Promise<void> {
  await em.query('SELECT 1 FROM standby_entries WHERE club_id = bellcrank_club() AND id = $1 FOR UPDATE', [
    id,
  ]);
}

/**
 * Answers or ends an open offer, for who holds its lock.
 * @throws Error when it is not open: an answer that is told must be the one that stands
 */
export async function answerOffer(
  em: EntityManager,
  of: { id: string; state: OfferRow['state']; bookingId?: string; now: string },
): Promise<void> {
  const [answered]: [{ id: string }[], number] = await em.query(
    `UPDATE standby_offers SET state = $2, booking_id = $3, answered_at = $4
      WHERE club_id = bellcrank_club() AND id = $1 AND state = 'open' RETURNING id`,
    [of.id, of.state, of.bookingId ?? null, of.now],
  );
  if (answered.length !== 1) throw new Error(`the offer ${of.id} is not open, and was to be ${of.state}`);
}
