/** Single changes for the worse: favourable evidence taken away, or adverse evidence added. */
import {
  addDays,
  known,
  plusSeconds,
  type Fact,
  type FactSheet,
  type PersonFacts,
} from '../../src/rules/index.js';
import * as records from '../../src/rules/workshop/records.js';

/** A change and its name; `pick` chooses among records, any whole number will do. Null where there is nothing to change. */
export interface Adversity {
  name: string;
  apply(sheet: FactSheet, pick: number): FactSheet | null;
}

/** Drops one record of a list. */
function without<T>(fact: Fact<T[]>, pick: number): Fact<T[]> | null {
  if (!fact.known || fact.value.length === 0) return null;
  const index = pick % fact.value.length;
  return { ...fact, value: fact.value.filter((_, at) => at !== index) };
}

function withMore<T>(fact: Fact<T[]>, record: T): Fact<T[]> | null {
  return fact.known ? { ...fact, value: [...fact.value, record] } : null;
}

/** Changes one subject of one of the two people. */
function ofPerson<K extends keyof PersonFacts>(
  name: string,
  key: K,
  change: (fact: PersonFacts[K], pick: number, sheet: FactSheet) => PersonFacts[K] | null,
): Adversity {
  return {
    name,
    apply(sheet, pick) {
      const id = pick % 2 === 0 ? 'member-1' : 'instructor-1';
      const person = sheet.people[id]!;
      const changed = change(person[key], pick >> 1, sheet);
      return changed === null
        ? null
        : { ...sheet, people: { ...sheet.people, [id]: { ...person, [key]: changed } } };
    },
  };
}

function ofAircraft<K extends keyof FactSheet['aircraft']>(
  name: string,
  key: K,
  change: (fact: FactSheet['aircraft'][K], pick: number, sheet: FactSheet) => FactSheet['aircraft'][K] | null,
): Adversity {
  return {
    name,
    apply(sheet, pick) {
      const changed = change(sheet.aircraft[key], pick, sheet);
      return changed === null ? null : { ...sheet, aircraft: { ...sheet.aircraft, [key]: changed } };
    },
  };
}

/**
 * Kinds of equipment whose absence the law or the club may read as "not fitted, so not used"; taking them away is not
 * adverse. So with a display that may ask for a checkout (`other`).
 */
const MAY_BE_ABSENT = [
  'transponder',
  'ads-b-out',
  'vor-receiver',
  'nav-receiver',
  'elt',
  'autopilot',
  'other',
];

export const ADVERSITIES: readonly Adversity[] = [
  ofPerson('a logged flight is taken away', 'log', without),
  ofPerson('a medical is taken away', 'medicals', (fact, pick) => {
    // One that was withdrawn speaks against the pilot; taking it away would be a favour.
    if (!fact.known || fact.value.some((one) => one.withdrawnOn !== null)) return null;
    return without(fact, pick);
  }),
  ofPerson('BasicMed is taken away', 'basicMed', without),
  ofPerson('a review is taken away', 'reviews', without),
  ofPerson('an endorsement is taken away', 'endorsements', without),
  ofPerson('a rating is taken away', 'ratings', (fact, pick) => (fact ? without(fact, pick) : null)),
  ofPerson('the ratings are lost', 'ratings', () => ({ known: false, because: 'no ratings are on record' })),
  ofPerson('earlier hours are lost', 'logBefore', () => ({ known: false, because: 'not on record' })),
  ofPerson('a sign-off is taken away', 'checkouts', without),
  ofPerson('all certificates are suspended', 'certificates', (fact) =>
    fact.known
      ? {
          ...fact,
          value: fact.value.map((one) => ({
            ...one,
            suspensions: [...one.suspensions, { id: 'suspension-x', from: '2027-02-01', to: null }],
          })),
        }
      : null,
  ),
  ofPerson('a medical is withdrawn', 'medicals', (fact, pick) =>
    fact.known && fact.value.length > 0
      ? {
          ...fact,
          value: fact.value.map((one, at) =>
            at === pick % fact.value.length ? { ...one, withdrawnOn: '2027-02-01' } : one,
          ),
        }
      : null,
  ),
  ofPerson('the account falls into arrears', 'standing', (fact) =>
    fact.known && fact.value.state === 'good'
      ? { ...fact, value: { ...fact.value, state: 'arrears', since: '2027-01-01' } }
      : null,
  ),
  ofPerson('the member is suspended', 'standing', (fact) =>
    fact.known ? { ...fact, value: { ...fact.value, state: 'suspended', since: '2027-01-01' } } : null,
  ),
  ofPerson('the person is promised elsewhere', 'commitments', (fact, _pick, sheet) =>
    withMore(fact, {
      ...records.COMMITMENT,
      id: 'commitment-x',
      from: plusSeconds(sheet.flight.departs, -3600),
      to: plusSeconds(sheet.flight.arrives, 3600),
    }),
  ),
  ofPerson('the log is lost', 'log', () => ({ known: false, because: 'the log is not on record' })),
  ofPerson('the medical papers are lost', 'medicals', () => ({
    known: false,
    because: 'no papers are on record',
  })),
  ofAircraft('a grounding squawk is filed', 'squawks', (fact) =>
    withMore(fact, { ...records.SQUAWK, id: 'squawk-x', state: 'grounding' as const }),
  ),
  ofAircraft('work on it is begun', 'work', (fact) =>
    withMore(fact, { ...records.WORK, id: 'work-x', checkFlightBecause: 'control cables' }),
  ),
  ofAircraft('a squawk is reported', 'squawks', (fact) =>
    withMore(fact, { ...records.SQUAWK, id: 'squawk-x' }),
  ),
  ofAircraft('a directive falls overdue', 'items', (fact) =>
    withMore(fact, {
      ...records.ITEM,
      id: 'directive-x',
      kind: 'directive' as const,
      title: 'A directive never done',
      calendarMonths: null,
      plainMonths: 12,
      lastDoneOn: '2025-01-01',
      lastDoneTenths: 9000,
    }),
  ),
  ofAircraft('an inspection turns out to be a year older', 'items', (fact, pick) =>
    fact.known && fact.value.length > 0
      ? {
          ...fact,
          value: fact.value.map((one, at) =>
            at === pick % fact.value.length && one.lastDoneOn !== null && one.lastDoneOn <= '2027-02-28'
              ? { ...one, lastDoneOn: addDays(one.lastDoneOn, -366) }
              : one,
          ),
        }
      : null,
  ),
  ofAircraft('the hours of the last inspection turn out to be 50 fewer', 'items', (fact, pick) =>
    fact.known && fact.value.length > 0
      ? {
          ...fact,
          value: fact.value.map((one, at) =>
            at === pick % fact.value.length && one.lastDoneTenths !== null
              ? { ...one, lastDoneTenths: one.lastDoneTenths - 500 }
              : one,
          ),
        }
      : null,
  ),
  ofAircraft('the meter has run 20 hours more', 'meters', (fact) =>
    fact.known ? { ...fact, value: fact.value.map((one) => ({ ...one, tenths: one.tenths + 200 })) } : null,
  ),
  ofAircraft('required equipment is removed', 'equipment', (fact, pick) => {
    if (!fact.known) return null;
    const removable = fact.value.filter((one) => !MAY_BE_ABSENT.includes(one.kind));
    const gone = removable[pick % Math.max(1, removable.length)];
    return gone ? { ...fact, value: fact.value.filter((one) => one !== gone) } : null;
  }),
  ofAircraft('the registration has ended', 'registration', (fact) =>
    fact.known ? { ...fact, value: fact.value.map((one) => ({ ...one, endedOn: '2027-01-15' })) } : null,
  ),
  ofAircraft('it is promised to somebody else', 'reservations', (fact, _pick, sheet) =>
    withMore(fact, {
      ...records.RESERVATION,
      id: 'reservation-x',
      from: plusSeconds(sheet.flight.departs, -3600),
      to: plusSeconds(sheet.flight.arrives, 3600),
    }),
  ),
  ofAircraft('it is taken out of service', 'use', (fact) =>
    fact.known ? { ...fact, value: { ...fact.value, status: 'out-of-service' as const } } : null,
  ),
  ofAircraft('its equipment changed', 'differences', (fact) =>
    withMore(fact, { ...records.DIFFERENCES, id: 'differences-x', since: '2027-02-28' }),
  ),
  ofAircraft('its equipment list is lost', 'equipment', () => ({
    known: false,
    because: 'no list is on record',
  })),
  ofPerson('the account is lost', 'standing', () => ({ known: false, because: 'no account is on record' })),
  ofPerson('the sign-offs are lost', 'checkouts', (_fact, _pick, sheet) => known([], sheet.knownAt)),
];
