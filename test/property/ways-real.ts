/** The base sheet damaged in a few ways, and a search that leaves nothing out. */
import fc from 'fast-check';
import {
  addDays,
  known,
  plusSeconds,
  toInstant,
  toSeconds,
  unknownFact,
  type FactSheet,
  type ItemFact,
  type PersonFacts,
} from '../../src/rules/index.js';
import { baseSheet } from '../../src/rules/workshop/base-sheet.js';
import * as records from '../../src/rules/workshop/records.js';
import { isRequest, isUnnamed, type State } from '../../src/rules/ways/state.js';
import { offersAgainst } from '../../src/rules/ways/offers.js';
import { waitingPapers } from '../../src/rules/ways/own/office.js';
import { isRefusal } from '../../src/rules/ways/place.js';
import { successors } from '../../src/rules/ways/successors.js';
import type { World } from '../../src/rules/ways/world.js';

type Damage = (sheet: FactSheet) => void;
const member = (sheet: FactSheet): PersonFacts => sheet.people['member-1']!;
const items = (sheet: FactSheet, kind: ItemFact['kind'], fields: Partial<ItemFact>): void => {
  const { items: fact } = sheet.aircraft;
  if (!fact.known) return;
  sheet.aircraft.items = known(
    fact.value.map((item) => (item.kind === kind ? { ...item, ...fields } : item)),
    sheet.knownAt,
  );
};

/** Each takes something away that the flight may need. */
export const DAMAGES: Record<string, Damage> = {
  'no log': (s) => (member(s).log = known([], s.knownAt)),
  'log not on record': (s) => (member(s).log = unknownFact('the log is not on record')),
  'old landings': (s) => {
    member(s).log = known(
      [{ ...records.LOG, on: '2026-11-01', departedAt: '2026-11-01T18:00:00Z', takeoffs: 3, landings: 3 }],
      s.knownAt,
    );
  },
  'no flight review': (s) => (member(s).reviews = known([], s.knownAt)),
  'no medical': (s) => (member(s).medicals = known([], s.knownAt)),
  'medical withdrawn': (s) => {
    member(s).medicals = known([{ ...records.MEDICAL, withdrawnOn: '2027-02-01' }], s.knownAt);
  },
  'no checkouts': (s) => (member(s).checkouts = known([], s.knownAt)),
  'no club check': (s) => (member(s).checkouts = known([records.CHECKOUT], s.knownAt)),
  'certificate ended': (s) => {
    member(s).certificates = known([{ ...records.CERTIFICATE, validThrough: '2027-01-01' }], s.knownAt);
  },
  'certificate suspended': (s) => {
    const suspensions = [{ id: 'suspension-1', from: '2027-02-01', to: '2027-06-01' }];
    member(s).certificates = known([{ ...records.CERTIFICATE, suspensions }], s.knownAt);
  },
  'member suspended': (s) => {
    member(s).standing = known({ ...records.STANDING, state: 'suspended', since: '2027-01-01' }, s.knownAt);
  },
  'account in arrears': (s) => {
    member(s).standing = known({ ...records.STANDING, state: 'arrears', since: '2026-12-01' }, s.knownAt);
  },
  'membership ends': (s) => {
    member(s).standing = known({ ...records.STANDING, membershipThrough: '2027-03-01' }, s.knownAt);
  },
  tailwheel: (s) => {
    s.aircraft.type = known({ ...records.AIRCRAFT_TYPE, tailwheel: true }, s.knownAt);
  },
  'annual due': (s) => items(s, 'annual', { lastDoneOn: '2025-01-01' }),
  '100-hour near': (s) => items(s, 'hours-100', { lastDoneTenths: 9_480 }),
  'transponder due': (s) => items(s, 'transponder', { lastDoneOn: '2024-01-01' }),
  grounded: (s) => {
    s.aircraft.squawks = known([{ ...records.SQUAWK, state: 'grounding' }], s.knownAt);
  },
  'registration lapsed': (s) => {
    s.aircraft.registration = known(
      [{ ...records.REGISTRATION, issuedOn: '2018-01-01', printedExpiryOn: null }],
      s.knownAt,
    );
  },
  'out of service': (s) => {
    s.aircraft.use = known(
      { status: 'out-of-service', instructionForHire: true, carriesForHire: false },
      s.knownAt,
    );
  },
  'aircraft taken': (s) => {
    const { departs } = s.flight;
    s.aircraft.reservations = known(
      [{ ...records.RESERVATION, from: plusSeconds(departs, -1800), to: plusSeconds(departs, 1800) }],
      s.knownAt,
    );
  },
  'member busy': (s) => {
    const { departs } = s.flight;
    member(s).commitments = known(
      [{ ...records.COMMITMENT, from: plusSeconds(departs, 600), to: plusSeconds(departs, 7200) }],
      s.knownAt,
    );
  },
  'changed panel': (s) => {
    s.aircraft.differences = known(
      [{ ...records.DIFFERENCES, aircraftId: s.aircraft.id, since: '2027-02-01' }],
      s.knownAt,
    );
  },
};

export interface Damaged {
  names: string[];
  sheet: FactSheet;
}

/** A flight of some days ahead, alone or with passengers, by day or night, VFR or IFR; damaged in up to `most` ways. */
export const damaged = (most: number): fc.Arbitrary<Damaged> =>
  fc
    .record({
      names: fc.uniqueArray(fc.constantFrom(...Object.keys(DAMAGES)), { minLength: 1, maxLength: most }),
      days: fc.integer({ min: 1, max: 24 }),
      night: fc.boolean(),
      aboard: fc.constantFrom(1, 1, 2, 3),
      rules: fc.constantFrom('VFR' as const, 'VFR' as const, 'VFR' as const, 'IFR' as const),
    })
    .map(({ names, days, night, aboard, rules }) => {
      const sheet = baseSheet();
      const date = addDays('2027-02-28', days);
      const departs = toSeconds(`${date}T18:00:00Z`) + (night ? 10 * 3600 : 0);
      sheet.flight = {
        ...sheet.flight,
        departs: toInstant(departs),
        arrives: toInstant(departs + 3600),
        purpose: aboard === 1 ? 'solo' : 'passengers',
        personsOnBoard: aboard,
        flightRules: rules,
        loading: null,
      };
      for (const name of names) DAMAGES[name]!(sheet);
      return { names, sheet };
    });

/** Every plan there is: all acts offered in every state, in every order; null when none is a plain yes. */
export function leastOfAll(
  world: World,
  root: State,
  most: number,
  told?: (end: State) => void,
): { least: number | null; whole: boolean } {
  const best = new Map<string, number>();
  let least: number | null = null;
  let looked = 0;
  const stack: State[] = [root];
  for (let state = stack.pop(); state; state = stack.pop()) {
    const before = best.get(state.key);
    if (before !== undefined && before <= state.cost.total) continue;
    best.set(state.key, state.cost.total);
    if (least !== null && state.cost.total >= least) continue;
    if (state.settled && state.verdicts.blocking.length === 0 && !isUnnamed(state)) {
      least = state.cost.total;
      told?.(state);
      continue;
    }
    if ((looked += 1) > most) return { least, whole: false };
    const offers = [
      ...offersAgainst(world, state).filter((offer) => !isRequest(offer)),
      ...waitingPapers(world, state),
    ];
    for (const step of successors(world, state, offers)) {
      const next = step.take();
      if (!isRefusal(next)) stack.push(next);
    }
  }
  return { least, whole: true };
}
