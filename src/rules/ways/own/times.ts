import { toInstant, toSeconds, type EpochSeconds } from '../../calendar/instants.js';
import type { FactSheet } from '../../facts/sheet.js';
import { departureOf, type Offer, type State } from '../state.js';
import * as words from '../words.js';
import type { World } from '../world.js';
import { ownOffer } from './offer.js';

/** How far a flight is moved to get out of the way of another. */
const MOVED_AT_MOST = 24 * 3600;
const STEP = 300;
const CALENDARS = ['calendar.aircraft_free', 'calendar.member_free', 'calendar.instructor_free'];

/** The nearest times, later and earlier, at which aircraft and people are free. */
export function anotherTime(world: World, state: State): Offer[] {
  const { sheet, verdicts } = state;
  if (!verdicts.blocking.some((rule) => CALENDARS.includes(world.ruleset.rules[rule]!.id))) return [];
  const taken = takenTimes(sheet);
  const departs = departureOf(sheet);
  const length = toSeconds(sheet.flight.arrives) - departs;
  return [1, -1].flatMap((way) => {
    const at = freeTime(taken, departs, length, way);
    if (at === null || at < world.start || Math.abs(at - departs) > MOVED_AT_MOST) return [];
    const flight = { departs: toInstant(at), arrives: toInstant(at + length) };
    const title = words.leaveAtAnotherTime(at, at + length, sheet.zone);
    return [
      ownOffer(world, 'leave-at-another-time', title, {
        is: 'effects',
        effects: [{ op: 'flight', fields: flight }],
      }),
    ];
  });
}

function takenTimes({ aircraft, people, flight }: FactSheet): { from: EpochSeconds; to: EpochSeconds }[] {
  const { reservations } = aircraft;
  const commitments = [flight.memberId, flight.instructorId].flatMap((id) => {
    const fact = id === null ? undefined : people[id]?.commitments;
    return fact?.known ? fact.value : [];
  });
  return [...(reservations.known ? reservations.value : []), ...commitments].map(({ from, to }) => ({
    from: toSeconds(from),
    to: toSeconds(to),
  }));
}

function freeTime(
  taken: readonly { from: EpochSeconds; to: EpochSeconds }[],
  departs: EpochSeconds,
  length: number,
  way: number,
): EpochSeconds | null {
  let at = departs;
  for (let tries = 0; tries <= taken.length; tries += 1) {
    const clash = taken.filter(({ from, to }) => from < at + length && to > at);
    if (clash.length === 0) return at === departs ? null : at;
    at =
      way > 0
        ? Math.ceil(Math.max(...clash.map(({ to }) => to)) / STEP) * STEP
        : Math.floor((Math.min(...clash.map(({ from }) => from)) - length) / STEP) * STEP;
  }
  return null;
}
