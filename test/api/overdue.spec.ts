/**
 * Aircraft that are not back. Thirty minutes after the estimated arrival is when a search begins for whoever has not closed a
 * VFR flight plan (Aeronautical Information Manual, chapter 5, section 1; from memory); who is told of the club, and that it is
 * no flight following, is common practice, no source.
 */
import { lookForOverdue } from '../../src/bookings/overdue/look-for-overdue.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { NOW, startApi, type Api, type Session } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { bringBack, flownBy, goOut } from './flight-scene.js';

describe('overdue', () => {
  let api: Api;
  let ready: ReadyClub;
  let officer: Session;
  let named: Session;
  beforeAll(async () => {
    api = await startApi();
  });
  beforeEach(async () => {
    api.clock.set(NOW);
    ready = await readyClub(api);
    officer = await ready.club.signInAs('safety-officer', { name: 'Olive Officer' });
    named = await ready.club.signInAs('member', { name: 'Nat Named' });
  });
  afterAll(() => api.stop());

  const look = (): Promise<number> =>
    api.app
      .get(TenantDb)
      .run(ready.club.clubId, (em) => lookForOverdue(em, ready.club.clubId, api.clock.now()));
  /** Due back at 18:00. */
  const at = (clock: string): Promise<number> => {
    api.clock.set(`2026-03-10T${clock}Z`);
    return look();
  };
  const toldTo = async (who: Session): Promise<string[]> =>
    (await who.get('/overdue').expect(200)).body.items.map(({ stage }: { stage: string }) => stage);

  test('crew, named people and officers are told at their times, each once', async () => {
    await officer
      .put('/overdue/contacts', { contacts: [{ memberId: named.memberId, afterMinutes: 45 }] })
      .expect(200);
    await goOut(api, ready);
    expect(await at('18:00:00')).toBe(0);
    expect(await at('18:29:59')).toBe(0);
    expect(await at('18:30:00')).toBe(1);
    expect(await toldTo(ready.member)).toEqual(['crew']);
    expect(await at('18:44:59')).toBe(0);
    expect(await at('18:45:00')).toBe(1);
    expect(await toldTo(named)).toEqual(['named']);
    expect(await toldTo(officer)).toEqual([]);
    expect(await at('19:00:00')).toBe(1);
    expect(await toldTo(officer)).toEqual(['officers']);
    expect(await at('23:00:00')).toBe(0);
    const { body } = await officer.get('/overdue').expect(200);
    expect(body.items[0]).toMatchObject({ registration: 'NX101B', memberName: 'Robin Member', out: true });
    expect(body.caution).toMatch(/no flight following/);
    // And by a notice that goes out in quiet hours too.
    for (const who of [ready.member, named, officer]) {
      const { items } = (await who.get('/notices').expect(200)).body as {
        items: { kind: string; items: { says: string[] }[] }[];
      };
      expect(items.filter(({ kind }) => kind === 'overdue')).toHaveLength(1);
      expect(JSON.stringify(items)).toMatch(/no flight following/);
    }
  });

  test('a service that was down tells everybody at once; two that look at once tell once', async () => {
    await goOut(api, ready);
    api.clock.set('2026-03-10T20:00:00Z');
    const told = await Promise.all([look(), look(), look()]);
    expect(told.reduce((sum, one) => sum + one, 0)).toBe(2);
  });

  test('who is back in time, or late and then back, is not told of again', async () => {
    const id = await goOut(api, ready);
    await at('18:30:00');
    await bringBack(ready.member, id, flownBy(ready.member.memberId)).expect(201);
    expect(await at('19:30:00')).toBe(0);
    const { body } = await ready.member.get('/overdue').expect(200);
    expect(body.items).toEqual([expect.objectContaining({ out: false, stage: 'crew' })]);
    await ready.member.post(`/overdue/${body.items[0].id}/seen`).expect(204);
    expect(await toldTo(ready.member)).toEqual([]);
    await officer.post(`/overdue/${body.items[0].id}/seen`).expect(404);
  });

  test("the club's own times count, and new names hear of aircraft that are out already", async () => {
    await api.sql(
      `UPDATE policy_values SET value = '5' WHERE club_id = $1 AND parameter_id = 'club.overdue.officers-minutes'`,
      [ready.club.clubId],
    );
    await goOut(api, ready);
    expect(await at('18:05:00')).toBe(1);
    expect(await toldTo(officer)).toEqual(['officers']);
    await officer
      .put('/overdue/contacts', { contacts: [{ memberId: named.memberId, afterMinutes: 0 }] })
      .expect(200);
    expect(await look()).toBe(1);
    expect(await toldTo(named)).toEqual(['named']);
  });

  test('names are for officers to lay down', async () => {
    const contacts = [{ memberId: named.memberId, afterMinutes: 45 }];
    await named.put('/overdue/contacts', { contacts }).expect(403);
    const { body } = await officer
      .put('/overdue/contacts', { contacts: [...contacts, ...contacts] })
      .expect(422);
    expect(body.errors[0].field).toBe('contacts[1].memberId');
    await officer.put('/overdue/contacts', { contacts }).expect(200);
    expect((await named.get('/overdue/contacts').expect(200)).body.items).toEqual([
      { ...contacts[0], name: 'Nat Named' },
    ]);
  });
});
