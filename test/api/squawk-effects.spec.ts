/** What a squawk does to flights and bookings, and the way to a deferral, with the whole service. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import { problemOf } from './fleet-scene.js';

const STEPS = {
  ...{ deferredOn: '2026-03-10', deadlineOn: '2026-04-10', requiredByTypeDesign: false },
  ...{ requiredByEquipmentList: false, requiredByDirective: false, removedOrDeactivated: true },
  ...{ placarded: true, recorded: true, noHazardDeterminedBy: 'Mo Wrench, mechanic 0042' },
};

let api: Api;
let ready: ReadyClub;
let coordinator: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  coordinator = await ready.club.signInAs('maintenance-coordinator');
}, 60_000);
afterAll(() => api.stop());

let count = 10;
/** A squawk about a piece of an aircraft of its own. */
async function squawkOn(
  kind: string | null,
): Promise<{ at: string; aircraftId: string; equipmentId: string | null }> {
  const aircraftId = await ready.addAircraft(`NX2${(count += 1)}B`);
  const [piece] = await api.sql<{ id: string }>(
    'SELECT id FROM equipment WHERE aircraft_id = $1 AND kind = $2',
    [aircraftId, kind],
  );
  if (kind !== null && !piece) throw new Error(`no ${kind}`);
  const equipmentId = piece?.id ?? null;
  const body = { title: 'Dead', ...(equipmentId ? { equipmentId } : {}) };
  const squawk = await ready.member.post(`/aircraft/${aircraftId}/squawks`, body).expect(201);
  return { at: `/aircraft/${aircraftId}/squawks/${squawk.body.id}`, aircraftId, equipmentId };
}
const verdicts = (body: { kinds: { kind: string; now: { verdict: string }; then: { verdict: string } }[] }) =>
  Object.fromEntries(body.kinds.map(({ kind, now, then }) => [kind, [now.verdict, then.verdict]]));
const preview = (at: string, body: object) => coordinator.post(`${at}/effects`, body);

describe('the effect, as the rules say of a flight of each kind', () => {
  // Required by 14 CFR 91.205(b) by day, (c) at night, (d) under IFR; 91.215 in class B and C. From memory.
  it.each([
    ['position-lights', ['night-vfr']],
    ['attitude-indicator', ['ifr']],
    ['transponder', ['transponder-airspace']],
    ['airspeed-indicator', ['day-vfr', 'night-vfr', 'ifr', 'transponder-airspace']],
    // The sensitive altimeter beside it serves 91.205(b)(2) as well; the other way round IFR asks for that very one.
    ['altimeter', []],
    ['sensitive-altimeter', ['ifr']],
  ])('%s deferred stops %j and no other', async (kind, stopped) => {
    const { at } = await squawkOn(kind);
    const { body } = await preview(at, { step: 'defer', deferral: STEPS }).expect(200);
    const stops = body.kinds
      .filter((one: { then: { verdict: string } }) => one.then.verdict === 'no')
      .map((one: { kind: string }) => one.kind);
    expect(stops).toEqual(stopped);
    expect(body.caution).toContain('pilot in command');
    for (const one of body.kinds)
      if (one.then.verdict === 'no') expect(one.then.says[0].says).toMatch(/Dead|required/);
  });

  it('of grounding is no to every kind, and of a fix nothing at all', async () => {
    const { at } = await squawkOn(null);
    const grounded = await preview(at, { step: 'ground' }).expect(200);
    expect(Object.values(verdicts(grounded.body))).toEqual(Array(4).fill(['conditions', 'no']));
    const fixed = await preview(at, { step: 'fix' }).expect(200);
    expect(Object.values(verdicts(fixed.body))).toEqual(Array(4).fill(['conditions', 'none']));
    expect(Object.values(verdicts((await preview(at, { step: 'as-is' })).body))).toEqual(
      Array(4).fill(['conditions', 'conditions']),
    );
  });

  it('of one grounding squawk beside another is still told', async () => {
    const { at, aircraftId } = await squawkOn(null);
    const other = await ready.member
      .post(`/aircraft/${aircraftId}/squawks`, { title: 'Brake soft' })
      .expect(201);
    await coordinator.post(`/aircraft/${aircraftId}/squawks/${other.body.id}/ground`).expect(200);
    const { body } = await preview(at, { step: 'ground' }).expect(200);
    expect(body.kinds[0].then).toMatchObject({ verdict: 'no' });
    expect(body.kinds[0].then.says[0].says).toContain('Dead');
  });

  it('of steps left open is unknown, never none', async () => {
    const { at } = await squawkOn('position-lights');
    const { body } = await preview(at, { step: 'defer', deferral: { deferredOn: '2026-03-10' } }).expect(200);
    expect(verdicts(body)['day-vfr']![1]).toBe('unknown');
  });
});

it('lists the bookings it changes, and keeps nothing', async () => {
  const { at, aircraftId } = await squawkOn(null);
  const pilot = await ready.club.signInAs('member', { name: 'Pat Booked' });
  await ready.makePilot(pilot.memberId);
  const booked = await pilot
    .post('/bookings', { ...tomorrow, aircraftId, purpose: 'solo', personsOnBoard: 1 })
    .set('Idempotency-Key', newId())
    .expect(201);
  const before = (await ready.member.get(at).expect(200)).body;
  const { body } = await preview(at, { step: 'ground' }).expect(200);
  expect(body.bookingsJudged).toBe(1);
  expect(body.bookings).toMatchObject([
    { bookingId: booked.body.id, memberName: 'Pat Booked', before: 'yes-with-conditions', after: 'no' },
  ]);
  expect(body.bookings[0].because[0]).toMatchObject({ rule: 'squawk.grounding' });
  expect((await ready.member.get(at).expect(200)).body).toEqual(before);
  const history = await ready.member.get(`${at}/history`).expect(200);
  expect(history.body.items).toHaveLength(1);
});

it('is refused as the step itself is', async () => {
  const { at } = await squawkOn('position-lights');
  const refused = await preview(at, {
    step: 'defer',
    deferral: { ...STEPS, requiredByDirective: true },
  }).expect(422);
  expect(problemOf(refused)).toEqual({ code: 'deferral-not-allowed', field: 'requiredByDirective' });
  expect(problemOf(await preview(at, { step: 'defer' }).expect(422)).field).toBe('deferral');
  expect(problemOf(await preview(at, { step: 'sell' }).expect(400)).field).toBe('step');
  await coordinator.post(`${at}/fix`, { correctiveAction: 'Lamp', signedBy: 'Mo' }).expect(200);
  expect(problemOf(await preview(at, { step: 'as-is' }).expect(409)).code).toBe('squawk-state');
});

it('a report names a flight of this aircraft with the reporter aboard', async () => {
  const pilot = await ready.club.signInAs('member', { name: 'Fay Flew' });
  await ready.makePilot(pilot.memberId);
  const aircraftId = await ready.addAircraft('NX301B');
  const other = await ready.addAircraft('NX302B');
  const { body: booking } = await pilot
    .post('/bookings', { ...tomorrow, aircraftId, purpose: 'solo', personsOnBoard: 1 })
    .set('Idempotency-Key', newId())
    .expect(201);
  const report = (who: Session, on: string) =>
    who.post(`/aircraft/${on}/squawks`, { title: 'Radio dead', bookingId: booking.id });
  expect((await report(pilot, aircraftId).expect(201)).body.bookingId).toBe(booking.id);
  expect((await report(coordinator, aircraftId).expect(201)).body.bookingId).toBe(booking.id);
  for (const refused of [await report(ready.member, aircraftId), await report(pilot, other)]) {
    expect(refused.status).toBe(422);
    expect(problemOf(refused)).toEqual({ code: 'value-refused', field: 'bookingId' });
  }
});

describe('the guide to a deferral', () => {
  const guide = async (at: string) => (await coordinator.get(`${at}/deferral-guide`).expect(200)).body;
  const answers = (body: { steps: { id: string; answer: string }[] }) =>
    Object.fromEntries(body.steps.map(({ id, answer }) => [id, answer]));

  it('says what the record and the rules know, and what a person must answer', async () => {
    const { at } = await squawkOn('position-lights');
    const body = await guide(at);
    expect(body.outcome).toBe('open');
    expect(answers(body)).toEqual({
      ...{
        'small-aircraft': 'yes',
        'type-design': 'open',
        'equipment-list': 'open',
        'kind-of-flight': 'yes',
      },
      ...{ directive: 'open', 'removed-or-deactivated': 'open', placarded: 'open', recorded: 'open' },
      'no-hazard': 'open',
    });
    const needed = body.steps.find(({ id }: { id: string }) => id === 'kind-of-flight');
    expect(needed).toMatchObject({ by: 'rules', stops: false });
    expect(needed.says).toMatch(/^At night under VFR: /);
    await coordinator.post(`${at}/defer`, STEPS).expect(200);
    const after = await guide(at);
    expect(after.outcome).toBe('complete');
    expect(answers(after)['no-hazard']).toBe('yes');
  });

  it('offers none for what the type design requires, nor for what every flight needs', async () => {
    const required = await squawkOn('position-lights');
    await api.sql('UPDATE equipment SET required_by_type_design = true WHERE id = $1', [
      required.equipmentId,
    ]);
    const byDesign = await guide(required.at);
    expect(byDesign.outcome).toBe('no-deferral');
    expect(byDesign.says).toContain('91.213(d)(2)(i)');
    const needed = await squawkOn('airspeed-indicator');
    const byFlight = await guide(needed.at);
    expect(byFlight.outcome).toBe('no-deferral');
    expect(byFlight.says).toContain('91.213(d)(2)(iii)');
  });

  it('cannot tell without the equipment, the weight or whether there is a list', async () => {
    const nothing = await squawkOn(null);
    expect(answers(await guide(nothing.at))['kind-of-flight']).toBe('open');
    await coordinator.post(`${nothing.at}/defer`, STEPS).expect(200);
    expect((await guide(nothing.at)).outcome).toBe('open');
    const unlisted = await squawkOn('position-lights');
    await api.sql('UPDATE aircraft SET approved_equipment_list = NULL WHERE id = $1', [unlisted.aircraftId]);
    const body = await guide(unlisted.at);
    expect(body.outcome).toBe('open');
    expect(answers(body)).toMatchObject({ 'approved-list': 'open', 'kind-of-flight': 'open' });
  });

  it('leaves an aircraft with an approved list to the list', async () => {
    const { at, aircraftId } = await squawkOn('position-lights');
    await api.sql('UPDATE aircraft SET approved_equipment_list = true WHERE id = $1', [aircraftId]);
    const body = await guide(at);
    expect(body.outcome).toBe('by-list');
    expect(answers(body)).toEqual({ 'list-item': 'open' });
  });

  it('names directives on record for the equipment', async () => {
    const { at, aircraftId, equipmentId } = await squawkOn('position-lights');
    await insertInto(api.sql, ready.club.clubId)('airworthiness_items', {
      ...{ id: newId(), aircraft_id: aircraftId, kind: 'directive', title: 'Wing tip wiring', scope: 'all' },
      ...{ interval_tenths: 1000, equipment_id: equipmentId },
    });
    const { steps } = await guide(at);
    expect(steps.find(({ id }: { id: string }) => id === 'directive').says).toContain('Wing tip wiring');
  });

  it("is the club's own procedure where the law is not held here", async () => {
    const abroad = await readyClub(api, { jurisdiction: 'EU' });
    const chief = await abroad.club.signInAs('maintenance-coordinator');
    const { body } = await abroad.member
      .post(`/aircraft/${abroad.aircraftId}/squawks`, { title: 'Lights dead' })
      .expect(201);
    const at = `/aircraft/${abroad.aircraftId}/squawks/${body.id}`;
    const found = await chief.get(`${at}/deferral-guide`).expect(200);
    expect(found.body).toMatchObject({ outcome: 'club-procedure', steps: [] });
    expect(found.body.says).toContain('own procedure');
  });
});
