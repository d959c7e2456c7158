/** Which aircraft fits a flight best: by the club's paper (handbook, section 4.7); no source outside. */
import { byFit, type FactSheet, type Judged } from '../../src/rules/index.js';
import { baseSheet } from '../../src/rules/workshop/base-sheet.js';
import { RESERVATION } from '../../src/rules/workshop/records.js';
import { known } from '../../src/rules/facts/fact.js';
import { scarceAmong } from '../../src/rules/fit/features.js';

const prices = { condition: 30, emptySeat: 10, scarceFeature: 25, oddHour: 10 };
const AT = '2027-02-28T18:00:00Z';

/** An aircraft judged; the base sheet's flight is on 2027-03-01 from 18:00 to 19:00 UTC, with one person in four seats. */
function judged(
  registration: string,
  of: {
    answer?: Judged['decision']['answer'];
    conditions?: string[];
    type?: Record<string, unknown>;
    spans?: [string, string][];
    flight?: Partial<FactSheet['flight']>;
  } = {},
): Judged {
  const sheet = baseSheet();
  const type = sheet.aircraft.type as Extract<FactSheet['aircraft']['type'], { known: true }>;
  return {
    sheet: {
      ...sheet,
      flight: { ...sheet.flight, ...of.flight },
      aircraft: {
        ...sheet.aircraft,
        id: registration,
        type: known({ ...type.value, seats: 4, ...of.type, registration }, AT),
        reservations: known(
          (of.spans ?? []).map(([from, to], n) => ({ ...RESERVATION, id: `r${n}`, from, to })),
          AT,
        ),
      },
    },
    decision: { answer: of.answer ?? 'yes', conditions: of.conditions ?? [] },
  };
}
const fits = (all: Judged[]) => byFit(all, { fleet: all.map(({ sheet }) => sheet.aircraft), prices });
const order = (all: Judged[]) => fits(all).map(({ registration }) => registration);

it('a plain yes goes before a yes with conditions, whatever the points', () => {
  const all = [
    judged('XA-1', { answer: 'no' }),
    judged('XA-2', { answer: 'yes-with-conditions', conditions: ['One.'], type: { seats: 1 } }),
    judged('XA-3', { type: { seats: 10 } }),
    judged('XA-4', { answer: 'ask-officer' }),
  ];
  expect(order(all)).toEqual(['XA-3', 'XA-2', 'XA-4', 'XA-1']);
  expect(fits(all).map(({ bookable }) => bookable)).toEqual([true, true, false, false]);
});

it('fewer empty seats fit better, and each counts', () => {
  const all = [judged('XA-1'), judged('XA-2', { type: { seats: 2 } })];
  const [best, next] = fits(all);
  expect(best).toMatchObject({ registration: 'XA-2', points: 10 });
  expect(next!.parts).toEqual([{ kind: 'empty-seats', count: 3, points: 30, features: [] }]);
});

it('what few have is kept for flights that need it', () => {
  const plain = { kindsOfOperation: ['day-vfr'] };
  const fleet = (flight: Partial<FactSheet['flight']>) => [
    judged('XA-1', { type: { kindsOfOperation: ['day-vfr', 'ifr'] }, flight }),
    judged('XA-2', { type: plain, flight }),
    judged('XA-3', { type: plain, flight }),
  ];
  expect(order(fleet({}))).toEqual(['XA-2', 'XA-3', 'XA-1']);
  expect(fits(fleet({}))[2]!.parts).toContainEqual({
    ...{ kind: 'scarce-features', count: 1, points: 25, features: ['ifr'] },
  });
  expect(order(fleet({ flightRules: 'IFR' }))[0]).toBe('XA-1');
});

it('is scarce what one in three has, not one in two', () => {
  const tail = (id: string, tailwheel: boolean) =>
    judged(id, { type: { tailwheel, kindsOfOperation: [], powerPerEngineHp: 160 } }).sheet.aircraft;
  expect([...scarceAmong([tail('a', true), tail('b', false), tail('c', false)])]).toEqual(['tailwheel']);
  expect([...scarceAmong([tail('a', true), tail('b', false)])]).toEqual([]);
});

it('power above 200 hp is high performance, 200 hp is not (14 CFR 61.31(f), from memory)', () => {
  const plane = (id: string, powerPerEngineHp: number) =>
    judged(id, { type: { powerPerEngineHp, kindsOfOperation: [] } }).sheet.aircraft;
  expect([...scarceAmong([plane('a', 201), plane('b', 160), plane('c', 160)])]).toEqual(['high-performance']);
  expect([...scarceAmong([plane('a', 200), plane('b', 160), plane('c', 160)])]).toEqual([]);
});

it('less than an hour left beside the booking is lost, an hour is not, and none is none', () => {
  const beside = (from: string, to: string) =>
    fits([judged('XA-1', { type: { seats: 1 }, spans: [[from, to]] })])[0]!.points;
  expect(beside('2027-03-01T16:00:00Z', '2027-03-01T17:30:00Z')).toBe(5);
  expect(beside('2027-03-01T16:00:00Z', '2027-03-01T17:00:00Z')).toBe(0);
  expect(beside('2027-03-01T19:00:00Z', '2027-03-01T20:00:00Z')).toBe(0);
  expect(beside('2027-03-01T19:54:00Z', '2027-03-01T21:00:00Z')).toBe(9);
});

it('among equals the registration decides, in whatever order they come', () => {
  const all = ['XA-3', 'XA-1', 'XA-2'].map((one) => judged(one));
  expect(order(all)).toEqual(['XA-1', 'XA-2', 'XA-3']);
  expect(order([...all].reverse())).toEqual(['XA-1', 'XA-2', 'XA-3']);
});
