/** Scans of papers: who adds and reads them, what is kept of them, and that each reading is on record. */
import { PDFDocument, PDFName, PDFString } from 'pdf-lib';
import { exif, jpegWith, PNG, SECRET } from '../fleet/pictures.js';
import { type Api, type Session, startApi, type TestClub } from '../support/api.js';
import { teach } from '../support/teach.js';

let api: Api;
let club: TestClub;
let member: Session;
let officer: Session;
let instructor: Session;

beforeAll(async () => {
  api = await startApi();
  club = await api.createClub();
  member = await club.signInAs('member');
  officer = await club.signInAs('safety-officer');
  instructor = await club.signInAs('instructor');
});
afterAll(() => api.stop());

const DRAFTS: Record<string, object> = {
  certificates: { level: 'private', issuedOn: '2019-06-01' },
  'instructor-certificates': { issuedOn: '2025-01-10', ratings: ['glider'] },
  medicals: { class: 3, examOn: '2025-05-05' },
  'basic-med': { examOn: '2025-05-05' },
  reviews: { kind: 'flight-review', reviewedOn: '2025-05-05', groundH: 1, flightH: 1 },
  endorsements: { kind: 'tailwheel', endorsedOn: '2025-05-05' },
  ratings: { kind: 'night', issuedOn: '2025-05-05' },
};
const paper = async (kind: string): Promise<string> => {
  const { body } = await member.post(`/members/${member.memberId}/${kind}`, DRAFTS[kind]).expect(201);
  return (body as { id: string }).id;
};
const at = (rest = '') => `/members/${member.memberId}/documents${rest}`;
const send = (who: Session, path: string, bytes: Buffer, name = 'scan.png') =>
  api.http.post(`/api/v1${path}`).set('Authorization', `Bearer ${who.token}`).attach('document', bytes, name);

it.each(Object.keys(DRAFTS))('goes with %s, and is served as a file that nothing keeps', async (kind) => {
  const paperId = await paper(kind);
  const { body } = await send(member, at(`/${kind}/${paperId}`), PNG).expect(201);
  expect(body).toMatchObject({ kind, paperId, mediaType: 'image/png', addedBy: member.memberId });
  expect((await send(member, at(`/${kind}/${paperId}`), PNG).expect(201)).body).toEqual(body);
  const read = await member
    .get(at(`/${body.id}`))
    .buffer(true)
    .expect(200);
  expect(Buffer.compare(read.body as Buffer, PNG)).toBe(0);
  expect(read.headers).toMatchObject({
    ...{ 'cache-control': 'no-store', 'x-content-type-options': 'nosniff', 'content-type': 'image/png' },
    'content-disposition': expect.stringMatching(/^attachment; filename="paper-[0-9a-f]{8}\.png"$/),
  });
  expect((await officer.get(at()).expect(200)).body.items).toContainEqual(body);
});

it('every reading is on record, with who read it', async () => {
  const { body } = await send(member, at(`/medicals/${await paper('medicals')}`), PNG).expect(201);
  await officer.get(at(`/${body.id}`)).expect(200);
  await instructor.get(at(`/${body.id}`)).expect(403);
  const rows = await api.sql(
    "SELECT actor_id FROM audit_log WHERE table_name = 'documents' AND action = 'read' AND row_id = $1",
    [body.id],
  );
  expect(rows).toEqual([{ actor_id: officer.memberId }]);
});

it("is private: instructors see their students' endorsements alone, other members and other clubs nothing", async () => {
  const endorsement = await send(member, at(`/endorsements/${await paper('endorsements')}`), PNG).expect(201);
  const medical = await send(member, at(`/medicals/${await paper('medicals')}`), PNG).expect(201);
  for (const path of [at(), at(`/${endorsement.body.id}`)]) await instructor.get(path).expect(403);
  await teach(api, { clubId: club.clubId, instructorId: instructor.memberId, memberId: member.memberId });
  await instructor.get(at(`/${endorsement.body.id}`)).expect(200);
  const listed = (await instructor.get(at()).expect(200)).body.items as { kind: string }[];
  expect(new Set(listed.map(({ kind }) => kind))).toEqual(new Set(['endorsements']));
  for (const role of ['member', 'maintenance-coordinator'] as const) {
    const other = await club.signInAs(role);
    await other.get(at()).expect(403);
    await other.get(at(`/${medical.body.id}`)).expect(403);
    await other
      .delete(at(`/${medical.body.id}`))
      .set('If-Match', '"1"')
      .expect(403);
    await send(other, at(`/medicals/${medical.body.paperId}`), PNG).expect(403);
  }
  const abroad = await (await api.createClub()).signInAs('administrator');
  await abroad.get(at(`/${medical.body.id}`)).expect(404);
});

it('a photo loses what the camera noted, and the audit log never holds the document', async () => {
  const path = at(`/medicals/${await paper('medicals')}`);
  const { body } = await send(member, path, jpegWith(exif(6)), 'a.jpg').expect(201);
  const read = await member
    .get(at(`/${body.id}`))
    .buffer(true)
    .expect(200);
  expect((read.body as Buffer).includes(SECRET)).toBe(false);
  const [row] = await api.sql<{ after: object }>(
    "SELECT after FROM audit_log WHERE table_name = 'documents' AND action = 'insert' AND row_id = $1",
    [body.id],
  );
  expect(row!.after).not.toHaveProperty('content');
});

/** A PDF with a page, a photo with a place in it, an author, and a script that runs when it is opened. */
async function scriptedPdf(): Promise<Buffer> {
  const pdf = await PDFDocument.create();
  pdf.setAuthor('Secret Author');
  const page = pdf.addPage([200, 100]);
  page.drawImage(await pdf.embedJpg(new Uint8Array(jpegWith(exif(1)))), {
    x: 0,
    y: 0,
    width: 20,
    height: 20,
  });
  pdf.addJavaScript('run', 'app.alert("run me")');
  const action = pdf.context.obj({ Type: 'Action', S: 'URI', URI: PDFString.of('https://example.invalid') });
  page.node.set(PDFName.of('AA'), pdf.context.obj({ O: action }));
  return Buffer.from(await pdf.save({ useObjectStreams: false }));
}

it('of a PDF only the pages are kept', async () => {
  const sent = await scriptedPdf();
  for (const word of ['JavaScript', 'example.invalid', SECRET])
    expect([word, sent.includes(word)]).toEqual([word, true]);
  const path = at(`/medicals/${await paper('medicals')}`);
  const { body } = await send(member, path, sent, 'x.exe').expect(201);
  expect(body.mediaType).toBe('application/pdf');
  const read = await member
    .get(at(`/${body.id}`))
    .buffer(true)
    .parse(binary)
    .expect(200);
  const kept = read.body as Buffer;
  for (const word of ['JavaScript', 'example.invalid', SECRET, 'Author', '/AA', '/Info'])
    expect([word, kept.includes(word)]).toEqual([word, false]);
  const again = await PDFDocument.load(kept);
  expect(again.getPageCount()).toBe(1);
  expect(again.getPage(0).getSize()).toEqual({ width: 200, height: 100 });
  expect(kept.includes('DCTDecode')).toBe(true);
  // The same document is the one already there.
  expect((await send(member, path, sent).expect(201)).body.id).toBe(body.id);
});
const binary = (response: unknown, done: (error: Error | null, body: Buffer) => void): void => {
  const parts: Buffer[] = [];
  const stream = response as NodeJS.ReadableStream;
  stream.on('data', (part: Buffer) => parts.push(part));
  stream.on('end', () => done(null, Buffer.concat(parts)));
};

it('refuses what is neither, whatever it calls itself, and forms that are not one document', async () => {
  const path = at(`/medicals/${await paper('medicals')}`);
  const pdf = await scriptedPdf();
  for (const [what, bytes] of [
    ['a page', Buffer.from('<!doctype html><script>1</script>')],
    ['a name only', Buffer.from('%PDF-1.7\nnothing')],
    ['half', pdf.subarray(0, 60)],
    ['a password', Buffer.from(pdf.toString('latin1').replace('/Root', '/Encrypt 1 0 R\n/Root'), 'latin1')],
  ] as const) {
    const refused = await send(member, path, bytes, 'a.pdf');
    expect([what, refused.status, refused.body.code]).toEqual([what, 422, 'document-unreadable']);
  }
  const large = await send(member, path, Buffer.alloc(8 * 1024 * 1024 + 5000));
  expect([large.status, large.body.code]).toEqual([413, 'body-too-large']);
  expect((await send(member, path, Buffer.alloc(0)).expect(400)).body.code).toBe('document-missing');
  await send(member, at(`/kites/${member.memberId}`), PNG).expect(404);
  await send(member, at(`/reviews/${path.split('/').at(-1)}`), PNG).expect(404);
});

it('six are enough; the member deletes one until the paper is verified', async () => {
  const paperId = await paper('medicals');
  const path = at(`/medicals/${paperId}`);
  const sent: string[] = [];
  for (const up of [1, 2, 3, 4, 5, 6])
    sent.push((await send(member, path, up === 1 ? PNG : jpegWith(exif(up))).expect(201)).body.id as string);
  expect((await send(member, path, jpegWith(exif(7))).expect(422)).body.errors[0].field).toBe('document');
  await member
    .delete(at(`/${sent[0]}`))
    .set('If-Match', '"1"')
    .expect(204);
  await member.get(at(`/${sent[0]}`)).expect(404);
  await officer.get(at(`/${sent[0]}`)).expect(404);
  await officer
    .post(`/members/${member.memberId}/medicals/${paperId}/verify`)
    .set('If-Match', '"1"')
    .expect(200);
  expect(
    (
      await member
        .delete(at(`/${sent[1]}`))
        .set('If-Match', '"1"')
        .expect(403)
    ).body.code,
  ).toBe('verified-paper');
  await officer
    .delete(at(`/${sent[1]}`))
    .set('If-Match', '"1"')
    .expect(204);
});

it('officers find what is to be verified, with how many documents are with it', async () => {
  const paperId = await paper('reviews');
  await send(member, at(`/reviews/${paperId}`), PNG).expect(201);
  const all: { id: string }[] = [];
  for (let cursor = ''; ;) {
    const { body } = await officer.get(`/papers/unverified?limit=3${cursor}`).expect(200);
    all.push(...body.items);
    if (body.nextCursor === null) break;
    cursor = `&cursor=${body.nextCursor}`;
  }
  expect(all).toContainEqual({
    ...{ kind: 'reviews', id: paperId, memberId: member.memberId, memberName: member.name, documents: 1 },
  });
  await officer
    .post(`/members/${member.memberId}/reviews/${paperId}/verify`)
    .set('If-Match', '"1"')
    .expect(200);
  const { body } = await officer.get('/papers/unverified?limit=100').expect(200);
  expect(body.items.map(({ id }: { id: string }) => id)).not.toContain(paperId);
  await member.get('/papers/unverified').expect(403);
});
