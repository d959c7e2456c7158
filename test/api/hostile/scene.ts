import type { Api, Session } from '../../support/api.js';
import { insertInto, readyClub } from '../../support/ready-club.js';
import { newId } from '../../../src/platform/ids.js';
import { ROLES, type Role } from '../../../src/accounts/roles.js';
import { PNG } from '../../fleet/pictures.js';
import { BODIES, type Ids } from './bodies.js';

/** A club with one of everything, made through the API with the sound bodies. */
export interface Scene {
  clubId: string;
  /** Has every role. */
  chief: Session;
  ids: Ids;
  /** One more person of each role, who has that role only and nothing to do with the records. */
  others: Record<Role, Session>;
  /** The identifier a path parameter of an operation stands for. */
  param(path: string, name: string): string;
}

/** Where in a path `{id}` stands, and what it is of. */
const ID_OF: [RegExp, string][] = [
  [/\/instructor-certificates\/\{certificateId\}\/suspensions\/\{id\}/, 'instructorSuspensionId'],
  [/\/certificates\/\{certificateId\}\/suspensions\/\{id\}/, 'suspensionId'],
  [/\/instructor-certificates\/\{id\}/, 'instructorCertificateId'],
  [/\/certificates\/\{id\}/, 'certificateId'],
  [/\/medicals\/\{id\}/, 'medicalId'],
  [/\/basic-med\/\{id\}/, 'basicMedId'],
  [/\/reviews\/\{id\}/, 'reviewId'],
  [/\/endorsements\/\{id\}/, 'endorsementId'],
  [/\/ratings\/\{id\}/, 'ratingId'],
  [/\/log\/\{id\}/, 'logEntryId'],
  [/\/checkouts\/\{id\}/, 'checkoutId'],
  [/\/practice\/\{id\}/, 'practiceId'],
  [/\/decisions\/\{id\}/, 'decisionId'],
  [/\/bookings\/\{id\}/, 'bookingId'],
  [/\/standing-answers\/\{bookingId\}/, 'bookingId'],
  [/\/displacements\/\{id\}/, 'displacementId'],
  [/\/standby\/\{id\}/, 'standbyId'],
];

/** Builds it. The member in `ids` is nobody's session. */
export async function hostileScene(api: Api): Promise<Scene> {
  const ready = await readyClub(api);
  const { club, aircraftId, airfieldId, modelId } = ready;
  const chief = await club.signInAs([...ROLES], { name: 'Chris Chief' });
  const instructor = await club.signInAs('instructor', { name: 'Ines Structor' });
  await ready.makePilot(instructor.memberId);
  await insertInto(api.sql, club.clubId)('instructor_certificates', {
    ...{ id: newId(), member_id: instructor.memberId, issued_on: '2020-05-01' },
    ...{ ratings: ['airplane-single-engine'], recent_experience_on: '2025-06-01' },
    ...{ verified_by: chief.memberId, verified_at: '2026-01-02T00:00:00Z' },
  });
  await api.sql("UPDATE certificates SET level = 'commercial' WHERE member_id = $1", [instructor.memberId]);
  const learner = await club.createMember('member', { name: 'Lee Learner' });
  await ready.makePilot(learner.memberId);

  const others = {} as Record<Role, Session>;
  for (const role of ROLES) others[role] = await club.signInAs(role, { name: `Only ${role}` });

  const ids: Ids = { aircraftId, airfieldId, modelId };
  Object.assign(ids, { memberId: learner.memberId, instructorMemberId: instructor.memberId });
  const lineOf = new Map<string, string>();
  const make = async (name: string, path: string, operation: string, by = chief): Promise<string> => {
    const answer = await by.post(path, BODIES[operation]!(ids)).set('Idempotency-Key', newId());
    if (answer.status >= 300)
      throw new Error(
        `${operation}: ${answer.status} ${JSON.stringify((answer.body as { errors?: unknown }).errors ?? answer.body)}`,
      );
    const body = answer.body as {
      id?: string;
      changeId?: string;
      directive?: { id: string };
      order?: { id: string; lines: { id: string }[] };
      decisions?: { id: string }[];
    };
    if (body.directive) return (ids[name] = body.directive.id);
    if (body.order) lineOf.set(body.order.id, body.order.lines[0]!.id);
    return (ids[name] = body.id ?? body.changeId ?? body.order?.id ?? body.decisions![0]!.id);
  };
  const fleet = `/aircraft/${aircraftId}`;
  const own = `/members/${learner.memberId}`;
  await make('spareAirfieldId', '/airfields', 'addAirfield');
  await make('runwayId', `/airfields/${airfieldId}/runways`, 'addRunway');
  await make('valueId', '/policy/values', 'addPolicyValue');
  await make('ruleId', '/club-rules', 'addClubRule');
  await chief.post(`/club-rules/${ids.ruleId}/dry-run`).expect(200);
  await make('spareModelId', '/models', 'addModel');
  await make('spareAircraftId', '/aircraft', 'addAircraft');
  await make('equipmentId', `${fleet}/equipment`, 'addEquipmentPiece');
  await make('spareEquipmentId', `${fleet}/equipment`, 'addEquipmentPiece');
  await make('changeId', `${fleet}/equipment-changes`, 'makeEquipmentChange');
  await make('spareEquipmentId', `${fleet}/equipment`, 'addEquipmentPiece');
  await make('readingId', `${fleet}/meters/readings`, 'addReading');
  await make('itemId', `${fleet}/items`, 'addAirworthinessItem');
  await make('complianceId', `${fleet}/items/${ids.itemId}/compliances`, 'addCompliance');
  await make('weighingId', `${fleet}/weighings`, 'addWeighing');
  await make('termsId', `${fleet}/insurance`, 'addInsurance');
  await make('modelLoadingId', `/models/${modelId}/loading`, 'addModelLoading');
  await make('aircraftLoadingId', `${fleet}/loading`, 'addAircraftLoading');
  await make('modelPerformanceId', `/models/${modelId}/performance`, 'addModelPerformance');
  await make('aircraftPerformanceId', `${fleet}/performance`, 'addAircraftPerformance');
  await make('directiveId', '/directives', 'addDirective');
  await make('templateId', '/item-templates', 'addTemplate');
  await make('wishId', `${fleet}/wishes`, 'addWish');
  await make('registrationId', `${fleet}/registrations`, 'addRegistration');
  await make('permitId', `${fleet}/permits`, 'addPermit');
  await make('differenceId', `${fleet}/differences`, 'addDifference');
  await make('fixedSquawkId', `${fleet}/squawks`, 'reportSquawk');
  await make('fixedSquawkId', `${fleet}/squawks/${ids.fixedSquawkId}/fix`, 'fixSquawk');
  await make('clearedSquawkId', `${fleet}/squawks`, 'reportSquawk');
  await make('clearedSquawkId', `${fleet}/squawks/${ids.clearedSquawkId}/no-fault-found`, 'clearSquawk');
  await make('keptSquawkId', `${fleet}/squawks`, 'reportSquawk');
  await make('squawkId', `${fleet}/squawks`, 'reportSquawk');
  const photo = await api.http
    .post(`/api/v1${fleet}/squawks/${ids.squawkId}/attachments`)
    .set('Authorization', `Bearer ${chief.token}`)
    .attach('photo', PNG, 'photo.png')
    .expect(201);
  ids.attachmentId = (photo.body as { id: string }).id;
  await make('deferralSquawkId', `${fleet}/squawks/${ids.squawkId}/defer`, 'deferSquawk');
  await make('newMemberId', '/members', 'createMember');
  await make('accountId', `${own}/account`, 'createAccount');
  await make('certificateId', `${own}/certificates`, 'createCertificate');
  await make('suspensionId', `${own}/certificates/${ids.certificateId}/suspensions`, 'suspendCertificate');
  await chief
    .patch(
      `${own}/certificates/${ids.certificateId}/suspensions/${ids.suspensionId}`,
      BODIES['updateCertificateSuspension']!(ids),
      '"1"',
    )
    .expect(200);
  await make('instructorCertificateId', `${own}/instructor-certificates`, 'createInstructorCertificate');
  await make(
    'instructorSuspensionId',
    `${own}/instructor-certificates/${ids.instructorCertificateId}/suspensions`,
    'suspendInstructorCertificate',
  );
  await make('medicalId', `${own}/medicals`, 'createMedical');
  ids.kind = 'medicals';
  ids.paperId = ids.medicalId!;
  const scan = await api.http
    .post(`/api/v1${own}/documents/medicals/${ids.medicalId}`)
    .set('Authorization', `Bearer ${chief.token}`)
    .attach('document', PNG, 'scan.png')
    .expect(201);
  ids.documentId = (scan.body as { id: string }).id;
  await make('basicMedId', `${own}/basic-med`, 'createBasicMed');
  await make('reviewId', `${own}/reviews`, 'createReview');
  await make('endorsementId', `${own}/endorsements`, 'createEndorsement');
  await make('ratingId', `${own}/ratings`, 'createRating');
  await make('logEntryId', `${own}/log`, 'createLogEntry');
  ids.importId = await importedFile(api, `/api/v1${own}/log/import`, chief);
  await make('practiceId', `${own}/practice`, 'addPractice');
  await make('checkoutId', `${own}/checkouts`, 'signCheckout');
  await checkoutsLaidDown({ chief, memberId: learner.memberId, ids, make });
  await make('checkId', `${own}/checks`, 'recordMemberCheck');
  await make('decisionId', '/decisions', 'ask');
  ids.bookedDay = '2026-03-13';
  await make('bookingId', '/bookings', 'book');
  await make('blockId', '/bookings/blocks', 'blockAircraft');
  // Visits to the shop in each state; the first makes a flight give way.
  ids.bookedDay = '2026-03-16';
  await make('displacedId', '/bookings', 'book');
  await make('orderId', `${fleet}/work-orders`, 'planWorkOrder');
  ids.lineId = lineOf.get(ids.orderId!)!;
  delete ids.bookedDay;
  const displaced = await api.sql<{ id: string }>(
    'SELECT id FROM displacements WHERE club_id = $1 AND member_id = $2',
    [club.clubId, learner.memberId],
  );
  ids.displacementId = displaced[0]!.id;
  await make('standbyId', '/standby', 'goOnStandby');
  ids.offerId = newId();
  await insertInto(api.sql, club.clubId)('standby_offers', {
    ...{ id: ids.offerId, entry_id: ids.standbyId, member_id: chief.memberId, aircraft_id: aircraftId },
    ...{ during: '[2026-03-17 18:00Z,2026-03-17 20:00Z)', holds: false, decision_id: ids.decisionId },
    ...{ made_at: '2026-03-10T15:00:00Z', expires_at: '2026-03-17T18:00:00Z' },
  });
  const kept = await chief
    .post(`/members/${instructor.memberId}/teaching-hours`, BODIES['addTeachingHours']!(ids))
    .expect(201);
  ids.hoursId = (kept.body as { items: { id: string }[] }).items[0]!.id;
  // Whose flight was displaced was told so.
  const [told] = await api.sql<{ id: string }>(
    'SELECT id FROM notices WHERE club_id = $1 AND member_id = $2',
    [club.clubId, learner.memberId],
  );
  Object.assign(ids, { noticeId: told!.id, mailId: newId(), feedId: newId() });
  await insertInto(api.sql, club.clubId)('notice_mails', {
    ...{ id: ids.mailId, member_id: learner.memberId, digest: false, state: 'given-up', attempts: 8 },
    ...{ due_at: '2026-03-10T12:00:00Z', fault: '550 No such mailbox' },
  });
  await insertInto(api.sql, club.clubId)('calendar_feeds', {
    ...{ id: ids.feedId, member_id: learner.memberId, shows: 'own', title: 'My flights' },
    token_hash: 'c'.repeat(64),
  });
  await make('signerId', '/signers', 'addSigner');
  const visit = { title: 'Trim cables', lines: [] };
  for (const name of ['signedOrderId', 'inWorkOrderId']) {
    const planned = await chief.post(`${fleet}/work-orders`, visit).expect(201);
    ids[name] = (planned.body as { order: { id: string } }).order.id;
    await chief.post(`${fleet}/work-orders/${ids[name]}/begin`, {}).expect(200);
    if (name === 'signedOrderId')
      await chief
        .post(`${fleet}/work-orders/${ids[name]}/return-to-service`, BODIES['returnToService']!(ids))
        .expect(200);
  }
  await make('reportId', '/safety-reports', 'fileSafetyReport');
  await make('stepId', `/safety-reports/${ids.reportId}/steps`, 'addSafetyStep');
  const inConfidence = { ...BODIES['fileSafetyReport']!(ids), confidential: true };
  ids.receipt = (
    (await chief.post('/safety-reports', inConfidence).expect(201)).body as { receipt: string }
  ).receipt;
  ids.overrideId = newId();
  await insertInto(api.sql, club.clubId)('overrides', {
    ...{ id: ids.overrideId, booking_id: ids.bookingId, decision_id: ids.decisionId, weight: 'club' },
    ...{ rule_id: 'club.booking-lead', officer_id: chief.memberId, reason: 'Agreed on the telephone' },
  });
  // What is decided is sealed soon after: now, so that nothing is written later.
  await chief.post('/audit/seal').expect(200);
  return {
    clubId: club.clubId,
    chief,
    ids,
    others,
    param: (path, name) => {
      const known = name === 'id' ? ID_OF.find(([where]) => where.test(path))?.[1] : parameterOf(path, name);
      const id = known === undefined ? undefined : ids[known];
      if (id === undefined) throw new Error(`the scene has nothing for {${name}} of ${path}`);
      return id;
    },
  };
}

/** A checkout laid down and published, a question, the chief's own quiz, and an item that is not to standard yet. */
async function checkoutsLaidDown(of: {
  chief: Session;
  memberId: string;
  ids: Ids;
  make: (name: string, path: string, operation: string) => Promise<string>;
}): Promise<void> {
  const { chief, memberId, ids, make } = of;
  const asked = {
    ...BODIES['addRequirement']!(ids),
    condition: 'night',
    quiz: { questions: 1, passPercent: 100 },
  };
  const added = (await chief.post('/checkout-requirements', asked).expect(201)).body as { id: string };
  const base = `/checkout-requirements/${added.id}`;
  await make('questionId', `${base}/questions`, 'addQuestion');
  await chief.patch(`/checkout-questions/${ids.questionId}`, { state: 'published' }, '"1"').expect(200);
  const published = await chief.post(`${base}/publish`).set('If-Match', '"1"').expect(200);
  ids.itemToSignId = (published.body as { inForce: { items: { id: string }[] } }).inForce.items[0]!.id;
  ids.attemptId = ((await chief.post(`${base}/quiz`).expect(201)).body as { id: string }).id;
  // Edits are tried on one that nobody has touched since.
  ids.requirementId = (
    await chief
      .post('/checkout-requirements', { ...asked, condition: 'high-crosswind', quiz: null })
      .expect(201)
  ).body.id as string;
  await make('markId', `/members/${memberId}/checkout-marks`, 'signCheckoutItem');
}

/** A file of one flight, taken over. */
async function importedFile(api: Api, path: string, { token }: Session): Promise<string> {
  const post = (to: string) =>
    api.http.post(to).set('Authorization', `Bearer ${token}`).set('Idempotency-Key', newId());
  const file = Buffer.from('Date,Registration,Class,Tailwheel,Total\n2026-01-05,N-77,SEL,no,1.1');
  const choices = JSON.stringify({ role: 'solo' });
  const lines = await post(`${path}/preview`)
    .field('choices', choices)
    .attach('file', file, 'log.csv')
    .buffer(true)
    .parse((response, done) => {
      let text = '';
      response.on('data', (part: Buffer) => (text += part.toString()));
      response.on('end', () => done(null, text));
    });
  const { preview } = JSON.parse(String(lines.body).trim().split('\n').at(-1)!) as { preview: string };
  const taken = await post(path)
    .field('choices', choices)
    .field('preview', preview)
    .attach('file', file, 'log.csv')
    .expect(201);
  return (taken.body as { id: string }).id;
}

/** Which identifier a named parameter is: a certificate's below instructor-certificates is another. */
const parameterOf = (path: string, name: string): string => {
  if (name === 'memberId' && path.includes('/teaching-hours')) return 'instructorMemberId';
  if (name === 'certificateId' && path.includes('/instructor-certificates/'))
    return 'instructorCertificateId';
  if (name === 'orderId' && path.includes('/return-to-service')) return 'inWorkOrderId';
  return name === 'orderId' && path.includes('/check-flight') ? 'signedOrderId' : name;
};

/** What every table of a club holds, as digests: equal digests, nothing written. */
export async function contentsOf(api: Api, clubIds: string[]): Promise<Record<string, string>> {
  const tables = await api.sql<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'club_id'
      WHERE c.relkind IN ('r', 'p') AND c.relnamespace = 'public'::regnamespace ORDER BY 1`,
  );
  if (tables.length < 20) throw new Error('the tables of the clubs were not found');
  const found: Record<string, string> = {};
  for (const { name } of tables) {
    const [row] = await api.sql<{ digest: string }>(
      `SELECT count(*) || ' rows ' || md5(coalesce(string_agg(t::text, '|' ORDER BY t::text), '')) AS digest
         FROM ${name} t WHERE club_id = ANY ($1::uuid[])`,
      [clubIds],
    );
    found[name] = row!.digest;
  }
  return found;
}
