/** Notices from the thing that happens to the message in the mailbox, over a real SMTP server on loopback. */
import type { EntityManager } from 'typeorm';
import { Deliveries } from '../../src/notices/outbox/deliver.js';
import { NoticesWorker } from '../../src/notices/notices.worker.js';
import { postNotice } from '../../src/notices/outbox/post-notice.js';
import { LapseReminders } from '../../src/notices/reminders/lapse-reminders.js';
import { MaintenanceWarnings } from '../../src/notices/reminders/maintenance-warnings.js';
import { TenantDb } from '../../src/platform/database/tenant.js';
import { newId } from '../../src/platform/ids.js';
import { rejudgeClub } from '../../src/standing/rejudge.js';
import { startMailServer, type MailServer } from '../notices/mail-server.js';
import { NOW, startApi, type Api, type Session } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';

jest.setTimeout(300_000);

let mail: MailServer;
let api: Api;
let ready: ReadyClub;
let officer: Session;

beforeAll(async () => {
  mail = await startMailServer();
  api = await startApi({
    settings: {
      ...{ smtpUrl: mail.url, mailFrom: 'Larkfield office <office@larkfield.example>' },
      publicUrl: 'https://club.example',
    },
  });
  ready = await readyClub(api);
  officer = await ready.club.signInAs('safety-officer', { name: 'Ola Officer' });
}, 300_000);
afterAll(async () => {
  await api?.stop();
  await mail?.stop();
});
beforeEach(() => {
  mail.mood = 'willing';
  mail.taken.length = 0;
  mail.asked.length = 0;
});

const workOff = (): Promise<void> => api.app.get(NoticesWorker).workOff(ready.club.clubId);
const inClub = <T>(work: (em: EntityManager) => Promise<T>): Promise<T> =>
  api.app.get(TenantDb).run(ready.club.clubId, work);
const rejudge = () => rejudgeClub(api.app.get(TenantDb), ready.club.clubId, () => api.clock.now());
const noticesOf = async (who: Session) =>
  (await who.get('/notices').expect(200)).body as {
    unread: number;
    items: {
      id: string;
      kind: string;
      heading: string;
      mail: string;
      readAt: string | null;
      items: { title: string; says: string[]; ways: string[] }[];
    }[];
  };
/** Tells a member of something, and lets it gather. */
const tell = async (
  memberId: string,
  cause: string,
  kind: 'lapse' | 'flight-answer' = 'lapse',
  urgent = false,
) => {
  const items = [{ key: cause, title: `Told of ${cause}`, says: ['It lapses on 2026-04-01.'], link: '/log' }];
  await inClub((em) =>
    postNotice(em, { kind, cause, at: api.clock.now(), to: [{ memberId, items, urgent }] }),
  );
};
const pilot = async (name: string): Promise<Session> => {
  const who = await ready.club.signInAs('member', { name });
  await ready.makePilot(who.memberId);
  return who;
};

describe('one event', () => {
  it('that touches 40 bookings of four people is one message for each of them', async () => {
    api.clock.set(NOW);
    const people = [
      ready.member,
      await pilot('Ann Aloft'),
      await pilot('Ben Beyond'),
      await pilot('Cy Cirrus'),
    ];
    for (const [index, who] of people.entries()) {
      const day = `2026-03-${14 + index}`;
      const asked = {
        departs: `${day}T18:00:00Z`,
        arrives: `${day}T19:00:00Z`,
        purpose: 'solo',
        personsOnBoard: 1,
      };
      await who
        .post('/bookings', { ...asked, aircraftId: ready.aircraftId })
        .set('Idempotency-Key', newId())
        .expect(201);
      await nineMoreLike(who.memberId);
    }
    // Judged for the first time nobody is told anything: nothing has changed.
    expect(await rejudge()).toMatchObject({ judged: 40, changed: 0 });
    await insertInto(api.sql, ready.club.clubId)('squawks', {
      ...{ id: newId(), aircraft_id: ready.aircraftId, title: 'Fuel leak', state: 'grounding' },
      ...{ reported_at: '2026-03-10T15:00:00Z', reported_by: officer.memberId },
    });
    expect(await rejudge()).toMatchObject({ judged: 40, changed: 40 });
    const [before] = (await noticesOf(ready.member)).items;
    expect(before).toMatchObject({ kind: 'flight-answer', mail: 'gathering', readAt: null });
    // It gathers for a while, and nothing goes out.
    await workOff();
    expect(mail.taken).toEqual([]);

    api.clock.set('2026-03-10T15:03:00Z');
    await workOff();
    expect(mail.asked.sort()).toEqual(people.map(({ email }) => email).sort());
    expect(mail.taken).toHaveLength(4);
    const [one] = mail.taken;
    expect(one!.subject).toContain('10 booked flights of yours are answered otherwise now');
    expect(one!.from?.text).toBe('"Larkfield office" <office@larkfield.example>');
    expect(one!.headers.get('list')).toMatchObject({
      unsubscribe: { url: 'https://club.example/notices#mail' },
    });
    expect(one!.text).toContain('It was answered “Yes, if”, and is answered “No” now.');
    expect(one!.text).toMatch(/It follows a change of .*squawks/);
    // A busy machine may stop the search for ways, and then the message says that it did.
    expect(one!.text).toMatch(/What would make it a yes:|stopped at its limit/);
    expect(one!.text).toContain('The pilot in command decides');
    const told = await noticesOf(ready.member);
    expect(told.items[0]!.items).toHaveLength(10);
    const [first] = told.items[0]!.items;
    expect([...first!.ways, ...first!.says].join(' ')).toMatch(/Have repaired|stopped at its limit/);
    expect(told.items[0]).toMatchObject({ mail: 'sent' });
    // Done once, nothing is left to do.
    await workOff();
    expect(mail.taken).toHaveLength(4);
  });

  it('that is undone before it was told of is not told of', async () => {
    api.clock.set('2026-03-10T16:00:00Z');
    const count = (await noticesOf(ready.member)).items.length;
    await api.sql('DELETE FROM squawks WHERE club_id = $1', [ready.club.clubId]);
    await rejudge();
    await insertInto(api.sql, ready.club.clubId)('squawks', {
      ...{ id: newId(), aircraft_id: ready.aircraftId, title: 'Fuel leak', state: 'grounding' },
      ...{ reported_at: '2026-03-10T16:00:00Z', reported_by: officer.memberId },
    });
    await rejudge();
    expect((await noticesOf(ready.member)).items).toHaveLength(count + 1);
    api.clock.set('2026-03-10T16:03:00Z');
    await workOff();
    expect(mail.taken).toEqual([]);
    expect((await noticesOf(ready.member)).items).toHaveLength(count);
  });
});

describe('the mail server', () => {
  it('that is busy is tried again later, with the same message', async () => {
    const who = await pilot('Dora Dusk');
    api.clock.set('2026-03-10T17:00:00Z');
    await tell(who.memberId, 'busy');
    api.clock.set('2026-03-10T17:03:00Z');
    mail.mood = 'busy';
    await workOff();
    expect(mail.asked).toEqual([who.email]);
    expect(mail.taken).toEqual([]);
    // Not before its time.
    mail.mood = 'willing';
    await workOff();
    expect(mail.taken).toEqual([]);
    mail.mood = 'hangs up';
    api.clock.set('2026-03-10T17:04:00Z');
    await workOff();
    expect(mail.taken).toEqual([]);
    const [row] = await api.sql<{ id: string; attempts: number; state: string }>(
      'SELECT id, attempts, state FROM notice_mails WHERE member_id = $1',
      [who.memberId],
    );
    expect(row).toMatchObject({ attempts: 2, state: 'waiting' });
    mail.mood = 'willing';
    api.clock.set('2026-03-10T17:09:00Z');
    await workOff();
    expect(mail.taken.map(({ messageId }) => messageId)).toEqual([`<${row!.id}@club.example>`]);
  });

  it('that will never take it ends it, an officer sees it and has it tried again', async () => {
    const who = await pilot('Eve Ether');
    api.clock.set('2026-03-10T18:00:00Z');
    await tell(who.memberId, 'refused');
    api.clock.set('2026-03-10T18:03:00Z');
    mail.mood = 'no such mailbox';
    await workOff();
    await workOff();
    expect(mail.asked).toEqual([who.email]);
    await who.get('/undelivered-mail').expect(403);
    const { items } = (await officer.get('/undelivered-mail').expect(200)).body as {
      items: { id: string; memberId: string; fault: string; about: string[] }[];
    };
    const [given] = items.filter(({ memberId }) => memberId === who.memberId);
    expect(given!.fault).toContain('550 No such mailbox');
    expect(given!.about).toEqual(['Something of yours lapses soon']);
    // What it said is not the officer's to read.
    expect(JSON.stringify(given)).not.toContain('Told of');
    expect((await noticesOf(who)).items[0]).toMatchObject({ mail: 'given-up' });
    mail.mood = 'willing';
    await officer.post(`/undelivered-mail/${given!.id}/retry`).expect(204);
    await workOff();
    expect(mail.taken).toHaveLength(1);
    await officer.post(`/undelivered-mail/${given!.id}/retry`).expect(404);
  });

  it('is given up after its last attempt', async () => {
    const who = await pilot('Flo Front');
    api.clock.set('2026-03-10T18:30:00Z');
    await tell(who.memberId, 'gone');
    mail.mood = 'busy';
    for (const at of [
      '10T18:33',
      '10T18:34',
      '10T18:39',
      '10T18:54',
      '10T19:54',
      '10T22:54',
      '11T04:54',
      '11T16:54',
    ]) {
      api.clock.set(`2026-03-${at}:00Z`);
      await workOff();
    }
    expect(mail.asked).toHaveLength(8);
    expect((await noticesOf(who)).items[0]).toMatchObject({ mail: 'given-up' });
  });

  it('gets a message once from two replicas at it at once', async () => {
    const people = [await pilot('Gil Gust'), await pilot('Hal Haze'), await pilot('Ivo Ice')];
    api.clock.set('2026-03-11T17:00:00Z');
    for (const who of people) {
      await tell(who.memberId, 'one');
      await tell(who.memberId, 'two');
    }
    api.clock.set('2026-03-11T17:03:00Z');
    const deliveries = api.app.get(Deliveries);
    await Promise.all([workOff(), workOff(), deliveries.sendDue(ready.club.clubId)]);
    await workOff();
    expect(mail.taken).toHaveLength(6);
    expect(new Set(mail.taken.map(({ messageId }) => messageId)).size).toBe(6);
  });
});

describe('preferences', () => {
  const wanted = {
    choices: [{ kind: 'lapse', delivery: 'daily' }],
    quietFrom: '21:00',
    quietTo: '07:00',
    digestHour: 6,
  };

  it('start with the usual ones, are set on the version that was seen, and hold what may not be off', async () => {
    const who = await pilot('Jo Jet');
    const first = await who.get('/notice-preferences').expect(200);
    expect(first.body).toMatchObject({
      rowVersion: 0,
      quietFrom: '22:00',
      mailGoesOut: true,
      zone: 'America/Chicago',
    });
    expect((first.body as { choices: { kind: string }[] }).choices.map(({ kind }) => kind)).not.toContain(
      'maintenance-due',
    );
    const put = (body: object, version: string) =>
      who.put('/notice-preferences', body).set('If-Match', version);
    await put(wanted, '"1"').expect(412);
    const set = await put(wanted, '"0"').expect(200);
    expect(set.body).toMatchObject({ rowVersion: 1, digestHour: 6, quietFrom: '21:00' });
    await put(wanted, '"0"').expect(412);
    const off = { ...wanted, choices: [{ kind: 'flight-answer', delivery: 'off' }] };
    const refused = await put(off, '"1"').expect(422);
    expect(refused.body).toMatchObject({
      code: 'notice-must-go',
      errors: [{ field: 'choices[0].delivery' }],
    });
    await put({ ...wanted, quietTo: null }, '"1"').expect(422);
  });

  it('gather the day’s into one message, at its hour on the club’s clock; what is urgent goes at once', async () => {
    const who = await pilot('Kim Kite');
    await who.put('/notice-preferences', wanted).set('If-Match', '"0"').expect(200);
    // 22:00 and 23:00 on the eve of 12 March, Central daylight time, are 03:00 and 04:00 UTC.
    api.clock.set('2026-03-12T02:00:00Z');
    await tell(who.memberId, 'digest one');
    api.clock.set('2026-03-12T03:00:00Z');
    await workOff();
    await tell(who.memberId, 'digest two');
    await tell(who.memberId, 'flight soon', 'flight-answer', true);
    await tell(who.memberId, 'flight later', 'flight-answer');
    api.clock.set('2026-03-12T04:00:00Z');
    await workOff();
    expect(mail.taken.map(({ text }) => text)).toEqual([expect.stringContaining('Told of flight soon')]);
    // 06:00 is 11:00 UTC; quiet hours end an hour later.
    api.clock.set('2026-03-12T11:00:00Z');
    await workOff();
    expect(mail.taken).toHaveLength(2);
    expect(mail.taken[1]!.subject).toContain('2 notices');
    expect(mail.taken[1]!.text).toMatch(/Told of digest one[\s\S]*Told of digest two/);
    api.clock.set('2026-03-12T12:00:00Z');
    await workOff();
    expect(mail.taken[2]!.text).toContain('Told of flight later');
  });

  it('turned off leave a notice on the page only', async () => {
    const who = await pilot('Lou Lift');
    await who
      .put('/notice-preferences', { ...wanted, choices: [{ kind: 'lapse', delivery: 'off' }] })
      .set('If-Match', '"0"')
      .expect(200);
    api.clock.set('2026-03-12T17:00:00Z');
    await tell(who.memberId, 'quietly');
    api.clock.set('2026-03-12T17:03:00Z');
    await workOff();
    expect(mail.taken).toEqual([]);
    const { unread, items } = await noticesOf(who);
    expect([unread, items[0]!.mail]).toEqual([1, 'none']);
    await ready.member.post(`/notices/${items[0]!.id}/read`).expect(404);
    await who.post(`/notices/${items[0]!.id}/read`).expect(204);
    expect((await noticesOf(who)).unread).toBe(0);
    await tell(who.memberId, 'again');
    expect((await who.post('/notices/read').expect(200)).body).toEqual({ marked: 1 });
  });
});

describe('mail turned off from the mail program (RFC 8058)', () => {
  const told = async (name: string, kind: 'lapse' | 'flight-answer', hour: string) => {
    const who = await pilot(name);
    api.clock.set(`2026-03-13T${hour}:00:00Z`);
    await tell(who.memberId, `told at ${hour}`, kind, true);
    api.clock.set(`2026-03-13T${hour}:03:00Z`);
    await workOff();
    const raw = mail.taken[0]!.headerLines.map(({ line }) => line).join('\n');
    return { who, raw, path: /^List-Unsubscribe:\s+<https:\/\/club\.example(\/[^>]+)>$/im.exec(raw)?.[1] };
  };
  const choicesOf = async (who: Session) =>
    Object.fromEntries(
      (
        (await who.get('/notice-preferences').expect(200)).body as {
          choices: { kind: string; delivery: string }[];
        }
      ).choices.map(({ kind, delivery }) => [kind, delivery]),
    );

  it('goes off with one request, of what the message told of and no more', async () => {
    const { who, raw, path } = await told('Pia Pylon', 'lapse', '17');
    expect(raw).toMatch(/^List-Unsubscribe-Post: List-Unsubscribe=One-Click$/im);
    // A scanner that looks turns nothing off, and a person who looks gets to the page.
    await api.http.get(path!).expect(303).expect('Location', 'https://club.example/notices#mail');
    expect(await choicesOf(who)).toMatchObject({ lapse: 'now' });
    const { body } = await api.http.post(path!).type('form').send('List-Unsubscribe=One-Click').expect(200);
    expect(body).toEqual({ turnedOff: ['Something of yours lapses soon'] });
    expect(await choicesOf(who)).toMatchObject({ lapse: 'off', 'hand-over': 'now', 'flight-answer': 'now' });
    // Twice, and as the other kind of form, is the same.
    await api.http.post(path!).field('List-Unsubscribe', 'One-Click').expect(200);
    await tell(who.memberId, 'not by mail', 'lapse', true);
    api.clock.set('2026-03-13T17:10:00Z');
    await workOff();
    expect(mail.taken).toHaveLength(1);
  });

  it('does not go off by an address that was made up, nor what the safety of a flight hangs on', async () => {
    const { who, path } = await told('Quin Quill', 'lapse', '18');
    const [other] = [await pilot('Rae Ridge')];
    for (const forged of [
      path!.replace(who.memberId, other.memberId),
      path!.replace('lapse', 'hand-over'),
      `${path!.slice(0, -1)}${path!.endsWith('A') ? 'B' : 'A'}`,
      '/api/v1/unsubscribe/anything',
    ]) {
      const { body } = await api.http
        .post(forged)
        .type('form')
        .send('List-Unsubscribe=One-Click')
        .expect(404);
      expect(body).toMatchObject({ code: 'not-found' });
    }
    expect(await choicesOf(who)).toMatchObject({ lapse: 'now', 'hand-over': 'now' });
    expect(await choicesOf(other)).toMatchObject({ lapse: 'now' });
    mail.taken.length = 0;
    const must = await told('Sam Stall', 'flight-answer', '19');
    expect(must.path).toBe('/notices#mail');
    expect(must.raw).not.toMatch(/List-Unsubscribe-Post/i);
  });
});

describe('reminders', () => {
  it('come once at each lead time, in one notice however much lapses', async () => {
    api.clock.set('2026-03-13T15:00:00Z');
    await api.sql(
      `UPDATE policy_values SET value = '"60"' WHERE club_id = $1 AND parameter_id = 'club.notices.lapse-lead-days'`,
      [ready.club.clubId],
    );
    const who = await pilot('Mia Mist');
    const lapses = api.app.get(LapseReminders);
    expect(await lapses.remind(ready.club.clubId)).toBeGreaterThan(0);
    expect(await lapses.remind(ready.club.clubId)).toBe(0);
    const { items } = await noticesOf(who);
    expect(items).toHaveLength(1);
    // Three landings of 20 February count through 60 days of the club's (handbook 3.2), in-house number: no source outside.
    const says = items[0]!.items.flatMap((one) => one.says).join(' ');
    expect(says).toMatch(/It lapses on 2026-04-2\d, in 4\d days/);
  });

  it('warn coordinators of what falls due, once, and again after it was done', async () => {
    const coordinator = await ready.club.signInAs('maintenance-coordinator', { name: 'Cora Coordinator' });
    await api.sql(
      `UPDATE policy_values SET value = '"300"' WHERE club_id = $1 AND parameter_id = 'club.notices.maintenance-lead-days'`,
      [ready.club.clubId],
    );
    const warnings = api.app.get(MaintenanceWarnings);
    expect(await warnings.warn(ready.club.clubId)).toBe(1);
    expect(await warnings.warn(ready.club.clubId)).toBe(0);
    const { items } = await noticesOf(coordinator);
    // Done on 5 November 2025, good for twelve calendar months: to the end of November 2026 (14 CFR 91.409(a), 91.207(d)).
    const annual = items[0]!.items.find(({ title }) => title === 'NX101B: Annual inspection');
    expect(annual!.says.join(' ')).toContain('2026-11-30');
    await insertInto(api.sql, ready.club.clubId)('compliances', {
      ...{
        id: newId(),
        done_on: '2026-03-12',
        done_tenths: 10_500,
        statement: 'Found airworthy',
        signed_by: 'A mechanic',
      },
      item_id: (
        await api.sql<{ id: string }>(
          "SELECT id FROM airworthiness_items WHERE kind = 'annual' AND aircraft_id = $1",
          [ready.aircraftId],
        )
      )[0]!.id,
    });
    await api.sql(
      `UPDATE policy_values SET value = '"400"' WHERE club_id = $1 AND parameter_id = 'club.notices.maintenance-lead-days'`,
      [ready.club.clubId],
    );
    expect(await warnings.warn(ready.club.clubId)).toBe(1);
  });
});

/** Flights of the next weeks, made as copies of the one that was judged and booked. */
async function nineMoreLike(memberId: string): Promise<void> {
  await api.sql(
    `WITH one AS (SELECT * FROM bookings WHERE club_id = $1 AND member_id = $2), more AS (
       INSERT INTO bookings (club_id, id, kind, aircraft_id, member_id, during, expected_tenths, request, note, decision_id)
       SELECT club_id, gen_random_uuid(), kind, aircraft_id, member_id,
         tstzrange(lower(during) + s.hours, upper(during) + s.hours, '[)'), expected_tenths,
         request || jsonb_build_object('departs', to_char((lower(during) + s.hours) AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"'),
           'arrives', to_char((upper(during) + s.hours) AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')), note, decision_id
       FROM one, LATERAL (SELECT make_interval(hours => 96 * (n / 2 + 1) - CASE WHEN n % 2 = 0 THEN 0 ELSE 2 END) AS hours
         FROM generate_series(0, 8) n) s RETURNING *)
     INSERT INTO booking_people (club_id, booking_id, member_id, role, during, occupies)
     SELECT club_id, id, member_id, 'pilot', during, occupies FROM more`,
    [ready.club.clubId, memberId],
  );
}
