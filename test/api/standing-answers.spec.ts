/** Standing answers: the same as judging each booking by itself, in as many statements however many bookings there are. */
import { TenantDb } from '../../src/platform/database/tenant.js';
import { gatherSheets } from '../../src/decisions/gather/sheets.js';
import { standingAnswers } from '../../src/bookings/standing-answers.js';
import type { FlightRequestDto } from '../../src/decisions/flight-request.dto.js';
import { newId } from '../../src/platform/ids.js';
import { blocks, judge } from '../../src/rules/index.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';

describe('standing answers', () => {
  let api: Api;
  let ready: ReadyClub;
  let aircraftIds: string[];

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
    aircraftIds = [ready.aircraftId, await ready.addAircraft('NX102B')];
  }, 60_000);
  afterAll(() => api.stop());

  const inClub = <T>(work: Parameters<TenantDb['run']>[1]): Promise<T> =>
    api.app.get(TenantDb).run(ready.club.clubId, work, { readOnly: true }) as Promise<T>;
  const book = async (who: ReadyClub['member'], day: number, more: object = {}): Promise<void> => {
    const date = `2026-03-${day}`;
    await who
      .post('/bookings', {
        ...{ departs: `${date}T18:00:00Z`, arrives: `${date}T20:00:00Z`, purpose: 'solo', personsOnBoard: 1 },
        ...{ aircraftId: aircraftIds[0], ...more },
      })
      .set('Idempotency-Key', newId())
      .expect(201);
  };
  const asked = async (): Promise<{ answers: unknown; statements: number }> => {
    const counting = api.countQueries();
    const answers = await inClub((em) => standingAnswers(em, { aircraftIds, now: NOW }));
    return { answers, statements: counting.stop() };
  };

  it('are those of each booking alone, and take no more statements for more bookings', async () => {
    const other = await ready.club.signInAs('member', { name: 'Olive Other' });
    await ready.makePilot(other.memberId);
    await book(ready.member, 12);
    const few = await asked();
    await book(other, 13);
    await book(other, 14, { aircraftId: aircraftIds[1], purpose: 'passengers', personsOnBoard: 2 });
    await book(ready.member, 15, { aircraftId: aircraftIds[1] });
    // Things that stop some of them: a squawk of one aircraft, an account of one member.
    await insertInto(api.sql, ready.club.clubId)('squawks', {
      ...{ id: newId(), aircraft_id: aircraftIds[1], title: 'Fuel leak', state: 'grounding' },
      ...{ reported_at: '2026-03-10T10:00:00Z', reported_by: other.memberId },
    });
    await api.sql("UPDATE members SET standing = 'suspended', standing_since = '2026-03-01' WHERE id = $1", [
      other.memberId,
    ]);
    const many = await asked();
    expect(many.statements).toBe(few.statements);
    const bookings = await api.sql<{
      id: string;
      member_id: string;
      aircraft_id: string;
      request: FlightRequestDto;
    }>('SELECT id, member_id, aircraft_id, request FROM bookings WHERE club_id = $1 ORDER BY lower(during)', [
      ready.club.clubId,
    ]);
    const alone = [];
    for (const { id, member_id: memberId, aircraft_id: aircraftId, request } of bookings) {
      const { answer, findings } = await inClub<ReturnType<typeof judge>>(async (em) => {
        const question = { request, memberId, aircraftIds: [aircraftId], knownAt: NOW, exceptBookingId: id };
        const { sheets, policy } = await gatherSheets(em, question);
        return judge(sheets[0]!, policy);
      });
      const because = findings.filter(blocks).map(({ rule, title, says }) => ({ rule, title, says }));
      alone.push({ bookingId: id, answer, because });
    }
    expect(many.answers).toMatchObject(alone);
    expect(alone.map(({ because }) => because.length > 0)).toEqual([false, true, true, true]);
  });

  it('do not ask again how a booking is made: one that stands was made in its time', async () => {
    const was = await asked();
    // From now on bookings are taken one day ahead; these are two and more days away.
    await api.sql(
      "UPDATE policy_values SET value = '1' WHERE club_id = $1 AND parameter_id = 'club.booking-lead.max-days'",
      [ready.club.clubId],
    );
    const { body } = await ready.member
      .post('/decisions', {
        departs: '2026-03-15T18:00:00Z',
        arrives: '2026-03-15T20:00:00Z',
        purpose: 'solo',
        personsOnBoard: 1,
      })
      .expect(200);
    const ofRule = body.decisions[0].findings.find(
      ({ rule }: { rule: string }) => rule === 'club.booking_lead',
    );
    expect(ofRule.status).toBe('short');
    expect((await asked()).answers).toEqual(was.answers);
  });
});
