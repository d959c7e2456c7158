/** A European and a Canadian club enter their own kinds of papers over the API, and are judged by them. */
import { startApi, type Api } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

const KEPT_UNDER = 'club.airworthiness.kept-under';
const PAPER = 'Maintenance programme MP-7, revision 3';
const AIRPLANE_SEL = { category: 'airplane', class: 'single-engine-land' };
const ENGLISH = { kind: 'language', designator: 'English', issuedOn: '2024-06-20' };
const alone = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

interface Finding {
  rule: string;
  status: string;
  weight: string;
  says: string;
  conditions: string[];
}
interface Decided {
  answer: string;
  conditions: string[];
  findings: Finding[];
}

let api: Api;
beforeAll(async () => {
  api = await startApi();
}, 60_000);
afterAll(() => api.stop());

/** A club of a country, its officer, and a pilot without papers who is signed off on the aircraft. */
async function scene(jurisdiction: 'EU' | 'CA') {
  const ready = await readyClub(api, { jurisdiction });
  const pilot = await ready.club.signInAs('member', { birthDate: '1990-05-17' });
  await ready.signOff(pilot.memberId);
  return { ready, pilot, officer: await ready.club.signInAs(['safety-officer', 'administrator']) };
}

/** The pilot writes a paper and the officer verifies it. */
async function enter(pilot: Session, officer: Session, path: string, paper: object): Promise<void> {
  const at = `/members/${pilot.memberId}/${path}`;
  const { body } = await pilot.post(at, paper).expect(201);
  await officer.post(`${at}/${body.id}/verify`).set('If-Match', '"1"').expect(200);
}

const ask = async (pilot: Session, ready: ReadyClub, flight: object = alone): Promise<Decided> =>
  (await pilot.post('/decisions', { ...flight, aircraftIds: [ready.aircraftId] }).expect(200)).body
    .decisions[0] as Decided;

/** Rules that stand in the way and are no matter of the day. */
const blocking = ({ findings }: Decided): string[] =>
  findings
    .filter(
      ({ weight, status, conditions }) =>
        weight !== 'advice' && ['short', 'unknown', 'error'].includes(status) && conditions.length === 0,
    )
    .map(({ rule }) => rule)
    .sort();

const finding = ({ findings }: Decided, id: string): Finding => findings.find(({ rule }) => rule === id)!;

async function keepUnder(officer: Session): Promise<void> {
  await officer
    .post('/policy/values', {
      parameterId: KEPT_UNDER,
      validFrom: '2026-03-10',
      value: PAPER,
      reference: 'Committee minutes of 9 March 2026',
    })
    .expect(201);
}

describe('a European club', () => {
  let of: Awaited<ReturnType<typeof scene>>;
  beforeAll(async () => {
    of = await scene('EU');
  });

  test('refuses a member without licence, rating and medical, and an aircraft kept under no paper', async () => {
    const decided = await ask(of.pilot, of.ready);
    expect(decided.answer).toBe('no');
    expect(blocking(decided)).toEqual(
      expect.arrayContaining(['certificate.easa.licence', 'law.easa.airworthiness']),
    );
    expect(finding(decided, 'law.easa.airworthiness').says).toContain('names no paper');
  });

  test('counts a class rating and a class 2 medical certificate once they are verified', async () => {
    const { pilot, officer, ready } = of;
    await enter(pilot, officer, 'certificates', {
      level: 'private',
      issuedOn: '2019-06-01',
      ratings: [AIRPLANE_SEL],
    });
    await enter(pilot, officer, 'medicals', { class: 2, examOn: '2025-06-10' });
    const at = `/members/${pilot.memberId}/ratings`;
    const rating = { kind: 'single-engine-piston-land', issuedOn: '2024-06-20', validThrough: '2026-06-30' };
    const { body } = await pilot.post(at, rating).expect(201);
    expect(blocking(await ask(pilot, ready))).toEqual([
      'language.easa.proficiency',
      'law.easa.airworthiness',
      'rating.easa.class',
    ]);
    await officer.post(`${at}/${body.id}/verify`).set('If-Match', '"1"').expect(200);
    await enter(pilot, officer, 'ratings', ENGLISH);
    const decided = await ask(pilot, ready);
    expect(blocking(decided)).toEqual(['law.easa.airworthiness']);
    expect(finding(decided, 'rating.easa.class')).toMatchObject({ status: 'met' });
    expect(decided.answer).toBe('no');
  });

  test('says yes with conditions once the paper for the aircraft is recorded, never a plain yes', async () => {
    const { pilot, officer, ready } = of;
    await keepUnder(officer);
    const decided = await ask(pilot, ready);
    expect(blocking(decided)).toEqual([]);
    expect(decided.answer).toBe('yes-with-conditions');
    expect(decided.conditions.join(' ')).toContain(PAPER);
  });

  test('asks by night for a night rating, and takes one', async () => {
    const { pilot, officer, ready } = of;
    const night = { ...alone, departs: '2026-03-12T02:00:00Z', arrives: '2026-03-12T03:00:00Z' };
    expect(blocking(await ask(pilot, ready, night))).toContain('rating.easa.night');
    await enter(pilot, officer, 'ratings', { kind: 'night', issuedOn: '2022-02-01' });
    expect(blocking(await ask(pilot, ready, night))).not.toContain('rating.easa.night');
  });

  test('ends with the rating', async () => {
    const { pilot, ready } = of;
    const late = { ...alone, departs: '2026-07-01T18:00:00Z', arrives: '2026-07-01T19:00:00Z' };
    expect(finding(await ask(pilot, ready, late), 'rating.easa.class')).toMatchObject({ status: 'short' });
  });

  test('takes a light aircraft licence with its medical certificate', async () => {
    const { officer, ready } = of;
    const pilot = await ready.club.signInAs('member', { birthDate: '1990-05-17' });
    await ready.signOff(pilot.memberId);
    await enter(pilot, officer, 'certificates', {
      level: 'lapl',
      issuedOn: '2024-06-01',
      ratings: [AIRPLANE_SEL],
    });
    await enter(pilot, officer, 'reviews', { kind: 'proficiency-check', reviewedOn: '2025-09-01' });
    await enter(pilot, officer, 'ratings', ENGLISH);
    expect(blocking(await ask(pilot, ready))).toEqual(['medical.easa.certificate']);
    await enter(pilot, officer, 'medicals', { class: 4, examOn: '2024-05-02' });
    const decided = await ask(pilot, ready);
    expect(blocking(decided)).toEqual([]);
    expect(decided.answer).toBe('yes-with-conditions');
  });
});

describe('a Canadian club', () => {
  let of: Awaited<ReturnType<typeof scene>>;
  beforeAll(async () => {
    of = await scene('CA');
  });

  test('refuses a member without papers, and an aircraft kept under no paper', async () => {
    const decided = await ask(of.pilot, of.ready);
    expect(decided.answer).toBe('no');
    expect(blocking(decided)).toEqual(
      expect.arrayContaining(['certificate.canada.licence', 'law.canada.airworthiness']),
    );
  });

  test('takes a recreational permit, a category 4 certificate and a safety seminar', async () => {
    const { pilot, officer, ready } = of;
    await keepUnder(officer);
    await enter(pilot, officer, 'certificates', {
      level: 'recreational',
      issuedOn: '2022-06-01',
      ratings: [AIRPLANE_SEL],
    });
    await enter(pilot, officer, 'reviews', { kind: 'safety-seminar', reviewedOn: '2025-04-10' });
    expect(blocking(await ask(pilot, ready))).toEqual(['medical.canada.certificate']);
    await enter(pilot, officer, 'medicals', { class: 4, examOn: '2024-05-02' });
    const decided = await ask(pilot, ready);
    expect(blocking(decided)).toEqual([]);
    expect(decided.answer).toBe('yes-with-conditions');
    expect(decided.conditions.join(' ')).toContain(PAPER);
    expect(finding(decided, 'recency.canada.recurrent_24_months')).toMatchObject({ status: 'met' });
  });

  test('and asks for recurrent training again after 24 months', async () => {
    const { pilot, ready } = of;
    const late = { ...alone, departs: '2027-05-03T18:00:00Z', arrives: '2027-05-03T19:00:00Z' };
    expect(blocking(await ask(pilot, ready, late))).toContain('recency.canada.recurrent_24_months');
  });
});
