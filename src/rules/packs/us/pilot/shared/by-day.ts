/** Staying out of the night: the condition for a flight that ends before it, the remedy for one that does not. */
import { localClock, toInstant, toSeconds, type EpochSeconds } from '../../../../calendar/instants.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { AirfieldFact } from '../../../../facts/flight.js';
import { nightSpans, type NightKind } from '../../../../sky/nights.js';

const BEGINS: Record<NightKind, string> = {
  civil: 'the end of evening twilight',
  passenger: 'one hour after sunset',
  lights: 'sunset',
};
/** Moved flights leave on the five minutes and keep a minute clear of the night. */
const STEP = 300;
const MARGIN = 60;
/** A night is spoken of when it begins within NEAR, and looked for as far as FAR. */
const NEAR = 36 * 3600;
const FAR = 10 * 86_400;
/** How far around the flight a day is looked for. */
const REACH = 2 * 86_400;

/**
 * 'Be on the ground at XQHB before 18:51, ...', for a flight that lies outside the night; none when no night begins
 * within a day and a half. Where none does, the moment remembers when one will.
 */
export function downBeforeNight(moment: Moment, route: readonly AirfieldFact[], kind: NightKind): string[] {
  const field = route[route.length - 1]!;
  const starts = moment.watch(({ departs }) => {
    const next = nightSpans(kind, field, departs, departs + FAR)[0]?.from ?? departs + FAR;
    const near = next - departs <= NEAR;
    // `watch` takes the end of what is known as an arrival.
    const knownTo = near ? Number.POSITIVE_INFINITY : next - NEAR + moment.durationSeconds;
    return { answer: near ? next : null, edges: [], knownTo };
  });
  if (starts === null) return [];
  const clock = localClock(starts, field.zone);
  return [`Be on the ground at ${field.code} before ${clock}, ${BEGINS[kind]}, or the answer changes.`];
}

/**
 * Moves a flight that touches the night to the nearest earlier, else later, time that does not. None when its length
 * fits no day within reach.
 */
export function flyByDay(
  moment: Moment,
  route: readonly AirfieldFact[],
  kind: NightKind,
  act: string,
): Remedy[] {
  const departs = moment.watch((span) => ({
    answer: dayDeparture(moment, route, kind, span.departs),
    edges: [],
    knownTo: Number.POSITIVE_INFINITY,
  }));
  if (departs === null) return [];
  const arrives = departs + moment.durationSeconds;
  const field = route[route.length - 1]!;
  return [
    {
      act,
      title: `Leave at ${localClock(departs, moment.zone)} and be on the ground at ${field.code} by ${localClock(arrives, moment.zone)}, outside the night.`,
      by: 'member',
      effects: [{ op: 'flight', fields: { departs: toInstant(departs), arrives: toInstant(arrives) } }],
    },
  ];
}

function dayDeparture(
  moment: Moment,
  route: readonly AirfieldFact[],
  kind: NightKind,
  planned: EpochSeconds,
): EpochSeconds | null {
  const length = moment.durationSeconds;
  const dark = (from: EpochSeconds, to: EpochSeconds) =>
    route.flatMap((field) => nightSpans(kind, field, from, to));
  const knownAt = toSeconds(moment.hoursFromKnowledge(0));
  const spans = dark(planned - REACH, planned + length + REACH).sort((a, b) => a.from - b.from);
  const earlier = spans
    .map((span) => Math.floor((span.from - MARGIN - length) / STEP) * STEP)
    .filter((at) => at <= planned)
    .reverse();
  const later = spans
    .map((span) => Math.ceil((span.to + MARGIN) / STEP) * STEP)
    .filter((at) => at >= planned)
    .sort((a, b) => a - b);
  return [...earlier, ...later].find((at) => at >= knownAt && dark(at, at + length).length === 0) ?? null;
}
