import type { Api, Session, TestClub } from '../support/api.js';
import { problemOf, startFleetApi } from './fleet-scene.js';

let api: Api;
let club: TestClub;
let administrator: Session;

beforeAll(async () => {
  api = await startFleetApi();
  club = await api.createClub({ name: 'Larkfield Flying Group' });
  administrator = await club.signInAs('administrator');
}, 60_000);
afterAll(() => api.stop());

describe('GET /club', () => {
  it('shows a member the own club, with an ETag', async () => {
    const member = await club.signInAs('member');
    const response = await member.get('/club').expect(200);
    expect(response.body).toEqual({
      id: club.clubId,
      slug: club.slug,
      name: 'Larkfield Flying Group',
      zone: 'America/Chicago',
      jurisdiction: 'US',
      rowVersion: 1,
      recordedAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/),
    });
    expect(response.headers['etag']).toBe('"1"');
  });

  it('needs a signed-in person', async () => {
    const response = await api.http.get('/api/v1/club').expect(401);
    expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(problemOf(response)).toEqual({ code: 'not-signed-in' });
  });
});

describe('PATCH /club', () => {
  it('changes what is sent and nothing else', async () => {
    const own = await api.createClub();
    const boss = await own.signInAs('administrator');
    const response = await boss
      .patch('/club', { name: '  Heron Point Flyers ', zone: 'America/Denver' }, '"1"')
      .expect(200);
    expect(response.body).toMatchObject({
      name: 'Heron Point Flyers',
      zone: 'America/Denver',
      slug: own.slug,
      rowVersion: 2,
    });
    expect(response.headers['etag']).toBe('"2"');
    const audit = await api.sql(
      'SELECT actor_id, action FROM audit_log WHERE club_id = $1 AND table_name = $2',
      [own.clubId, 'clubs'],
    );
    expect(audit).toEqual([{ actor_id: boss.memberId, action: 'update' }]);
  });

  it('writes nothing when nothing is sent', async () => {
    const response = await administrator.patch('/club', {}, '"1"').expect(200);
    expect(response.body).toMatchObject({ rowVersion: 1 });
  });

  it.each(['member', 'instructor', 'safety-officer', 'maintenance-coordinator'] as const)(
    'refuses a %s',
    async (role) => {
      const response = await (await club.signInAs(role)).patch('/club', { name: 'Mine' }, '"1"').expect(403);
      expect(problemOf(response)).toEqual({ code: 'role-needed' });
    },
  );

  it('needs If-Match, and the present one', async () => {
    expect(problemOf(await administrator.patch('/club', { name: 'X' }).expect(428))).toEqual({
      code: 'if-match-missing',
      field: 'If-Match',
    });
    expect(problemOf(await administrator.patch('/club', { name: 'X' }, '"9"').expect(412))).toEqual({
      code: 'edit-conflict',
    });
  });

  it.each([
    [{ zone: 'Mars/Olympus' }, 'zone'],
    [{ zone: '+02:00' }, 'zone'],
    [{ jurisdiction: 'UK' }, 'jurisdiction'],
    [{ slug: 'Not A Slug' }, 'slug'],
    [{ slug: 'x'.repeat(61) }, 'slug'],
    [{ name: ' ' }, 'name'],
    [{ name: null }, 'name'],
    [{ name: 7 }, 'name'],
    [{ motto: 'Higher' }, 'motto'],
    [{ rowVersion: 7 }, 'rowVersion'],
  ])('refuses %j', async (body, field) => {
    expect(problemOf(await administrator.patch('/club', body, '"1"').expect(400))).toEqual({
      code: 'validation-failed',
      field,
    });
  });

  it('refuses a zero byte', async () => {
    expect(problemOf(await administrator.patch('/club', { name: 'a\0b' }, '"1"').expect(400)).code).toBe(
      'nul-byte',
    );
  });

  it("refuses another club's short name", async () => {
    const other = await api.createClub();
    const response = await administrator.patch('/club', { slug: other.slug }, '"1"').expect(409);
    expect(problemOf(response)).toEqual({ code: 'slug-taken', field: 'slug' });
  });
});
