import {
  CERTIFICATE_LEVELS,
  ENDORSEMENT_KINDS,
  RATING_KINDS,
  REVIEW_KINDS,
} from '../../src/members/vocabulary.js';
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
  [member, officer, instructor] = [
    await club.signInAs('member'),
    await club.signInAs('safety-officer'),
    await club.signInAs('instructor'),
  ];
});
afterAll(() => api.stop());

const under = (path: string, memberId = member.memberId) => `/members/${memberId}/${path}`;
const AIRPLANE_SEL = { category: 'airplane', class: 'single-engine-land' };

/** Every kind: a paper, and an edit of it. */
const KINDS: [path: string, draft: object, edit: object][] = [
  [
    'certificates',
    {
      ...{
        level: 'private',
        issuedOn: '2019-06-01',
        validThrough: null,
        limitations: ['Not valid for night flight'],
      },
      ...{
        ratings: [AIRPLANE_SEL, { category: 'glider', class: 'none' }],
        instrument: ['airplane'],
        typeRatings: ['WREN-2'],
      },
    },
    { level: 'commercial', ratings: [AIRPLANE_SEL], typeRatings: [] },
  ],
  [
    'instructor-certificates',
    {
      issuedOn: '2025-01-10',
      ratings: ['airplane-single-engine', 'instrument-airplane'],
      recentExperienceOn: '2025-01-10',
      printedEndOn: null,
    },
    { recentExperienceOn: '2026-02-01' },
  ],
  [
    'medicals',
    { class: 3, examOn: '2025-05-05', limitations: ['Must wear corrective lenses'], withdrawnOn: null },
    { class: 2 },
  ],
  [
    'basic-med',
    {
      ...{
        examOn: '2024-03-01',
        courseOn: '2024-03-05',
        licenceValidThrough: null,
        heldMedicalAfter20060714: true,
      },
      ...{ lastApplicationDenied: false, lastCertificateRevokedOrSuspended: null },
    },
    { licenceValidThrough: '2028-01-01' },
  ],
  [
    'reviews',
    {
      kind: 'flight-review',
      reviewedOn: '2025-04-04',
      groundH: 1.1,
      flightH: 1.3,
      category: 'airplane',
      endorsedAsReview: false,
    },
    { flightH: null },
  ],
  [
    'endorsements',
    {
      kind: 'tailwheel',
      endorsedOn: '2024-08-08',
      makeModel: null,
      airfields: ['XLF'],
      expiresOn: null,
      givenBy: null,
    },
    { expiresOn: '2026-08-08' },
  ],
  [
    'ratings',
    {
      kind: 'single-engine-piston-land',
      designator: null,
      issuedOn: '2024-06-20',
      validThrough: '2026-06-30',
    },
    { issuedOn: '2026-03-02', validThrough: '2028-06-30' },
  ],
];

describe.each(KINDS)('%s', (path, draft, edit) => {
  const create = async (by = member, of = member) =>
    (await by.post(under(path, of.memberId), draft).expect(201)).body;

  it('are written by the member, verified by an officer, and unverified by the member’s next edit', async () => {
    const paper = await create();
    expect(paper).toMatchObject({ ...draft, memberId: member.memberId, verified: null, rowVersion: 1 });
    const at = under(`${path}/${paper.id}`);
    const verified = await officer.post(`${at}/verify`).set('If-Match', '"1"').expect(200);
    expect(verified.body).toMatchObject({
      ...draft,
      verified: { by: officer.memberId, at: '2026-03-10T15:00:00Z' },
      rowVersion: 2,
    });
    const edited = await member.patch(at, edit, '"2"').expect(200);
    expect(edited.body).toMatchObject({ ...draft, ...edit, verified: null, rowVersion: 3 });
    expect(edited.headers['etag']).toBe('"3"');
    const list = await member.get(under(path)).expect(200);
    expect(list.body.items).toContainEqual(edited.body);
  });

  it('stay verified, by the officer, when an officer corrects them', async () => {
    const { id } = await create();
    await officer
      .post(`${under(path)}/${id}/verify`)
      .set('If-Match', '"1"')
      .expect(200);
    const admin = await club.signInAs('administrator');
    const { body } = await admin.patch(under(`${path}/${id}`), edit, '"2"').expect(200);
    expect(body.verified.by).toBe(admin.memberId);
  });

  it('are verified as they were read, and never by their owner', async () => {
    const { id } = await create();
    await member.patch(under(`${path}/${id}`), edit, '"1"').expect(200);
    await officer
      .post(under(`${path}/${id}/verify`))
      .set('If-Match', '"1"')
      .expect(412);
    await officer.post(under(`${path}/${id}/verify`)).expect(428);
    await member
      .post(under(`${path}/${id}/verify`))
      .set('If-Match', '"2"')
      .expect(403);
    const own = await create(officer, officer);
    const answer = await officer
      .post(under(`${path}/${own.id}/verify`, officer.memberId))
      .set('If-Match', '"1"')
      .expect(403);
    expect(answer.body.code).toBe('own-paper');
  });

  it('are deleted by the member while unverified, by an officer always', async () => {
    const { id } = await create();
    const at = under(`${path}/${id}`);
    await officer.post(`${at}/verify`).set('If-Match', '"1"').expect(200);
    expect((await member.delete(at, '"2"').expect(403)).body.code).toBe('verified-paper');
    await officer.delete(at, '"1"').expect(412);
    await officer.delete(at, '"2"').expect(204);
    await officer.delete(at, '"2"').expect(404);
    const second = await create();
    await member.delete(under(`${path}/${second.id}`), '"1"').expect(204);
  });

  it('are read by officers and by who teaches the member, and by no other', async () => {
    const { id } = await create();
    expect((await (await club.signInAs('instructor')).get(under(path)).expect(403)).body.code).toBe(
      'not-yours',
    );
    await teach(api, {
      ...{ clubId: club.clubId, instructorId: instructor.memberId, memberId: member.memberId },
    });
    const other = await club.signInAs('member');
    const coordinator = await club.signInAs('maintenance-coordinator');
    await instructor.get(under(path)).expect(200);
    for (const stranger of [other, coordinator]) {
      await stranger.get(under(path)).expect(403);
      await stranger.post(under(path), draft).expect(403);
      await stranger.patch(under(`${path}/${id}`), edit, '"1"').expect(403);
      await stranger.delete(under(`${path}/${id}`), '"1"').expect(403);
    }
    // Another member's path does not lead to it either.
    await other.patch(under(`${path}/${id}`, other.memberId), edit, '"1"').expect(404);
    await officer.patch(under(`${path}/${id}`, other.memberId), edit, '"1"').expect(404);
  });

  it('of another club do not exist', async () => {
    const elsewhere = await api.createClub();
    const stranger = await elsewhere.signInAs('member');
    const { id } = (await stranger.post(under(path, stranger.memberId), draft).expect(201)).body;
    await officer.get(under(path, stranger.memberId)).expect(404);
    await officer.post(under(path, stranger.memberId), draft).expect(404);
    await officer.patch(under(`${path}/${id}`, stranger.memberId), edit, '"1"').expect(404);
    await officer
      .post(under(`${path}/${id}/verify`, stranger.memberId))
      .set('If-Match', '"1"')
      .expect(404);
    await officer.delete(under(`${path}/${id}`), '"1"').expect(404);
  });

  it('refuse unknown fields, the verification among them', async () => {
    await member.post(under(path), { ...draft, surprise: 1 }).expect(400);
    await member.post(under(path), { ...draft, verifiedBy: officer.memberId }).expect(400);
    const { id } = await create();
    await member
      .patch(
        under(`${path}/${id}`),
        { verified: { by: officer.memberId, at: '2026-01-01T00:00:00Z' } },
        '"1"',
      )
      .expect(400);
  });
});

describe('bad papers', () => {
  it.each<[path: string, values: object, field: string]>([
    ['certificates', { level: 'master', issuedOn: '2020-01-01' }, 'level'],
    ['certificates', { level: 'private', issuedOn: '2020-02-30' }, 'issuedOn'],
    ['certificates', { level: 'private', issuedOn: '2020-01-01', limitations: null }, 'limitations'],
    ['certificates', { level: 'private', issuedOn: '2020-01-01', limitations: [' '] }, 'limitations'],
    [
      'certificates',
      { level: 'private', issuedOn: '2020-01-01', ratings: [{ category: 'airplane' }] },
      'ratings[0].class',
    ],
    [
      'certificates',
      { level: 'private', issuedOn: '2020-01-01', ratings: [AIRPLANE_SEL, AIRPLANE_SEL] },
      'ratings',
    ],
    ['certificates', { level: 'private', issuedOn: '2020-01-01', typeRatings: ['a b'] }, 'typeRatings'],
    ['instructor-certificates', { issuedOn: '2020-01-01', ratings: [] }, 'ratings'],
    ['medicals', { class: 5, examOn: '2020-01-01' }, 'class'],
    ['medicals', { class: '3', examOn: '2020-01-01' }, 'class'],
    ['medicals', { class: 3, examOn: '2020-01-01', limitations: ['x\u0000'] }, 'limitations[0]'],
    ['basic-med', { lastApplicationDenied: 'no' }, 'lastApplicationDenied'],
    ['reviews', { kind: 'flight-review', reviewedOn: '2020-01-01', flightH: -1 }, 'flightH'],
    ['reviews', { kind: 'flight-review', reviewedOn: '2020-01-01', flightH: 1.25 }, 'flightH'],
    ['endorsements', { kind: 'tailwheel', endorsedOn: '2020-01-01', airfields: ['lower'] }, 'airfields'],
    ['endorsements', { kind: 'tailwheel', endorsedOn: '2020-01-01', givenBy: 'nobody' }, 'givenBy'],
    ['ratings', { kind: 'glider', issuedOn: '2020-01-01' }, 'kind'],
    ['ratings', { kind: 'night', issuedOn: '2020-13-01' }, 'issuedOn'],
  ])('%s %j', async (path, values, field) => {
    const { body } = await member.post(under(path), values).expect(400);
    expect(body.errors.map((e: { field: string }) => e.field)).toContain(field);
  });

  it.each<[path: string, values: object, code: string, field: string]>([
    [
      'certificates',
      { level: 'sport', issuedOn: '2020-01-01', validThrough: '2019-12-31' },
      'value-refused',
      'validThrough',
    ],
    [
      'endorsements',
      { kind: 'solo', endorsedOn: '2020-01-01', expiresOn: '2019-12-31' },
      'value-refused',
      'expiresOn',
    ],
    [
      'ratings',
      { kind: 'instrument', issuedOn: '2020-01-01', validThrough: '2019-12-31' },
      'value-refused',
      'validThrough',
    ],
    ['ratings', { kind: 'language', issuedOn: '2020-01-01' }, 'value-refused', 'designator'],
    [
      'ratings',
      { kind: 'night', designator: 'English', issuedOn: '2020-01-01' },
      'value-refused',
      'designator',
    ],
    // 14 CFR 61.5(b): helicopter is a class of rotorcraft, not of airplane.
    [
      'certificates',
      { level: 'private', issuedOn: '2020-01-01', ratings: [{ category: 'airplane', class: 'helicopter' }] },
      'class-does-not-fit',
      'ratings[0].class',
    ],
  ])('%s %j', async (path, values, code, field) => {
    const { body } = await member.post(under(path), values).expect(422);
    expect(body).toMatchObject({ code, errors: [{ field }] });
  });
});

describe('words', () => {
  it.each<[path: string, field: string, words: string[], rest: object]>([
    ['certificates', 'level', CERTIFICATE_LEVELS, { issuedOn: '2020-01-01' }],
    ['reviews', 'kind', REVIEW_KINDS, { reviewedOn: '2020-01-01' }],
    ['endorsements', 'kind', ENDORSEMENT_KINDS, { endorsedOn: '2020-01-01' }],
    ['ratings', 'kind', RATING_KINDS, { issuedOn: '2020-01-01' }],
  ])('that %s take as their %s are known to the database', async (path, field, words, rest) => {
    const named = (word: string) => path === 'ratings' && (word === 'type' || word === 'language');
    for (const word of words)
      await member
        .post(under(path), { ...rest, [field]: word, ...(named(word) && { designator: 'WREN' }) })
        .expect(201);
  });
});

describe('endorsements', () => {
  const draft = { kind: 'high-performance', endorsedOn: '2026-03-09' };

  it('that an instructor gives are signed and verified by that', async () => {
    const { body } = await instructor.post(under('endorsements'), draft).expect(201);
    expect(body).toMatchObject({ givenBy: instructor.memberId, verified: { by: instructor.memberId } });
  });

  it('that the member records name an instructor of the club or nobody, and wait for verification', async () => {
    const { body } = await member
      .post(under('endorsements'), { ...draft, givenBy: instructor.memberId })
      .expect(201);
    expect(body).toMatchObject({ givenBy: instructor.memberId, verified: null });
    const verified = await instructor
      .post(under(`endorsements/${body.id}/verify`))
      .set('If-Match', '"1"')
      .expect(200);
    expect(verified.body.verified.by).toBe(instructor.memberId);
    const stranger = await (await api.createClub()).createMember('instructor');
    for (const givenBy of [officer.memberId, member.memberId, stranger.memberId]) {
      const answer = await member.post(under('endorsements'), { ...draft, givenBy }).expect(422);
      expect(answer.body).toMatchObject({ code: 'not-an-instructor', errors: [{ field: 'givenBy' }] });
    }
  });

  it('in an instructor’s own log are not given by that instructor', async () => {
    const { body } = await instructor.post(under('endorsements', instructor.memberId), draft).expect(201);
    expect(body).toMatchObject({ givenBy: null, verified: null });
    await instructor
      .post(under('endorsements', instructor.memberId), { ...draft, givenBy: instructor.memberId })
      .expect(422);
    await instructor
      .post(under(`endorsements/${body.id}/verify`, instructor.memberId))
      .set('If-Match', '"1"')
      .expect(403);
  });

  it('are the only papers an instructor writes for others', async () => {
    await instructor.post(under('reviews'), { kind: 'flight-review', reviewedOn: '2026-03-01' }).expect(403);
    const { id } = (await member.post(under('medicals'), { class: 3, examOn: '2026-01-01' }).expect(201))
      .body;
    await instructor
      .post(under(`medicals/${id}/verify`))
      .set('If-Match', '"1"')
      .expect(403);
  });
});

describe.each([
  ['certificates', { level: 'private', issuedOn: '2019-06-01' }],
  ['instructor-certificates', { issuedOn: '2019-06-01', ratings: ['glider'] }],
])('suspensions of %s', (path, draft) => {
  it('are written by officers and shown with the certificate', async () => {
    const { id } = (await member.post(under(path), draft).expect(201)).body;
    const at = under(`${path}/${id}/suspensions`);
    const made = await officer.post(at, { from: '2026-01-05' }).expect(201);
    expect(made.body).toEqual({ id: expect.any(String), from: '2026-01-05', to: null, rowVersion: 1 });
    const ended = await officer.patch(`${at}/${made.body.id}`, { to: '2026-02-05' }, '"1"').expect(200);
    const shown = (await member.get(under(path))).body.items.find((item: { id: string }) => item.id === id);
    expect(shown.suspensions).toEqual([
      { id: made.body.id, from: '2026-01-05', to: '2026-02-05', rowVersion: 2 },
    ]);
    expect(
      (await officer.patch(`${at}/${made.body.id}`, { to: '2026-01-04' }, '"2"').expect(422)).body.errors[0]
        .field,
    ).toBe('to');
    await officer.patch(`${at}/${made.body.id}`, { to: null }, '"1"').expect(412);
    await member.post(at, { from: '2026-01-05' }).expect(403);
    await member.delete(`${at}/${made.body.id}`, ended.headers['etag']).expect(403);
    const other = (await member.post(under(path), draft).expect(201)).body;
    await officer.delete(under(`${path}/${other.id}/suspensions/${made.body.id}`), '"2"').expect(404);
    await officer.delete(`${at}/${made.body.id}`, '"2"').expect(204);
  });
});
