/** Calendar feeds by secret address, and open pages told of changes: over loopback, as programs and pages use them. */
import ical from 'node-ical';
import type { AddressInfo } from 'node:net';
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';

jest.setTimeout(300_000);

let api: Api;
let ready: ReadyClub;
let other: Session;

beforeAll(async () => {
  api = await startApi();
  ready = await readyClub(api);
  other = await ready.club.signInAs('member', { name: 'Olive Other' });
  await ready.makePilot(other.memberId);
}, 300_000);
afterAll(() => api?.stop());

const base = (): string => `http://127.0.0.1:${(api.app.getHttpServer().address() as AddressInfo).port}`;
const book = async (who: Session, times: object, more: object = {}): Promise<string> => {
  const asked = { ...times, purpose: 'solo', personsOnBoard: 1, aircraftId: ready.aircraftId, ...more };
  const { body } = await who.post('/bookings', asked).set('Idempotency-Key', newId()).expect(201);
  return (body as { id: string }).id;
};
const cancel = (who: Session, id: string) =>
  who.post(`/bookings/${id}/cancel`).set('If-Match', '"1"').expect(200);

interface Event {
  type: string;
  uid: string;
  summary: string;
  description: string;
  status: string;
  sequence: number;
  start: Date;
}
const eventsOf = (text: string): Event[] =>
  Object.values(ical.sync.parseICS(text)).filter((one) => one?.type === 'VEVENT') as unknown as Event[];

describe('calendar feeds', () => {
  const make = async (who: Session, body: object): Promise<{ id: string; title: string; path: string }> => {
    const made = (await who.post('/feeds', body).expect(201)).body as {
      id: string;
      title: string;
      address: string;
    };
    return { id: made.id, title: made.title, path: new URL(made.address).pathname };
  };

  it('show one’s own flights, follow a cancellation, answer 304, and die when they are taken back', async () => {
    const id = await book(ready.member, tomorrow, { note: 'Bring the big headset' });
    const feed = await make(ready.member, { shows: 'own' });
    expect(feed.title).toBe('My flights');
    const first = await api.http
      .get(feed.path)
      .expect(200)
      .expect('Content-Type', /^text\/calendar/);
    const [event] = eventsOf(first.text);
    expect(event).toMatchObject({
      uid: `${id}@bellcrank`,
      summary: 'NX101B',
      status: 'CONFIRMED',
      sequence: 0,
    });
    expect(event!.start.toISOString()).toBe('2026-03-11T18:00:00.000Z');
    await api.http
      .get(feed.path)
      .set('If-None-Match', first.headers['etag'] as string)
      .expect(304);

    await cancel(ready.member, id);
    const after = await api.http
      .get(feed.path)
      .set('If-None-Match', first.headers['etag'] as string)
      .expect(200);
    expect(eventsOf(after.text)).toMatchObject([
      { uid: `${id}@bellcrank`, summary: 'Cancelled: NX101B', status: 'CANCELLED', sequence: 1 },
    ]);

    // Nothing of the secret is kept, and nobody else can take it back.
    const secret = /\.([\w-]{43})\.ics$/.exec(feed.path)![1]!;
    const kept = await api.sql('SELECT to_jsonb(f)::text AS row FROM calendar_feeds f WHERE id = $1', [
      feed.id,
    ]);
    expect(JSON.stringify(kept)).not.toContain(secret);
    await other.delete(`/feeds/${feed.id}`).expect(404);
    await ready.member.delete(`/feeds/${feed.id}`).expect(204);
    await api.http.get(feed.path).expect(404);
    await api.http.get(feed.path.replace(secret, 'x'.repeat(43))).expect(404);
    expect((await ready.member.get('/feeds').expect(200)).body).toEqual({ items: [] });
  });

  it('tell a member no names of others, and those who teach and watch who flies', async () => {
    const id = await book(other, { departs: '2026-03-12T18:00:00Z', arrives: '2026-03-12T20:00:00Z' });
    const words = async (who: Session, body: object) =>
      eventsOf((await api.http.get((await make(who, body)).path).expect(200)).text).find(
        ({ uid }) => uid === `${id}@bellcrank`,
      )?.summary;
    const officer = await ready.club.signInAs('safety-officer');
    expect(await words(ready.member, { shows: 'club' })).toBe('NX101B, booked');
    expect(await words(ready.member, { shows: 'aircraft', aircraftId: ready.aircraftId })).toBe(
      'NX101B, booked',
    );
    expect(await words(ready.member, { shows: 'own' })).toBeUndefined();
    expect(await words(officer, { shows: 'club' })).toBe('NX101B, Olive Other');
    await other.post('/feeds', { shows: 'aircraft' }).expect(422);
    await other.post('/feeds', { shows: 'aircraft', aircraftId: newId() }).expect(404);
  });

  it('are of nobody who has left', async () => {
    const leaver = await ready.club.signInAs('member', { name: 'Lee Leaver' });
    const feed = await make(leaver, { shows: 'club' });
    await api.http.get(feed.path).expect(200);
    await api.sql("UPDATE members SET membership_through = '2026-03-01' WHERE id = $1", [leaver.memberId]);
    await api.http.get(feed.path).expect(404);
  });
});

/** A listening page: what it hears, as it comes. */
class Ear {
  readonly heard: { event: string; id: string; topics: string[] }[] = [];
  readonly stop = new AbortController();
  status = 0;
  ended = false;

  static async open(who: Session, headers: Record<string, string> = {}, query = ''): Promise<Ear> {
    const ear = new Ear();
    const response = await fetch(`${base()}/api/v1/live${query}`, {
      headers: { Authorization: `Bearer ${who.token}`, ...headers },
      signal: ear.stop.signal,
    });
    ear.status = response.status;
    if (response.ok) void ear.listen(response.body!).catch(() => (ear.ended = true));
    else await response.body?.cancel();
    return ear;
  }

  private async listen(body: ReadableStream<Uint8Array>): Promise<void> {
    let text = '';
    for await (const part of body as unknown as AsyncIterable<Uint8Array>) {
      text += Buffer.from(part).toString();
      const blocks = text.split('\n\n');
      text = blocks.pop()!;
      for (const block of blocks) {
        const [, event, id, data] = /^event: (.+)\nid: (.+)\ndata: (.+)$/.exec(block) ?? [];
        if (event)
          this.heard.push({ event, id: id!, topics: (JSON.parse(data!) as { topics: string[] }).topics });
      }
    }
    this.ended = true;
  }

  get topics(): string[] {
    return this.heard.flatMap(({ topics }) => topics);
  }
}

const until = async (done: () => boolean, what: string): Promise<void> => {
  for (let tries = 0; tries < 300; tries += 1) {
    if (done()) return;
    await new Promise((next) => setTimeout(next, 100));
  }
  throw new Error(`waited in vain for ${what}`);
};

describe('open pages', () => {
  it('hear what concerns them from then on, and no more', async () => {
    // Somebody's long transaction, of any database of the server, makes no news of what they did before.
    const long = api.database.dataSource.createQueryRunner();
    await long.startTransaction();
    await long.query('SELECT pg_current_xact_id()');
    await book(other, { departs: '2026-03-17T18:00:00Z', arrives: '2026-03-17T19:00:00Z' });
    const [mine, theirs] = [await Ear.open(ready.member), await Ear.open(other)];
    await until(() => mine.heard.length === 1 && theirs.heard.length === 1, 'hello');
    expect(mine.heard[0]).toMatchObject({ event: 'hello', topics: [] });
    await book(ready.member, { departs: '2026-03-15T18:00:00Z', arrives: '2026-03-15T19:00:00Z' });
    await until(() => mine.topics.includes('flights') && theirs.topics.includes('bookings'), 'the booking');
    expect(theirs.topics).not.toContain('flights');
    await long.rollbackTransaction();
    await long.release();
    for (const ear of [mine, theirs]) ear.stop.abort();
  });

  it('are told of what another replica’s transactions do as each is committed, once', async () => {
    const ear = await Ear.open(ready.member);
    await until(() => ear.heard.length === 1, 'hello');
    const [late, soon] = [await api.database.dataSource.createQueryRunner(), api.database.admin];
    await late.startTransaction();
    await late.query("SELECT set_config('bellcrank.club_id', $1, true)", [ready.club.clubId]);
    await late.query("SELECT note_live($1, 'late', NULL)", [ready.club.clubId]);
    await soon.query("SELECT note_live($1, 'soon', NULL)", [ready.club.clubId]);
    // The one that began first is still open: it holds up nobody, and is told in its turn.
    await until(() => ear.topics.length > 0, 'the one committed');
    expect(ear.topics).toEqual(['soon']);
    await late.commitTransaction();
    await late.release();
    await until(() => ear.topics.length > 1, 'the one committed late');
    await new Promise((next) => setTimeout(next, 2500));
    expect(ear.topics).toEqual(['soon', 'late']);
    ear.stop.abort();
  });

  it('that come again are told what they missed, or to read everything after a long time', async () => {
    const first = await Ear.open(ready.member);
    await until(() => first.heard.length === 1, 'hello');
    first.stop.abort();
    const id = await book(ready.member, { departs: '2026-03-16T18:00:00Z', arrives: '2026-03-16T19:00:00Z' });
    const again = await Ear.open(ready.member, { 'Last-Event-ID': first.heard[0]!.id });
    await until(() => again.topics.includes('flights'), 'what was missed');
    again.stop.abort();

    const [mark, heardAt] = first.heard[0]!.id.split('-');
    for (const lastId of [`${mark}-${Number(heardAt) - 3600}`, 'no id of ours']) {
      const late = await Ear.open(ready.member, { 'Last-Event-ID': lastId });
      await until(() => late.topics.length > 0, 'everything');
      expect(late.topics).toEqual(['everything']);
      late.stop.abort();
    }
    await cancel(ready.member, id);
  });

  it('are let go after a time, and are not more than a person may have', async () => {
    const brief = await Ear.open(other, {}, '?seconds=1');
    await until(() => brief.ended, 'the end');
    await new Promise((next) => setTimeout(next, 300));
    const ears = [];
    for (let count = 0; count < 7; count += 1) ears.push(await Ear.open(other));
    expect(ears.map(({ status }) => status)).toEqual([...Array<number>(6).fill(200), 429]);
    expect((await Ear.open(ready.member)).status).toBe(200);
    ears[0]!.stop.abort();
    await new Promise((next) => setTimeout(next, 500));
    expect((await Ear.open(other)).status).toBe(200);
    // Those still open are let go when the service stops: afterAll would wait for them otherwise.
  });
});
