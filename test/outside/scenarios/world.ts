/**
 * The invented club in which the scenarios are played: it asks nothing beyond the law, and everything that a scenario does
 * not speak of is in order throughout, renewed in good time, so that only the scenario's own law moves the answer.
 */
import { Temporal } from 'temporal-polyfill';
import {
  decideCrew,
  known,
  readFact,
  replaceFact,
  type AircraftCategory,
  type FactKey,
  type FactSheet,
  type ItemFact,
  type Jurisdiction,
  type PersonFacts,
  type Policy,
} from '../../../src/rules/index.js';
import { startingPolicy } from '../../../src/rules/packs/club/starting-policy.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { recordOf } from '../../../src/rules/workshop/case-facts.js';
import * as records from '../../../src/rules/workshop/records.js';
import type { Given } from './read.js';

/** Changing the request is priced out of reach: guidance speaks of making the flight legal as it is. */
const DEAR = 100_000;
const VALUES: Record<string, number | boolean | string> = {
  'club.model-checkout.required': false,
  'club.model-recency.landings': 0,
  'club.annual-check.days': 0,
  'club.differences-checkout.required': false,
  'club.booking-lead.max-days': 100_000,
  'club.override.allowed': false,
  'club.airworthiness.kept-under': 'Club handbook, section 7.1',
  'club.cost.points.passenger-left': DEAR,
  'club.cost.points.plan-changed': DEAR,
  'club.cost.points.hour-moved': DEAR,
};

export const POLICY: Policy = {
  values: [
    ...startingPolicy().values.filter(({ id }) => !(id in VALUES)),
    ...Object.entries(VALUES).map(([id, value]) => ({
      id,
      from: '1990-01-01',
      value,
      reference: 'Club handbook',
    })),
  ],
};

/** Dates from a few weeks before `from` up to `to`, so many days apart. */
function datesBetween(from: string, to: string, daysApart: number): string[] {
  const dates: string[] = [];
  let day = Temporal.Instant.from(from).toZonedDateTimeISO('UTC').toPlainDate().subtract({ days: 21 });
  const end = Temporal.Instant.from(to).toZonedDateTimeISO('UTC').toPlainDate();
  for (; Temporal.PlainDate.compare(day, end) <= 0; day = day.add({ days: daysApart }))
    dates.push(day.toString());
  return dates;
}

const numbered = <T extends object>(dates: readonly string[], id: string, make: (on: string) => T) =>
  dates.map((on, index) => ({ ...make(on), id: `${id}-${index + 1}` }));

/** A pilot whose papers and flying never lapse between two instants. */
function personInOrder(person: PersonFacts, at: string, from: string, to: string): PersonFacts {
  const seldom = datesBetween(from, to, 150);
  const often = datesBetween(from, to, 30);
  const long = { on: '2000-01-01', validThrough: '2060-01-01' };
  const ratings = (['single-engine-piston-land', 'instrument', 'night', 'language'] as const).map((kind) => ({
    ...records.LICENCE_RATING,
    ...long,
    id: `rating-${kind}`,
    kind,
    designator: kind === 'language' ? 'English' : null,
  }));
  const airplane: AircraftCategory = 'airplane';
  return {
    ...person,
    certificates: known(
      [{ ...records.CERTIFICATE, level: 'commercial', issuedOn: '2000-01-01', instrument: [airplane] }],
      at,
    ),
    medicals: known(
      numbered(seldom, 'medical', (examOn) => ({ ...records.MEDICAL, class: 1 as const, examOn })),
      at,
    ),
    reviews: known(
      numbered(seldom, 'review', (on) => ({ ...records.REVIEW, on })),
      at,
    ),
    ratings: known(ratings, at),
    log: known(
      numbered(often, 'log', (on) => ({
        ...records.LOG,
        on,
        departedAt: `${on}T19:00:00Z`,
        ...{ takeoffs: 5, landings: 5, fullStopLandings: 5, nightTakeoffs: 5, nightFullStopLandings: 5 },
      })),
      at,
    ),
    instructor: known(
      person.instructor.known && person.instructor.value.length > 0
        ? numbered(seldom, 'instructor', (on) => ({
            ...records.INSTRUCTOR,
            issuedOn: '2000-01-01',
            recentExperienceOn: on,
          }))
        : [],
      at,
    ),
    standing: known({ ...records.STANDING, since: '2000-01-01', membershipFrom: '2000-01-01' }, at),
  };
}

/** Everything in order between two instants, as known at the first. */
export function inOrder(jurisdiction: Jurisdiction, from: string, to: string): FactSheet {
  const sheet = baseSheet();
  const seldom = datesBetween(from, to, 150);
  const items = sheet.aircraft.items.known ? sheet.aircraft.items.value : [];
  const every = (item: ItemFact, dates: readonly string[]): ItemFact[] =>
    numbered(dates, item.id, (lastDoneOn) => ({ ...item, lastDoneOn, lastDoneTenths: records.METER.tenths }));
  const renewed = items.flatMap((item): ItemFact[] => {
    if (item.kind === 'vor-check') return every(item, datesBetween(from, to, 20));
    if (item.kind !== 'elt-battery') return every(item, seldom);
    const detail = { eltBatteryNewOn: '2000-01-01', eltBatteryReplaceOn: '2060-01-01', eltUseMinutes: 5 };
    return [{ ...item, lastDoneOn: '2000-01-01', detail }];
  });
  return {
    ...sheet,
    jurisdiction,
    knownAt: from,
    people: Object.fromEntries(
      Object.entries(sheet.people).map(([id, person]) => [id, personInOrder(person, from, from, to)]),
    ),
    aircraft: {
      ...sheet.aircraft,
      items: known(renewed, from),
      registration: known(
        numbered(seldom, 'registration', (issuedOn) => ({ ...records.REGISTRATION, issuedOn })),
        from,
      ),
      meters: known([{ ...records.METER, readAt: from }], from),
    },
  };
}

/** Lays what a scenario states over what is in order. Items of the aircraft, and ratings, stand for those of their kind alone. */
export function laidOver(sheet: FactSheet, given: Given, departs: string): FactSheet {
  const { flight, durationMinutes, ...facts } = given;
  const minutes = (durationMinutes as number | undefined) ?? 60;
  const at = Temporal.Instant.from(departs);
  let result: FactSheet = {
    ...sheet,
    flight: {
      ...sheet.flight,
      ...(flight as object),
      departs,
      arrives: at.add({ minutes }).toString(),
    },
  };
  const crew = decideCrew(result.flight, { secondPilotIsPassenger: true });
  for (const [key, value] of Object.entries(facts)) {
    const before = readFact(result, crew, key as FactKey);
    if (!before.known) throw new Error(`${key} is not there to be changed`);
    const whole = complete(key, value, before.value, result.zone);
    result = replaceFact(result, crew, key as FactKey, known(whole, sheet.knownAt) as never);
  }
  return result;
}

/** The sheet with records added to its lists. */
export function withAdded(sheet: FactSheet, added: Given): FactSheet {
  const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
  return Object.entries(added).reduce((result, [key, value]) => {
    const before = readFact(result, crew, key as FactKey);
    if (!before.known || !Array.isArray(before.value)) throw new Error(`${key} is no list to add to`);
    const more = complete(key, value, [], result.zone) as { id: string }[];
    const whole = [...before.value, ...more.map((one) => ({ ...one, id: `added-${one.id}` }))];
    return replaceFact(result, crew, key as FactKey, known(whole, sheet.knownAt) as never);
  }, sheet);
}

function complete(key: string, value: unknown, before: unknown, zone: string): unknown {
  if (!Array.isArray(value)) return typeof value === 'object' ? { ...(before as object), ...value } : value;
  const subject = key.split('.')[1]!;
  const template = recordOf(key);
  const stated = value.map((entry: Record<string, unknown>, index) => {
    const full: Record<string, unknown> = { ...template, id: `${subject}-${index + 1}`, ...entry };
    // A log entry dated by its day alone took place at noon there.
    if (subject === 'log' && entry.departedAt === undefined)
      full.departedAt = Temporal.PlainDateTime.from(`${String(full.on)}T12:00`)
        .toZonedDateTime(zone)
        .toInstant()
        .toString();
    return full;
  });
  if (subject !== 'items' && subject !== 'ratings') return stated;
  const kinds = new Set(stated.map(({ kind }) => kind));
  return [...(before as { kind: string }[]).filter(({ kind }) => !kinds.has(kind)), ...stated];
}

const DATED = ['on', 'examOn', 'courseOn', 'issuedOn', 'lastDoneOn'];

/** Of what a scenario states, what was on record on a day: nothing that was still to come. */
export function knownBy(given: Given, day: string): Given {
  const past = (entry: unknown): boolean =>
    DATED.every((field) => {
      const on = (entry as Record<string, unknown>)[field];
      return typeof on !== 'string' || on <= day;
    });
  return Object.fromEntries(
    Object.entries(given).map(([key, value]) => [key, Array.isArray(value) ? value.filter(past) : value]),
  );
}
