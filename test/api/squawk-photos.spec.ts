import { createHash } from 'node:crypto';
import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Api, Session } from '../support/api.js';
import { exif, JPEG, jpegWith, PNG, SECRET, WEBP } from '../fleet/pictures.js';
import { type FleetScene, fleetScene, NOBODY, problemOf, startFleetApi } from './fleet-scene.js';

let api: Api;
let scene: FleetScene;

beforeAll(async () => {
  api = await startFleetApi();
  scene = await fleetScene(api);
}, 60_000);
afterAll(() => api.stop());

const report = async (): Promise<string> => {
  const { body } = await scene.member
    .post(scene.path('/squawks'), { title: 'Landing light out' })
    .expect(201);
  return scene.path(`/squawks/${body.id}`);
};
const send = (who: Session, at: string, bytes: Buffer, name = 'x.jpg', field = 'photo') =>
  api.http
    .post(`/api/v1${at}/attachments`)
    .set('Authorization', `Bearer ${who.token}`)
    .attach(field, bytes, name);

it.each([
  ['image/jpeg', JPEG],
  ['image/png', PNG],
  ['image/webp', WEBP],
])('a photo as %s is kept and served with the headers that keep it a photo', async (mediaType, bytes) => {
  const at = await report();
  const { body } = await send(scene.member, at, bytes, 'page.html').expect(201);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  expect(body).toMatchObject({ mediaType, sizeBytes: bytes.length, sha256, addedBy: scene.member.memberId });
  expect((await scene.coordinator.get(at).expect(200)).body.photos).toEqual([body]);
  const read = await scene.coordinator.get(`${at}/attachments/${body.id}`).buffer(true).expect(200);
  expect(Buffer.compare(read.body as Buffer, bytes)).toBe(0);
  expect(read.headers).toMatchObject({
    ...{ 'content-type': mediaType, 'content-length': `${bytes.length}`, etag: `"${sha256}"` },
    ...{ 'x-content-type-options': 'nosniff', 'cache-control': 'private, no-cache' },
    'content-security-policy': "default-src 'none'; sandbox",
    'content-disposition': expect.stringMatching(/^inline; filename="squawk-[0-9a-f]{8}\.(jpg|png|webp)"$/),
  });
  for (const tag of [`"${sha256}"`, `W/"${sha256}"`, `"other", "${sha256}"`]) {
    const same = await scene.member.get(`${at}/attachments/${body.id}`).set('If-None-Match', tag).expect(304);
    expect(same.headers).toMatchObject({ etag: `"${sha256}"` });
  }
  await scene.member.get(`${at}/attachments/${body.id}`).set('If-None-Match', '"other"').expect(200);
});

it('what the camera noted is not kept, nor in the audit log', async () => {
  const at = await report();
  const { body } = await send(scene.member, at, jpegWith(exif(6))).expect(201);
  const read = await scene.member.get(`${at}/attachments/${body.id}`).buffer(true).expect(200);
  expect((read.body as Buffer).includes(SECRET)).toBe(false);
  const [log] = await api.sql<{ after: Record<string, unknown> }>(
    "SELECT after FROM audit_log WHERE table_name = 'attachments' AND row_id = $1",
    [body.id],
  );
  expect(log!.after).toMatchObject({ sha256: body.sha256 });
  expect(log!.after).not.toHaveProperty('content');
});

it('the same photo sent again is the one already there; six are enough', async () => {
  const at = await report();
  const first = await send(scene.member, at, PNG).expect(201);
  expect((await send(scene.member, at, PNG).expect(201)).body).toEqual(first.body);
  for (const up of [2, 3, 4, 5, 6]) await send(scene.member, at, jpegWith(exif(up))).expect(201);
  const refused = await send(scene.member, at, jpegWith(exif(7))).expect(422);
  expect(problemOf(refused)).toEqual({ code: 'value-refused', field: 'photo' });
  expect((await scene.member.get(at).expect(200)).body.photos).toHaveLength(6);
});

it.each([
  ['a page', Buffer.from('<!doctype html><script>alert(1)</script>')],
  ['a drawing', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')],
  ['half a photo', JPEG.subarray(0, 300)],
])('%s that calls itself a photo is refused', async (_what, bytes) => {
  const refused = await send(scene.member, await report(), bytes).expect(422);
  expect(problemOf(refused)).toEqual({ code: 'photo-unreadable', field: 'photo' });
});

it('forms that are not one photo are refused by name', async () => {
  const at = await report();
  const form = () =>
    api.http.post(`/api/v1${at}/attachments`).set('Authorization', `Bearer ${scene.member.token}`);
  const cases = [
    form().attach('file', PNG, 'x.png'),
    form().attach('photo', PNG, 'x.png').attach('photo', PNG, 'y.png'),
    form().field('photo', 'words'),
    form().attach('photo', PNG, 'x.png').field('title', 'x'),
    form().attach('photo', Buffer.alloc(0), 'x.png'),
    form().set('Content-Type', 'multipart/form-data').send('x'),
    scene.member.post(`${at}/attachments`, { photo: 'x' }),
    scene.member.post(`${at}/attachments`),
  ];
  for (const [index, one] of cases.entries()) {
    const refused = await one;
    expect([index, refused.status, refused.type]).toEqual([index, 400, 'application/problem+json']);
    expect([index, problemOf(refused)]).toEqual([index, { code: 'photo-missing', field: 'photo' }]);
  }
  expect((await scene.member.get(at).expect(200)).body.photos).toEqual([]);
});

it('too large is refused, announced or not', async () => {
  const at = await report();
  const large = Buffer.concat([JPEG, Buffer.alloc(8 * 1024 * 1024)]);
  const refused = await send(scene.member, at, large);
  expect(refused.status).toBe(413);
  expect(problemOf(refused)).toEqual({ code: 'body-too-large', field: 'photo' });
  expect(refused.body).toMatchObject({ limitBytes: 8 * 1024 * 1024 });
  expect(await sendUnannounced(at, large)).toBe(413);
  expect((await scene.member.get(at).expect(200)).body.photos).toEqual([]);
});

/** The status for a form in chunks, whose length nobody knows before its end. */
const sendUnannounced = (at: string, bytes: Buffer): Promise<number> =>
  new Promise((done, failed) => {
    const { port } = api.app.getHttpServer().address() as AddressInfo;
    const headers = {
      Authorization: `Bearer ${scene.member.token}`,
      'Content-Type': 'multipart/form-data; boundary=x',
      'Transfer-Encoding': 'chunked',
    };
    const outgoing = request(
      { host: '127.0.0.1', port, method: 'POST', path: `/api/v1${at}/attachments`, headers },
      (response) => {
        response.resume();
        done(response.statusCode ?? 0);
      },
    );
    outgoing.on('error', failed);
    outgoing.write(
      '--x\r\nContent-Disposition: form-data; name="photo"; filename="x.jpg"\r\nContent-Type: image/jpeg\r\n\r\n',
    );
    outgoing.write(bytes);
    outgoing.end('\r\n--x--\r\n');
  });

it('forms are taken nowhere else', async () => {
  const refused = await api.http
    .post(`/api/v1${scene.path('/squawks')}`)
    .set('Authorization', `Bearer ${scene.member.token}`)
    .attach('photo', PNG, 'x.png');
  expect(refused.status).toBe(415);
});

it('photos are added by who reported and by the coordinator, and seen in the club only', async () => {
  const at = await report();
  const other = await scene.club.signInAs('instructor');
  const refused = await send(other, at, PNG).expect(403);
  expect(refused.body.detail).toContain('who reported it');
  const { body } = await send(scene.coordinator, at, PNG).expect(201);
  await other.get(`${at}/attachments/${body.id}`).expect(200);
  const abroad = await fleetScene(api);
  await abroad.member.get(`${at}/attachments/${body.id}`).expect(404);
  await send(abroad.member, at, PNG).expect(404);
  await scene.member.get(`${at}/attachments/${NOBODY}`).expect(404);
  await scene.member.get(`${await report()}/attachments/${body.id}`).expect(404);
  await api.http.get(`/api/v1${at}/attachments/${body.id}`).expect(401);
  await api.http.post(`/api/v1${at}/attachments`).attach('photo', PNG, 'x.png').expect(401);
});
