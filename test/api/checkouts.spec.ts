import { newId } from '../../src/platform/ids.js';
import { type Api, type Session, startApi, type TestClub } from '../support/api.js';
import { seedFleet, type SeededFleet } from '../support/seed-fleet.js';

let api: Api;
let club: TestClub;
let fleet: SeededFleet;
let member: Session;
let instructor: Session;
let officer: Session;

beforeAll(async () => {
  api = await startApi();
  club = await api.createClub();
  fleet = await seedFleet(api.sql, club.clubId);
  [member, instructor, officer] = [
    await club.signInAs('member'),
    await club.signInAs('instructor'),
    await club.signInAs('safety-officer'),
  ];
});
afterAll(() => api.stop());

const of = (who = member) => `/members/${who.memberId}/checkouts`;
const annual = { kind: 'annual-check', signedOn: '2026-03-09', expiresOn: '2027-03-31' };
const sign = async (draft: object = annual, by = instructor) => (await by.post(of(), draft).expect(201)).body;

describe('checkouts', () => {
  it('of every kind are signed by an instructor', async () => {
    const model = {
      kind: 'model',
      modelId: fleet.modelId,
      signedOn: '2026-03-10',
      remarks: 'Good short-field work',
    };
    expect(await sign(model)).toEqual({
      ...model,
      ...{ aircraftId: null, expiresOn: null, id: expect.any(String), memberId: member.memberId },
      ...{ signedBy: instructor.memberId, recordedAt: expect.any(String), voided: null },
      ...{ equipmentGroup: null, condition: null, versionId: null, differenceId: null },
    });
    await sign({ kind: 'differences', aircraftId: fleet.aircraftId, signedOn: '2026-03-01' });
    await sign({ kind: 'equipment', equipmentGroup: 'autopilot', signedOn: '2026-03-01' });
    await sign({ kind: 'condition', condition: 'night', signedOn: '2026-03-01' });
    await sign();
    const audit = await api.sql(
      `SELECT actor_id FROM audit_log WHERE table_name = 'checkouts' AND actor_id = $1`,
      [instructor.memberId],
    );
    expect(audit).toHaveLength(5);
  });

  it('are not signed for oneself, the annual check included', async () => {
    for (const draft of [annual, { kind: 'model', modelId: fleet.modelId, signedOn: '2026-03-10' }]) {
      const { body } = await instructor.post(of(instructor), draft).expect(403);
      expect(body.code).toBe('own-checkout');
    }
  });

  it('are signed by instructors only', async () => {
    for (const role of ['member', 'safety-officer', 'maintenance-coordinator', 'administrator'] as const) {
      const other = await club.signInAs(role);
      expect((await other.post(of(), annual).expect(403)).body.code).toBe('role-needed');
    }
  });

  it('are taken back with a reason, by who signed or by an officer, once', async () => {
    const { id } = await sign();
    const second = await club.signInAs('instructor');
    await second.post(`/checkouts/${id}/void`, { reason: 'Wrong member' }).expect(403);
    await member.post(`/checkouts/${id}/void`, { reason: 'Wrong member' }).expect(403);
    await instructor.post(`/checkouts/${id}/void`, { reason: '  ' }).expect(400);
    const { body } = await instructor.post(`/checkouts/${id}/void`, { reason: 'Wrong member' }).expect(200);
    expect(body.voided).toEqual({ by: instructor.memberId, at: expect.any(String), reason: 'Wrong member' });
    expect((await officer.post(`/checkouts/${id}/void`, { reason: 'Again' }).expect(409)).body.code).toBe(
      'checkout-void-already',
    );
    const list = async (query: string) =>
      (await member.get(`${of()}${query}`).expect(200)).body.items.map((item: { id: string }) => item.id);
    expect(await list('')).not.toContain(id);
    expect(await list('?voided=true')).toContain(id);
    const other = await sign();
    await officer
      .post(`/checkouts/${other.id}/void`, { reason: 'Instructor left before signing' })
      .expect(200);
  });

  it('cannot be edited or deleted', async () => {
    const { id } = await sign();
    await instructor.patch(`/checkouts/${id}`, { signedOn: '2026-03-01' }, '"1"').expect(404);
    await instructor.delete(`${of()}/${id}`, '"1"').expect(404);
  });

  it('are read by the member, instructors and officers, page by page', async () => {
    await instructor.get(of()).expect(200);
    await officer.get(of()).expect(200);
    for (const role of ['member', 'maintenance-coordinator'] as const)
      await (await club.signInAs(role)).get(of()).expect(403);
    await sign();
    const first = (await member.get(`${of()}?limit=1`).expect(200)).body;
    const second = (await member.get(`${of()}?limit=1&cursor=${first.nextCursor}`).expect(200)).body;
    expect(second.items[0].id < first.items[0].id).toBe(true);
  });

  it('of another club do not exist', async () => {
    const { id } = await sign();
    const other = await api.createClub();
    const stranger = await other.signInAs(['instructor', 'administrator']);
    await stranger.post(of(), annual).expect(404);
    await stranger.get(of()).expect(404);
    await stranger.post(`/checkouts/${id}/void`, { reason: 'Not mine' }).expect(404);
    const theirs = await other.createMember();
    const { body } = await stranger
      .post(`/members/${theirs.memberId}/checkouts`, {
        kind: 'model',
        modelId: fleet.modelId,
        signedOn: '2026-03-01',
      })
      .expect(422);
    expect(body.errors[0].field).toBe('modelId');
  });
});

describe('bad checkouts', () => {
  it.each<[what: string, draft: () => object, field: string]>([
    ['a model checkout without model', () => ({ kind: 'model', signedOn: '2026-03-01' }), 'modelId'],
    [
      'a differences checkout without aircraft',
      () => ({ kind: 'differences', signedOn: '2026-03-01' }),
      'aircraftId',
    ],
    ['an annual check of a model', () => ({ ...annual, modelId: fleet.modelId }), 'modelId'],
    [
      'a model checkout of an aircraft',
      () => ({ kind: 'model', modelId: fleet.modelId, aircraftId: fleet.aircraftId, signedOn: '2026-03-01' }),
      'aircraftId',
    ],
    [
      'an equipment checkout without a group',
      () => ({ kind: 'equipment', signedOn: '2026-03-01' }),
      'equipmentGroup',
    ],
    [
      'a night checkout of a model',
      () => ({ kind: 'condition', condition: 'night', modelId: fleet.modelId, signedOn: '2026-03-01' }),
      'modelId',
    ],
    ['an annual check of a condition', () => ({ ...annual, condition: 'night' }), 'condition'],
    ['an unknown model', () => ({ kind: 'model', modelId: newId(), signedOn: '2026-03-01' }), 'modelId'],
    ['tomorrow’s', () => ({ kind: 'annual-check', signedOn: '2026-03-11' }), 'signedOn'],
    ['one that ended before', () => ({ ...annual, expiresOn: '2026-03-08' }), 'expiresOn'],
  ])('%s', async (_what, draft, field) => {
    const { body } = await instructor.post(of(), draft()).expect(422);
    expect(body).toMatchObject({ code: 'checkout-shape', errors: [{ field }] });
  });

  it.each<[what: string, values: object, field: string]>([
    ['unknown kind', { kind: 'solo' }, 'kind'],
    ['impossible date', { signedOn: '2026-02-30' }, 'signedOn'],
    ['somebody else’s name', { signedBy: '01900000-0000-7000-8000-000000000000' }, 'signedBy'],
    ['zero byte', { remarks: '\u0000' }, 'remarks'],
  ])('%s', async (_what, values, field) => {
    const { body } = await instructor.post(of(), { ...annual, ...values }).expect(400);
    expect(body.errors.map((e: { field: string }) => e.field)).toContain(field);
  });
});
