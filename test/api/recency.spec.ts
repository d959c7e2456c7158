/** What lapses next of one person, as of any day, with the entries counted for it. */
import { startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import { teach } from '../support/teach.js';

interface Requirement {
  rule: string;
  flights: string[];
  aircraft: string[] | null;
  holds: boolean;
  status: string;
  says: string;
  lapsesOn: string | null;
  inDays: number | null;
  lapseSays: string | null;
  counted: { id: string }[];
  entryIds: string[];
}
interface Recency {
  on: string;
  through: string;
  requirements: Requirement[];
  caution: string;
}

let api: Api;
let ready: ReadyClub;
const DAY = 'recency.passengers.day';
const NIGHT = 'recency.passengers.night';

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
}, 60_000);
afterAll(() => api.stop());

const read = async (query = '', who = ready.member): Promise<Recency> =>
  (await who.get(`/members/${ready.member.memberId}/recency${query}`).expect(200)).body as Recency;
const of = ({ requirements }: Recency, rule: string, flight = 'day-passengers'): Requirement => {
  const found = requirements.filter((one) => one.rule === rule && one.flights.includes(flight));
  expect(found).toHaveLength(1);
  return found[0]!;
};

// 14 CFR 61.57(a)(1): three take-offs and landings "within the preceding 90 days". Flown on 20 February 2026, they count
// up to 21 May. (b): at night none are on record.
it('says when the landings for passengers lapse, and opens them', async () => {
  const recency = await read();
  expect(recency).toMatchObject({ on: '2026-03-10', through: '2027-03-11' });
  expect(recency.caution).toContain('pilot in command decides');
  const day = of(recency, DAY);
  expect(day).toMatchObject({
    holds: true,
    status: 'met',
    lapsesOn: '2026-05-22',
    inDays: 73,
    aircraft: null,
  });
  expect(day.entryIds).toHaveLength(1);
  expect(day.flights).toContain('day-passengers');
  expect(day.flights).not.toContain('day-solo');
  const opened = await ready.member
    .get(`/members/${ready.member.memberId}/log?ids=${day.entryIds.join(',')}`)
    .expect(200);
  expect((opened.body as { items: { flownOn: string; landings: number }[] }).items).toEqual([
    expect.objectContaining({ flownOn: '2026-02-20', landings: 3 }),
  ]);
  expect(of(recency, NIGHT, 'night-passengers')).toMatchObject({
    holds: false,
    lapsesOn: null,
    entryIds: [],
    flights: ['night-passengers'],
  });
});

it('puts what lapses first, soonest before later, then what does not hold, then what lasts', async () => {
  const { requirements } = await read();
  const ranks = requirements.map(({ lapsesOn, holds }) => (lapsesOn !== null ? 0 : holds ? 2 : 1));
  expect(ranks).toEqual([...ranks].sort());
  const days = requirements.flatMap(({ lapsesOn }) => lapsesOn ?? []);
  expect(days).toEqual([...days].sort());
  expect(days.length).toBeGreaterThanOrEqual(3);
});

it('agrees with decisions the day before each lapse and on it', async () => {
  const { requirements } = await read('?flight=day-passengers');
  const statusOn = async (day: string, rule: string): Promise<string> => {
    const { body } = await ready.member
      .post('/decisions', {
        ...{ aircraftIds: [ready.aircraftId], purpose: 'passengers', personsOnBoard: 2 },
        ...{ departs: `${day}T18:00:00Z`, arrives: `${day}T19:00:00Z` },
      })
      .expect(200);
    const { findings } = (body as { decisions: { findings: { rule: string; status: string }[] }[] })
      .decisions[0]!;
    return findings.find((finding) => finding.rule === rule)!.status;
  };
  const lapsing = requirements.filter(({ lapsesOn }) => lapsesOn !== null && lapsesOn > '2026-03-11');
  expect(lapsing.length).toBeGreaterThanOrEqual(3);
  for (const { rule, lapsesOn } of lapsing) {
    const before = new Date(Date.parse(lapsesOn!) - 86_400_000).toISOString().slice(0, 10);
    expect([rule, lapsesOn, await statusOn(before, rule)]).toEqual([rule, lapsesOn, 'met']);
    expect([rule, lapsesOn, await statusOn(lapsesOn!, rule)]).not.toEqual([rule, lapsesOn, 'met']);
  }
});

it('answers for another day: later ones with what is on record, earlier ones with what was flown by then', async () => {
  expect(of(await read('?on=2026-05-21'), DAY)).toMatchObject({
    holds: true,
    lapsesOn: '2026-05-22',
    inDays: 1,
  });
  expect(of(await read('?on=2026-05-22'), DAY)).toMatchObject({ holds: false, lapsesOn: null });
  expect(of(await read('?on=2026-02-20'), DAY)).toMatchObject({ holds: true, lapsesOn: '2026-05-22' });
  // The day before the flight it was not flown yet.
  expect(of(await read('?on=2026-02-19'), DAY)).toMatchObject({ holds: false, entryIds: [], counted: [] });
  // Long before anything that is gathered for today.
  await api.sql(
    `INSERT INTO log_entries (club_id, id, member_id, aircraft_words, category, class, tailwheel, departed_at, arrived_at, flown_on,
       from_airfield, to_airfield, role, sole_manipulator, takeoffs, landings, full_stop_landings, night_takeoffs,
       night_full_stop_landings, total_tenths)
     SELECT club_id, gen_random_uuid(), member_id, aircraft_words, category, class, tailwheel, '2019-05-01T18:00:00Z',
       '2019-05-01T19:00:00Z', '2019-05-01', from_airfield, to_airfield, role, true, 3, 3, 3, 0, 0, 10
       FROM log_entries WHERE member_id = $1`,
    [ready.member.memberId],
  );
  expect(of(await read('?on=2019-05-02'), DAY)).toMatchObject({ holds: true, lapsesOn: '2019-07-31' });
});

it('of a day farther ahead than bookings are taken: what is needed is asked ahead, and nothing can be booked that way', async () => {
  const flight = {
    ...{ departs: '2026-07-14T18:00:00Z', arrives: '2026-07-14T19:00:00Z', purpose: 'passengers' },
    ...{ personsOnBoard: 4, aircraftIds: [ready.aircraftId] },
  };
  const lead = async (more: object): Promise<string | undefined> => {
    const { body } = await ready.member.post('/decisions', { ...flight, ...more }).expect(200);
    const [{ findings }] = (body as { decisions: { findings: { rule: string; status: string }[] }[] })
      .decisions as [{ findings: { rule: string; status: string }[] }];
    return findings.find(({ rule }) => rule === 'club.booking_lead')?.status;
  };
  expect(await lead({})).toBe('short');
  expect(await lead({ planned: true })).toBe('not-applicable');
  const { aircraftIds: _, ...one } = flight;
  await ready.member
    .post('/bookings', { ...one, aircraftId: ready.aircraftId, planned: true })
    .set('Idempotency-Key', 'ahead')
    .expect(400);
});

it('is for the member and those who read records, and names a day it cannot answer for', async () => {
  const instructor = await ready.club.signInAs('instructor');
  const { memberId } = ready.member;
  await instructor.get(`/members/${memberId}/recency`).expect(403);
  await teach(api, { clubId: ready.club.clubId, instructorId: instructor.memberId, memberId });
  expect(of(await read('', instructor), DAY).lapsesOn).toBe('2026-05-22');
  const other = await ready.club.signInAs('member');
  await other.get(`/members/${ready.member.memberId}/recency`).expect(403);
  const at = `/members/${ready.member.memberId}/recency`;
  for (const [on, status] of [
    ['2050-01-01', 422],
    ['soon', 400],
  ] as const) {
    const { body } = await ready.member.get(`${at}?on=${on}`).expect(status);
    expect((body as { errors: { field: string }[] }).errors.map(({ field }) => field)).toEqual(['on']);
  }
  await ready.member.get(`${at}?on=1970-01-01`).expect(200);
  await ready.member.get(`${at}?flight=balloon`).expect(400);
});
