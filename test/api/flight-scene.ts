/** A flight of today, booked and soon to be handed out, for the specs of dispatch and return. */
import { newId } from '../../src/platform/ids.js';
import type { Api, Session } from '../support/api.js';
import { insertInto, type ReadyClub } from '../support/ready-club.js';

/** An hour after the API's `now`. */
export const TODAY = { departs: '2026-03-10T16:00:00Z', arrives: '2026-03-10T18:00:00Z' };

export type Body = Record<string, unknown>;

/** Books a flight of today; the pilot's own unless said otherwise. @returns its id */
export async function bookToday(
  ready: ReadyClub,
  more: Body = {},
  who: Session = ready.member,
): Promise<string> {
  const body = { aircraftId: ready.aircraftId, ...TODAY, purpose: 'solo', personsOnBoard: 1, ...more };
  const answer = await who.post('/bookings', body).set('Idempotency-Key', newId());
  if (answer.status !== 201) throw new Error(`not booked: ${JSON.stringify(answer.body)}`);
  return answer.body.id as string;
}

/** Everything as the sheet shows it, each thing accepted. */
export async function readyToGo(who: Session, bookingId: string, more: Body = {}): Promise<Body> {
  const { aircraftId, memberId } = more;
  const at = {
    personsOnBoard: 1,
    fuelUsGal: 30,
    ...(aircraftId ? { aircraftId } : {}),
    ...(memberId ? { memberId } : {}),
  };
  const { body: sheet } = await who.post(`/flights/${bookingId}/dispatch/sheet`, at).expect(200);
  return {
    ...at,
    oilQt: 6.5,
    meters: sheet.meters.map(({ kind, shownH }: Body) => ({ kind, shownH })),
    squawksSeen: sheet.squawks.map(({ id }: Body) => id),
    conditionsAccepted: sheet.decision.conditions,
    selfAssessed: true,
    ...more,
  };
}

export const dispatch = (who: Session, bookingId: string, body: Body, key: string = newId()) =>
  who.post(`/flights/${bookingId}/dispatch`, body).set('Idempotency-Key', key);

/** Books and hands out. @returns the id of the booking */
export async function goOut(
  api: Api,
  ready: ReadyClub,
  more: Body = {},
  who = ready.member,
): Promise<string> {
  const id = await bookToday(ready, more, who);
  api.clock.set('2026-03-10T15:50:00Z');
  const { personsOnBoard = 1 } = more;
  await dispatch(who, id, await readyToGo(who, id, { personsOnBoard })).expect(201);
  return id;
}

/** An hour and a half at the field with three landings, by the pilot alone. */
export const flownBy = (memberId: string, more: Body = {}): Body => ({
  ...{ departedAt: '2026-03-10T16:05:00Z', arrivedAt: '2026-03-10T17:35:00Z' },
  ...{ fromAirfield: 'XQHB', toAirfield: 'XQHB', fuelUsGal: 18 },
  meters: [{ kind: 'tachometer', shownH: 1051.3 }],
  entries: [entryOf(memberId)],
  ...more,
});

export const entryOf = (memberId: string, more: Body = {}): Body => ({
  ...{ memberId, role: 'pilot-in-command', soleManipulator: true },
  ...{ totalH: 1.5, nightH: 0, crossCountryH: 0, takeoffs: 3, landings: 3, fullStopLandings: 1 },
  ...{ nightTakeoffs: 0, nightFullStopLandings: 0 },
  ...more,
});

export const bringBack = (who: Session, bookingId: string, body: Body, key: string = newId()) =>
  who.post(`/flights/${bookingId}/return`, body).set('Idempotency-Key', key);

/** An instructor of the club who may teach in the model. */
export async function instructorOf(api: Api, ready: ReadyClub, name = 'Ines Structor'): Promise<Session> {
  const instructor = await ready.club.signInAs('instructor', { name });
  await ready.makePilot(instructor.memberId);
  await insertInto(api.sql, ready.club.clubId)('instructor_certificates', {
    ...{ id: newId(), member_id: instructor.memberId, issued_on: '2020-05-01' },
    ...{ ratings: ['airplane-single-engine'], recent_experience_on: '2025-06-01' },
    ...{ verified_by: instructor.memberId, verified_at: '2026-01-02T00:00:00Z' },
  });
  await api.sql("UPDATE certificates SET level = 'commercial' WHERE member_id = $1", [instructor.memberId]);
  return instructor;
}

/** What came of flights: counts of what a return writes in the club. */
export async function written(api: Api, clubId: string): Promise<Record<string, number>> {
  const [row] = await api.sql<Record<string, number>>(
    `SELECT (SELECT count(*)::int FROM returns WHERE club_id = $1) AS returns,
            (SELECT count(*)::int FROM dispatches WHERE club_id = $1) AS dispatches,
            (SELECT count(*)::int FROM log_entries WHERE club_id = $1 AND booking_id IS NOT NULL) AS entries,
            (SELECT count(*)::int FROM meter_readings WHERE club_id = $1 AND note = 'After the flight') AS readings,
            (SELECT count(*)::int FROM squawks WHERE club_id = $1) AS squawks`,
    [clubId],
  );
  return row!;
}
