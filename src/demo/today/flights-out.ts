import type { EntityManager } from 'typeorm';
import { insertDispatch } from '../../bookings/dispatch/dispatch.sql.js';
import type { MeterOut } from '../../bookings/dispatch/meters-out.js';
import { openSquawks } from '../../fleet/squawks/open-squawks.js';
import { latestReadings } from '../../fleet/meters/latest-readings.js';
import { putOut } from '../../bookings/overdue/aircraft-out.js';
import { addDays, toInstant, toSeconds, type EpochSeconds } from '../../rules/index.js';
import { bookWish } from '../book.js';
import { aircraftBy, type AircraftKey } from '../fleet/aircraft.js';
import type { FlightAsk } from '../flight-ask.js';
import { daylight } from '../flying/daylight.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import { byKey, type Person } from '../people/person.js';
import { at, clock, type When } from '../when.js';

const MINUTE = 60;
const HOUR = 3600;

/** Two flights are out: one that left half an hour ago, and one that should be back by now. */
export async function flightsOut(em: EntityManager, people: readonly Person[], when: When): Promise<void> {
  const now = toSeconds(when.asOf);
  // Neither pilot nor aircraft is among those whose answers are printed for today.
  await out(em, {
    people,
    who: 'priya',
    aircraft: 'traverse',
    from: now - 30 * MINUTE,
    to: now + 75 * MINUTE,
  });
  const due = dueBack(when);
  await out(em, {
    ...{ people, who: 'sven', aircraft: 'wicket', from: due - LONG, to: due },
    more: { usesTransponder: false },
  });
}

/** How long the late flight was to take, and how late it is at the least. */
const LONG = 90 * MINUTE;
const LATE = 45 * MINUTE;

/** When the one that is late was due: a while ago, or before it grew dark on the day before, since it left by day. */
function dueBack(when: When): EpochSeconds {
  const latest = toSeconds(when.asOf) - LATE;
  const today = toSeconds(at(when.today, clock(8))) + LONG <= latest;
  const day = today ? when.today : addDays(when.today, -1);
  return Math.min(latest, toSeconds(at(day, daylight(day).sunset)) - LATE);
}

/** Books a flight as of the hour before and hands its aircraft out; one that the rules refuse stays at home. */
async function out(
  em: EntityManager,
  of: {
    people: readonly Person[];
    who: string;
    aircraft: AircraftKey;
    from: EpochSeconds;
    to: EpochSeconds;
    more?: Partial<FlightAsk>;
  },
): Promise<void> {
  const memberId = byKey(of.people, of.who).id;
  const aircraftId = aircraftBy(of.aircraft).id;
  const id = demoId('out', of.who, of.aircraft);
  const ask: FlightAsk = {
    ...{ memberId, departs: toInstant(of.from), arrives: toInstant(of.to) },
    ...{ purpose: 'solo', personsOnBoard: 1, plannedHours: 1, usesTransponder: true, usesVor: false },
    ...{ airspace: ['E', 'G'], maxAltitudeFtMsl: 8500, maxSpeedKias: 110, ...of.more },
  };
  if (!(await bookWish(em, { id, memberId, instructorId: null, aircraftId, ask }, toInstant(of.from - HOUR))))
    return;
  const squawks = await openSquawks(em, DEMO_CLUB_ID, aircraftId);
  await insertDispatch(em, {
    ...{ id: demoId('dispatch', id), bookingId: id, decisionId: demoId('decision', id), by: memberId },
    ...{ at: toInstant(of.from - 10 * MINUTE), personsOnBoard: 1, fuelUsGal: 30, oilQt: 6 },
    ...{ squawksSeen: squawks.map(({ id }) => id), conditionsAccepted: [] },
    meters: await metersOf(em, aircraftId),
  });
  await putOut(em, { bookingId: id, dueBackAt: ask.arrives });
}

/** Every meter shows what it showed after the last flight. */
async function metersOf(em: EntityManager, aircraftId: string): Promise<MeterOut[]> {
  const last = await latestReadings(em, DEMO_CLUB_ID, [aircraftId]);
  return last.map(({ kind, id: readingId, totalTenths }) => ({
    ...{ kind, readingId, totalTenths, gapTenths: 0, gapBecause: null, gapNote: null },
  }));
}
