/** Rates, charges, accounts and statements over HTTP, and what an account does to an answer. */
import { newId } from '../../src/platform/ids.js';
import { type Api, type Session, startApi } from '../support/api.js';
import { readyClub, type ReadyClub, tomorrow } from '../support/ready-club.js';

let api: Api;
let ready: ReadyClub;
let treasurer: Session;
let member: Session;
let aircraftId: string;

const WET = {
  validFrom: '2026-01-01',
  basis: 'hobbs',
  fuel: 'wet',
  perHourMinor: 14_505,
  fuelPerUsGalMinor: 600,
};
const FLOWN = {
  departedAt: '2026-03-11T18:05:00Z',
  arrivedAt: '2026-03-11T19:29:00Z',
  hobbsH: 1.3,
  tachH: 1.1,
};

interface Entry {
  id: string;
  kind: string;
  amountMinor: number;
  balanceMinor: number;
  chargeNo: number | null;
  reverses: string | null;
  reversedBy: string | null;
  bookingId: string | null;
  lines: { kind: string; amountMinor: number; exactMinor: number; rateId: string }[];
}
interface Statement {
  openingMinor: number;
  closingMinor: number;
  overdueMinor: number;
  dueThrough: string | null;
  entries: Entry[];
}

beforeAll(async () => {
  api = await startApi();
});
beforeEach(async () => {
  ready = await readyClub(api);
  ({ member, aircraftId } = ready);
  treasurer = await ready.club.signInAs('administrator', { name: 'Tova Treasurer' });
});
afterAll(() => api.stop());

const setRate = async (more: object = {}) =>
  (await treasurer.post(`/aircraft/${aircraftId}/rates`, { ...WET, ...more }).expect(201)).body as {
    id: string;
  };
const bookIt = async (): Promise<string> => {
  const request = { aircraftId, ...tomorrow, purpose: 'solo', personsOnBoard: 1 };
  const { body } = await member.post('/bookings', request).set('Idempotency-Key', newId()).expect(201);
  return (body as { id: string }).id;
};
const charge = (bookingId: string, more: object = {}) =>
  treasurer.post(`/bookings/${bookingId}/charge`, { ...FLOWN, ...more });
const enter = (what: 'receipts' | 'adjustments', body: object, key = newId(), by = treasurer) =>
  by.post(`/members/${member.memberId}/${what}`, body).set('Idempotency-Key', key);
const statement = async (query = '', by = member): Promise<Statement> =>
  (await by.get(`/members/${member.memberId}/statement${query}`).expect(200)).body as Statement;
/** A charge of long ago, as if it had been entered then. */
const owedSince = (day: string, amountMinor: number) =>
  api.sql(
    `INSERT INTO ledger_entries (club_id, id, member_id, kind, posted_on, of_day, due_from, amount_minor, currency, minor_per_unit, words, recorded_by)
     VALUES ($1, $2, $3, 'adjustment', $4, $4, $4, $5, 'USD', 100, 'Dues of the year', $6)`,
    [ready.club.clubId, newId(), member.memberId, day, amountMinor, treasurer.memberId],
  );

describe('a flight', () => {
  it('is charged by the rate of its day, line by line, rounded half up', async () => {
    const { id: rateId } = await setRate();
    await setRate({ validFrom: '2026-03-12', perHourMinor: 99_900 });
    const bookingId = await bookIt();
    const { body } = await charge(bookingId, { fuelBoughtUsGal: 10, fuelPaidMinor: 5990 }).expect(200);
    // 1.3 h x 145.05 = 188.565, half up 188.57; 10 gal for 59.90 come back whole.
    expect(body).toMatchObject({
      ...{
        kind: 'flight',
        memberId: member.memberId,
        amountMinor: 12_867,
        currency: 'USD',
        minorPerUnit: 100,
      },
      ...{ bookingId, chargeNo: 1, ofDay: '2026-03-11' },
      lines: [
        { kind: 'aircraft', quantity: 1.3, unit: 'h', exactMinor: 18_856.5, amountMinor: 18_857, rateId },
        { kind: 'fuel-back', amountMinor: -5990, rateId },
      ],
    });
    expect((await statement()).closingMinor).toBe(12_867);
  });

  it('charged again the same is charged once; with other hours the first is reversed', async () => {
    await setRate();
    const bookingId = await bookIt();
    const first = (await charge(bookingId).expect(200)).body as Entry;
    const again = (await charge(bookingId).expect(200)).body as Entry;
    expect(again.id).toBe(first.id);
    const second = (await charge(bookingId, { hobbsH: 1.5 }).expect(200)).body as Entry;
    const { entries, closingMinor } = await statement();
    expect(entries.map(({ kind, amountMinor, balanceMinor }) => [kind, amountMinor, balanceMinor])).toEqual([
      ['flight', 18_857, 18_857],
      ['reversal', -18_857, 0],
      ['flight', 21_758, 21_758],
    ]);
    expect(entries[0]!.reversedBy).toBe(entries[1]!.id);
    expect(entries[1]!.reverses).toBe(first.id);
    expect(entries[2]).toMatchObject({ id: second.id, chargeNo: 2, bookingId });
    expect(closingMinor).toBe(21_758);
  });

  it('is not charged without a rate, a reading or the minutes of instruction, and says which', async () => {
    const bookingId = await bookIt();
    expect((await charge(bookingId).expect(422)).body).toMatchObject({ code: 'charge-not-possible' });
    await setRate();
    const noMeter = (await charge(bookingId, { hobbsH: null }).expect(422)).body as {
      errors: { field: string }[];
    };
    expect(noMeter.errors[0]!.field).toBe('hobbsH');
    const teacher = await ready.club.signInAs('instructor');
    const taught = { instructorId: teacher.memberId, instructionMinutes: 50 };
    expect((await charge(bookingId, taught).expect(422)).body).toMatchObject({ code: 'charge-not-possible' });
    await treasurer
      .post(`/members/${teacher.memberId}/instruction-rates`, { validFrom: '2026-01-01', perHourMinor: 6500 })
      .expect(201);
    const { body } = await charge(bookingId, taught).expect(200);
    expect((body as Entry).lines.at(-1)).toMatchObject({
      kind: 'instruction',
      quantity: 50,
      amountMinor: 5417,
    });
    expect((await statement()).entries).toHaveLength(1);
  });

  it('that came back uncharged is listed until it is charged', async () => {
    await setRate();
    const bookingId = await bookIt();
    const waiting = async () =>
      ((await treasurer.get('/charges/uncharged').expect(200)).body as { items: { bookingId: string }[] })
        .items;
    expect(await waiting()).toEqual([]);
    await api.sql("UPDATE bookings SET status = 'returned' WHERE club_id = $1 AND id = $2", [
      ...[ready.club.clubId, bookingId],
    ]);
    expect(await waiting()).toMatchObject([
      { bookingId, registration: 'NX101B', memberName: 'Robin Member' },
    ]);
    const charged = (await charge(bookingId).expect(200)).body as Entry;
    expect(await waiting()).toEqual([]);
    await treasurer
      .post(`/ledger-entries/${charged.id}/reverse`, { reason: 'Flown for the club' })
      .expect(201);
    expect(await waiting()).toMatchObject([{ bookingId }]);
  });

  it('is estimated before it is flown, by aircraft', async () => {
    await setRate();
    const other = await ready.addAircraft('NX102B');
    const { body } = await member
      .get(`/charges/estimates?departs=${tomorrow.departs}&arrives=${tomorrow.arrives}&hours=1.3`)
      .expect(200);
    expect(body).toMatchObject({ currency: 'USD', minorPerUnit: 100 });
    const { estimates } = body as {
      estimates: { aircraftId: string; amountMinor: number | null; missing: string | null }[];
    };
    expect(estimates.find((one) => one.aircraftId === aircraftId)).toMatchObject({ amountMinor: 18_857 });
    const without = estimates.find((one) => one.aircraftId === other)!;
    expect(without.amountMinor).toBeNull();
    expect(without.missing).toMatch(/No rate of this aircraft/);
  });
});

describe('rates', () => {
  it('are dated, and of the same day the one written last holds', async () => {
    const wrong = await setRate({ perHourMinor: 1 });
    const right = await setRate();
    await setRate({ validFrom: '2026-12-01' });
    const { items } = (await member.get(`/aircraft/${aircraftId}/rates`).expect(200)).body as {
      items: { id: string; inForce: boolean; currency: string }[];
    };
    expect(items).toHaveLength(3);
    expect(items.filter(({ inForce }) => inForce).map(({ id }) => id)).toEqual([right.id]);
    expect(items.at(-1)!.id).toBe(wrong.id);
    await member.post(`/aircraft/${aircraftId}/rates`, WET).expect(403);
    const bad = (
      await treasurer.post(`/aircraft/${aircraftId}/rates`, { ...WET, perHourMinor: 1.5 }).expect(400)
    ).body;
    expect((bad as { errors: { field: string }[] }).errors[0]!.field).toBe('perHourMinor');
  });

  it('of instruction are of instructors', async () => {
    const { body } = await treasurer
      .post(`/members/${member.memberId}/instruction-rates`, { validFrom: '2026-01-01', perHourMinor: 6500 })
      .expect(422);
    expect(body).toMatchObject({ code: 'not-an-instructor' });
  });

  it('need a currency that is one', async () => {
    await api.sql(
      `UPDATE policy_values SET value = '"dollars"' WHERE club_id = $1 AND parameter_id = 'club.charges.currency'`,
      [ready.club.clubId],
    );
    const { body } = await treasurer.post(`/aircraft/${aircraftId}/rates`, WET).expect(409);
    expect(body).toMatchObject({ code: 'currency-not-set' });
  });
});

describe('an account', () => {
  it('takes what was received and what was put right, each once for each key', async () => {
    const key = newId();
    const paid = { amountMinor: 10_000, receivedOn: '2026-03-09', words: 'Receipt 12' };
    const first = (await enter('receipts', paid, key).expect(201)).body as Entry;
    expect(((await enter('receipts', paid, key).expect(201)).body as Entry).id).toBe(first.id);
    await enter('receipts', { ...paid, amountMinor: 1 }, key).expect(422);
    await enter('adjustments', { amountMinor: 2500, reason: 'Key lost' }).expect(201);
    expect(await statement()).toMatchObject({ openingMinor: 0, closingMinor: -7500, overdueMinor: 0 });
  });

  it('has what was wrong reversed, once', async () => {
    const { id } = (await enter('adjustments', { amountMinor: 2500, reason: 'Key lost' }).expect(201))
      .body as Entry;
    const reversal = await treasurer
      .post(`/ledger-entries/${id}/reverse`, { reason: 'Key found' })
      .expect(201);
    expect(reversal.body).toMatchObject({ kind: 'reversal', amountMinor: -2500, reverses: id });
    const again = await treasurer.post(`/ledger-entries/${id}/reverse`, { reason: 'Key found' }).expect(409);
    expect(again.body).toMatchObject({ code: 'reversed-already' });
    expect((await statement()).closingMinor).toBe(0);
  });

  it('is nobody’s own to enter on, and nobody else’s to read', async () => {
    const second = await ready.club.signInAs('administrator');
    const own = await second
      .post(`/members/${second.memberId}/adjustments`, { amountMinor: -1, reason: 'A present' })
      .set('Idempotency-Key', newId());
    expect(own).toMatchObject({ status: 403, body: { code: 'own-ledger' } });
    const stranger = await ready.club.signInAs('member');
    await stranger.get(`/members/${member.memberId}/statement`).expect(403);
    await stranger.get(`/members/${member.memberId}/statement.csv`).expect(403);
    await stranger.get('/charges/balances').expect(403);
    await enter('receipts', { amountMinor: 1, receivedOn: '2026-03-09' }, newId(), stranger).expect(403);
  });

  it('takes nothing that is no amount, no day or of a day to come', async () => {
    const nothing = await enter('adjustments', { amountMinor: 0, reason: 'Nothing at all' }).expect(422);
    expect((nothing.body as { errors: { field: string }[] }).errors[0]!.field).toBe('amountMinor');
    const ahead = await enter('receipts', { amountMinor: 5, receivedOn: '2026-03-11' }).expect(422);
    expect((ahead.body as { errors: { field: string }[] }).errors[0]!.field).toBe('receivedOn');
    await member.get(`/members/${member.memberId}/statement?from=2026-03-02&to=2026-03-01`).expect(422);
    await member.get(`/members/${member.memberId}/statement?from=2020-03-02`).expect(422);
  });

  it('is told over a period, from what was there before to what was there after', async () => {
    await owedSince('2026-01-15', 30_000);
    await owedSince('2026-02-15', 5000);
    await enter('receipts', { amountMinor: 12_000, receivedOn: '2026-03-10' }).expect(201);
    const february = await statement('?from=2026-02-01&to=2026-02-28');
    expect(february).toMatchObject({ openingMinor: 30_000, closingMinor: 35_000 });
    expect(february.entries).toHaveLength(1);
    // Of the 300.00 of January, due through 14 February, 120.00 are paid since.
    expect(february).toMatchObject({ overdueMinor: 18_000, dueThrough: '2026-02-14' });
    const { items } = (await treasurer.get('/charges/balances?owing=true').expect(200)).body as {
      items: { memberId: string; balanceMinor: number; overdueMinor: number; oldestUnpaidOn: string }[];
    };
    expect(items).toEqual([
      {
        memberId: member.memberId,
        memberName: 'Robin Member',
        balanceMinor: 23_000,
        overdueMinor: 18_000,
        oldestUnpaidOn: '2026-01-15',
      },
    ]);
  });

  it('is taken out as a table whose amounts add up', async () => {
    await setRate();
    await charge(await bookIt(), { fuelBoughtUsGal: 10, fuelPaidMinor: 5990 }).expect(200);
    await enter('adjustments', { amountMinor: 250, reason: '=1+1 is a formula' }).expect(201);
    const { text, headers } = await member.get(`/members/${member.memberId}/statement.csv`).expect(200);
    expect(headers['content-type']).toMatch(/^text\/csv/);
    const [head, ...rows] = text
      .replace('\ufeff', '')
      .trim()
      .split('\r\n')
      .map((line) => line.split(','));
    const column = head!.indexOf('amount');
    const sum = rows.reduce((total, row) => total + Math.round(Number(row[column]) * 100), 0);
    expect(sum).toBe(12_867 + 250);
    expect(rows.at(-1)![head!.indexOf('balance')]).toBe('131.17');
    expect(text).toContain("'=1+1 is a formula");
  });
});

describe('what is unpaid', () => {
  const found = async () => {
    const asked = await member
      .post('/decisions', { aircraftIds: [aircraftId], ...tomorrow, purpose: 'solo', personsOnBoard: 1 })
      .expect(200);
    const [decision] = (
      asked.body as {
        decisions: { answer: string; findings: { rule: string; status: string; says: string }[] }[];
      }
    ).decisions;
    return {
      answer: decision!.answer,
      finding: decision!.findings.find(({ rule }) => rule === 'club.charges_paid')!,
    };
  };

  it('stands in the way of a booking once it is overdue for longer than the club allows, until it is paid', async () => {
    expect((await found()).finding).toMatchObject({
      status: 'met',
      says: 'No charge of the club is unpaid.',
    });
    // Due through 2026-02-07, tolerated through 2026-03-10: the flight is a day later.
    await owedSince('2026-01-08', 20_000);
    const short = await found();
    expect(short.answer).toBe('ask-officer');
    expect(short.finding.says).toBe(
      'Charges of the club are overdue since 2026-02-08, longer than the 30 days it allows; USD 200.00 is unpaid.',
    );
    await enter('receipts', { amountMinor: 19_999, receivedOn: '2026-03-10' }).expect(201);
    expect((await found()).finding.status).toBe('short');
    await enter('receipts', { amountMinor: 1, receivedOn: '2026-03-10' }).expect(201);
    expect(await found()).toMatchObject({
      ...{ answer: expect.stringMatching(/^yes/) as string, finding: { status: 'met' } },
    });
  });

  it('does not while the club still allows it, and an officer’s own word counts beside it', async () => {
    await owedSince('2026-01-09', 20_000);
    expect((await found()).finding).toMatchObject({
      ...{ status: 'met' },
      says: 'Charges of the club are overdue since 2026-02-09; it allows bookings through 2026-03-11.',
    });
    await api.sql(
      "UPDATE members SET standing = 'suspended', standing_since = '2026-03-01' WHERE club_id = $1 AND id = $2",
      [ready.club.clubId, member.memberId],
    );
    expect((await found()).answer).toBe('ask-officer');
  });

  it('is noted, so that booked flights are judged again', async () => {
    await enter('adjustments', { amountMinor: 2500, reason: 'Key lost' }).expect(201);
    const rows = await api.sql<{ subject: string }>('SELECT subject FROM fact_changes WHERE club_id = $1', [
      ready.club.clubId,
    ]);
    expect(rows.map(({ subject }) => subject)).toContain(`person:${member.memberId}:unpaid`);
  });
});
