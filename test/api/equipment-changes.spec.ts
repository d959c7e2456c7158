/** A change of equipment over HTTP: previewed, made, seen by decisions as of either side of it, and taken back. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { problemOf } from './fleet-scene.js';

interface Result {
  changeId: string | null;
  preview: string;
  weight: Record<'before' | 'after', Record<string, number | null>>;
  lost: string[];
  kinds: {
    kind: string;
    before: { verdict: string } | null;
    after: { verdict: string; says: string[] } | null;
  }[];
  gained: string[];
  itemsEnded: { title: string }[];
  itemsBegun: { title: string }[];
  members: { memberName: string; exempt: boolean }[];
  bookingsJudged: number;
  bookings: { bookingId: string; before: string; after: string; because: { rule: string; says: string }[] }[];
}

const FLIGHT = {
  ...{ departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T20:00:00Z' },
  ...{ purpose: 'passengers', personsOnBoard: 2, flightRules: 'VFR' },
};

describe('equipment changes', () => {
  let api: Api;
  let ready: ReadyClub;
  let coordinator: Session;
  let pumpId: string;

  beforeAll(async () => {
    api = await startApi();
  }, 60_000);
  beforeEach(async () => {
    ready = await readyClub(api);
    coordinator = await ready.club.signInAs('maintenance-coordinator');
    const row = insertInto(api.sql, ready.club.clubId);
    pumpId = newId();
    await row('equipment', {
      ...{ id: pumpId, aircraft_id: ready.aircraftId, kind: 'air-pump', name: 'Air pump' },
      ...{ installed_on: '2015-05-01', weight_lb: 2.5, arm_in: 10 },
    });
    await row('airworthiness_items', {
      ...{
        id: newId(),
        aircraft_id: ready.aircraftId,
        kind: 'club',
        title: 'Replace the air pump',
        scope: 'advice',
      },
      ...{ interval_tenths: 5000, equipment_id: pumpId },
    });
    await row('weighings', {
      ...{ id: newId(), aircraft_id: ready.aircraftId, effective_on: '2020-01-01', empty_weight_lb: 1450 },
      ...{ empty_arm_in: 40, source: 'weighing' },
    });
  });
  afterAll(() => api.stop());

  const path = (below = '') => `/aircraft/${ready.aircraftId}/equipment-changes${below}`;
  const change = (more: object = {}) => ({
    ...{ title: 'Electronic instruments for the air-driven ones', doneOn: '2026-03-09' },
    ...{ statement: 'Installed per the alteration record', signedBy: 'Mo Wrench, mechanic 0042' },
    documents: ['Alteration record of 9 March 2026'],
    removes: [{ equipmentId: pumpId }],
    installs: [
      {
        ...{
          kind: 'attitude-indicator',
          name: 'Electronic attitude display',
          basis: 'stc',
          document: 'STC 0001',
        },
        ...{ satisfies: ['heading-indicator', 'slip-skid'], weightLb: 3.5, armIn: 25 },
        items: [{ kind: 'club', title: 'Backup battery check', scope: 'ifr', calendarMonths: 12 }],
      },
    ],
    difference: { title: 'Electronic attitude display', equipmentGroup: 'electronic panel' },
    ...more,
  });
  const preview = async (body: object): Promise<Result> =>
    (await coordinator.post(path('/preview'), body).expect(200)).body as Result;
  const make = async (body: object): Promise<Result> =>
    (await coordinator.post(path(), body).expect(201)).body as Result;
  const book = async (): Promise<string> =>
    (
      await ready.member
        .post('/bookings', { ...FLIGHT, aircraftId: ready.aircraftId })
        .set('Idempotency-Key', newId())
        .expect(201)
    ).body.id as string;

  it('says which kinds of flight are lost and gained', async () => {
    const { body: pieces } = await coordinator
      .get(`/aircraft/${ready.aircraftId}/equipment?limit=100`)
      .expect(200);
    const lights = pieces.items.find(({ kind }: { kind: string }) => kind === 'position-lights');
    const out = change({
      ...{ removes: [{ equipmentId: lights.id, negligible: true, weightLb: 0.2, armIn: 40 }], installs: [] },
      difference: null,
    });
    const lost = await preview(out);
    // 14 CFR 91.205(c)(2): position lights at night.
    expect(lost.kinds.map(({ kind, before, after }) => [kind, before?.verdict, after?.verdict])).toEqual([
      ['day-vfr', 'yes', 'yes'],
      ['night-vfr', 'yes', 'no'],
      ['ifr', 'yes', 'yes'],
      ['transponder-airspace', 'yes', 'yes'],
    ]);
    expect(lost.kinds[1]!.after!.says.join()).toContain('position lights');
    await make(out);
    const back = change({
      removes: [],
      installs: [
        { kind: 'position-lights', name: 'New lights', basis: 'alteration-record', weightLb: 0.3, armIn: 40 },
      ],
      difference: null,
    });
    const gained = await preview(back);
    expect(gained.kinds[1]).toMatchObject({ before: { verdict: 'no' }, after: { verdict: 'yes', says: [] } });
  });

  it('shows beforehand what it does, and then does just that', async () => {
    const bookingId = await book();
    const shown = await preview(change());
    // 1450 lb at 40 in, less 2.5 lb at 10 in, plus 3.5 lb at 25 in: 58062.5 lb-in over 1451 lb.
    expect(shown.weight.before).toMatchObject({ emptyWeightLb: 1450, emptyArmIn: 40, usefulLoadLb: 950 });
    expect(shown.weight.after).toMatchObject({ emptyWeightLb: 1451, emptyArmIn: 40.02, usefulLoadLb: 949 });
    expect(shown).toMatchObject({
      kinds: [
        { kind: 'day-vfr', before: { verdict: 'yes' }, after: { verdict: 'yes' } },
        ...[{ kind: 'night-vfr' }, { kind: 'ifr' }, { kind: 'transponder-airspace' }],
      ],
      ...{ changeId: null, lost: ['air-pump'], itemsEnded: [{ title: 'Replace the air pump' }] },
      itemsBegun: [{ title: 'Backup battery check' }],
      members: [{ exempt: false }],
      bookingsJudged: 1,
      bookings: [{ bookingId, after: 'dual-only', because: [{ rule: 'club.differences_checkout' }] }],
    });
    expect((await coordinator.get(path()).expect(200)).body.items).toEqual([]);
    const made = await make(change({ preview: shown.preview }));
    expect({ ...made, changeId: null }).toEqual({
      ...shown,
      itemsEnded: shown.itemsEnded,
    });
    const { body: list } = await coordinator.get(path()).expect(200);
    expect(list.items).toMatchObject([
      { id: made.changeId, removed: ['Air pump'], installed: ['Electronic attitude display'] },
    ]);
    const { body: aircraft } = await coordinator.get(`/aircraft/${ready.aircraftId}`).expect(200);
    expect(aircraft.emptyWeightLb).toBe(1451);
  });

  it('is refused when it would do something else than its preview showed', async () => {
    const shown = await preview(change());
    await book();
    const refused = await coordinator.post(path(), change({ preview: shown.preview })).expect(409);
    expect(problemOf(refused).code).toBe('preview-stale');
    expect((await coordinator.get(path()).expect(200)).body.items).toEqual([]);
  });

  it('lets members off who were shown the same equipment elsewhere, where the club says so', async () => {
    const row = insertInto(api.sql, ready.club.clubId);
    const other = await ready.addAircraft('XB-777');
    await row('differences', {
      ...{
        id: newId(),
        aircraft_id: other,
        title: 'Panel',
        since: '2025-06-01',
        equipment_group: 'Electronic Panel',
      },
    });
    await row('checkouts', {
      ...{ id: newId(), member_id: ready.member.memberId, kind: 'differences', aircraft_id: other },
      ...{ signed_on: '2025-07-01', signed_by: coordinator.memberId },
    });
    expect((await preview(change())).members).toMatchObject([{ exempt: false }]);
    await row('policy_values', {
      ...{
        id: newId(),
        parameter_id: 'club.differences-checkout.elsewhere-counts',
        valid_from: '2026-01-01',
      },
      ...{ value: JSON.stringify(true), reference: 'Committee, January 2026' },
    });
    await book();
    const shown = await preview(change());
    expect(shown.members).toMatchObject([{ exempt: true }]);
    expect(shown.bookings).toEqual([]);
  });

  it('asks for the weight of each part, or scales', async () => {
    const without = change({ installs: [{ ...change().installs[0]!, weightLb: null, armIn: null }] });
    expect(problemOf(await coordinator.post(path('/preview'), without).expect(422))).toEqual({
      ...{ code: 'value-refused', field: 'installs[0].weightLb' },
    });
    const weighed = await preview({ ...without, weighing: { emptyWeightLb: 1460, emptyArmIn: 41 } });
    expect(weighed.weight.after).toMatchObject({ emptyWeightLb: 1460, emptyArmIn: 41, usefulLoadLb: 940 });
    const light = change({
      installs: [{ ...change().installs[0]!, weightLb: null, armIn: null, negligible: true }],
    });
    expect((await preview(light)).weight.after).toMatchObject({ emptyWeightLb: 1447.5 });
  });

  it.each([
    ['a piece of another aircraft', { removes: [{ equipmentId: newId() }] }, 'removes[0].equipmentId'],
    ['a day to come', { doneOn: '2026-03-11' }, 'doneOn'],
    ['nothing at all', { removes: [], installs: [] }, 'installs'],
    ['an item it does not have', { endsItems: [newId()] }, 'endsItems[0]'],
  ])('refuses %s', async (_what, more, field) => {
    expect(problemOf(await coordinator.post(path(), change(more)).expect(422))).toEqual({
      ...{ code: 'value-refused', field },
    });
  });

  it('is taken back while the aircraft has not flown, and everything is as it was', async () => {
    const bookingId = await book();
    const { changeId } = await make(change());
    const ask = async () =>
      (
        await ready.member
          .post('/decisions', {
            ...FLIGHT,
            aircraftIds: [ready.aircraftId],
            departs: '2026-03-13T18:00:00Z',
            arrives: '2026-03-13T20:00:00Z',
          })
          .expect(200)
      ).body.decisions[0].answer as string;
    expect(await ask()).toBe('dual-only');
    const back = await coordinator
      .post(path(`/${changeId}/take-back`), { reason: 'Entered for the wrong aircraft' })
      .expect(200);
    expect(back.body.takenBackReason).toBe('Entered for the wrong aircraft');
    expect(await ask()).toBe('yes-with-conditions');
    expect((await coordinator.get(`/aircraft/${ready.aircraftId}`)).body.emptyWeightLb).toBe(1450);
    // The same change can be made again: nothing of the first is left standing.
    const again = await preview(change());
    expect(again.weight.before).toMatchObject({ emptyWeightLb: 1450, emptyArmIn: 40 });
    expect(again.itemsEnded).toMatchObject([{ title: 'Replace the air pump' }]);
    expect(again.bookings).toMatchObject([{ bookingId }]);
    const twice = await coordinator
      .post(path(`/${changeId}/take-back`), { reason: 'Entered for the wrong aircraft' })
      .expect(409);
    expect(problemOf(twice).code).toBe('equipment-change-kept');
  });

  it('stays once the aircraft has flown with it', async () => {
    const { changeId } = await make(change());
    await insertInto(api.sql, ready.club.clubId)('log_entries', {
      ...{
        id: newId(),
        member_id: ready.member.memberId,
        aircraft_id: ready.aircraftId,
        model_id: ready.modelId,
      },
      ...{
        aircraft_words: 'Harrow Lark 160',
        category: 'airplane',
        class: 'single-engine-land',
        tailwheel: false,
      },
      ...{ departed_at: '2026-03-10T08:00:00Z', arrived_at: '2026-03-10T09:00:00Z', flown_on: '2026-03-10' },
      ...{ from_airfield: 'XQHB', to_airfield: 'XQHB', role: 'pilot-in-command', sole_manipulator: true },
      ...{ takeoffs: 1, landings: 1, full_stop_landings: 1, night_takeoffs: 0, night_full_stop_landings: 0 },
      total_tenths: 10,
    });
    const kept = await coordinator
      .post(path(`/${changeId}/take-back`), { reason: 'Entered for the wrong aircraft' })
      .expect(409);
    expect(problemOf(kept).code).toBe('equipment-change-kept');
    expect((kept.body as { detail: string }).detail).toContain('has flown since, on 2026-03-10');
  });

  it('records meters with it, and keeps hands off for others than the coordinator', async () => {
    const made = await make(change({ readings: [{ kind: 'tachometer', shownH: 1051.2 }] }));
    expect(made.changeId).not.toBeNull();
    const { body } = await coordinator.get(`/aircraft/${ready.aircraftId}/meters`).expect(200);
    expect(body.items).toMatchObject([{ kind: 'tachometer', shownH: 1051.2 }]);
    await ready.member.post(path(), change()).expect(403);
    await ready.member.get(path()).expect(200);
  });
});
