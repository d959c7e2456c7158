/** Many invented members in a club, their papers and flying spread over the months, some with a flight booked. */
import { newId } from '../../src/platform/ids.js';
import type { Api } from './api.js';
import { insertInto, tomorrow, type ReadyClub } from './ready-club.js';

const FIRST = ['Ada', 'Bruno', 'Cleo', 'Dov', 'Edda', 'Finn', 'Gwen', 'Hugo', 'Inga', 'Jory', 'Kaja', 'Levi', 'Mona', 'Nils', 'Orla']; // prettier-ignore
const LAST = ['Ashgrove', 'Birkett', 'Calloway', 'Dunmere', 'Eastlake', 'Farrow', 'Greaves', 'Hollin', 'Iverson', 'Jessop', 'Kestler', 'Lomax', 'Marden', 'Norbury', 'Oakes', 'Pell', 'Quarrie', 'Rooke', 'Stowe', 'Thrale']; // prettier-ignore

/** Adds so many members; every tenth has a flight booked two months ahead. The same numbers every time. */
export async function fillClub(api: Api, ready: ReadyClub, members: number): Promise<void> {
  const { club } = ready;
  const ids: string[] = [];
  for (let index = 0; index < members; index += 1) {
    const name = `${FIRST[index % FIRST.length]} ${LAST[Math.floor(index / FIRST.length) % LAST.length]}`;
    const { memberId } = await club.createMember('member', { name });
    await ready.makePilot(memberId);
    ids.push(memberId);
    const spread = [(index * 37) % 70, (index * 53) % 300, (index * 29) % 180];
    if (index % 3 !== 0) await practised(api, club.clubId, memberId, index);
    await api.sql(
      `UPDATE log_entries SET departed_at = departed_at - make_interval(days => $2), arrived_at = arrived_at - make_interval(days => $2),
         flown_on = flown_on - $2 WHERE member_id = $1`,
      [memberId, spread[0]],
    );
    await api.sql('UPDATE reviews SET reviewed_on = reviewed_on - 300 - $2::int WHERE member_id = $1', [
      memberId,
      spread[1],
    ]);
    await api.sql('UPDATE medicals SET exam_on = exam_on - 1400 - $2::int WHERE member_id = $1', [
      memberId,
      spread[2],
    ]);
  }
  const booked = await ready.member
    .post('/bookings', {
      ...{ ...tomorrow, aircraftId: ready.aircraftId, purpose: 'passengers', personsOnBoard: 2 },
    })
    .set('Idempotency-Key', newId())
    .expect(201);
  const [row] = await api.sql<{ request: object; decision_id: string }>(
    'SELECT request, decision_id FROM bookings WHERE id = $1',
    [(booked.body as { id: string }).id],
  );
  const insert = insertInto(api.sql, club.clubId);
  for (let index = 0; index < members; index += 10) {
    const day = String(1 + index / 10).padStart(2, '0');
    const times = { departs: `2026-05-${day}T18:00:00Z`, arrives: `2026-05-${day}T19:30:00Z` };
    await insert('bookings', {
      ...{ id: newId(), kind: 'flight', aircraft_id: ready.aircraftId, member_id: ids[index] },
      ...{
        during: `[${times.departs},${times.arrives})`,
        expected_tenths: 15,
        decision_id: row!.decision_id,
      },
      request: JSON.stringify({ ...row!.request, ...times }),
    });
  }
}

/** Two thirds of them wrote down some landings and a steep turn, so many days ago; some of it was outside the standard. */
async function practised(api: Api, clubId: string, memberId: string, index: number): Promise<void> {
  const row = insertInto(api.sql, clubId);
  const tasks = ['normal_landing', 'steep_turn', 'go_around', 'slow_flight'].slice(0, 1 + (index % 4));
  for (const [at, manoeuvre] of tasks.entries()) {
    const daysAgo = (index * 17 + at * 31) % 200;
    const flown = new Date(Date.parse('2026-03-09') - daysAgo * 86_400_000).toISOString().slice(0, 10);
    const within = (index + at) % 7 !== 0;
    await row('practice_records', {
      ...{ id: newId(), member_id: memberId, recorded_by: memberId, seen_by: 'self', flown_on: flown },
      ...{ manoeuvre, level: 'private', measured: '{}', within },
      ...{ crosswind_kt: index % 15, night: index % 5 === 0, runway_ft: 4200 },
      verdict: JSON.stringify({ status: 'judged', document: 'FAA-S-ACS-6C', known: 'seen', within }),
    });
  }
}
