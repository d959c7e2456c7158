/** Staying out of the night: the condition for a flight that ends shortly before it, the remedies for one that does not. */
import { toInstant, toSeconds, type EpochSeconds } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { AirfieldFact } from '../../../facts/flight.js';
import { firstNight, nightSpans, type NightKind } from '../../../sky/nights.js';
import { clockOf, dateAndClock } from '../../when.js';

/** Parameters that whoever asks for the condition must declare. */
export const NIGHT_PARAMETERS = ['us.night.told-within-hours'] as const;

const BEGINS: Record<NightKind, string> = {
  civil: 'the end of evening twilight',
  passenger: 'one hour after sunset',
  lights: 'sunset',
};
/** The acts by which a flight is moved out of the night. */
const ACTS: Record<NightKind, { earlier: string; later: string }> = {
  civil: { earlier: 'land-before-night', later: 'depart-after-night' },
  passenger: { earlier: 'land-before-night', later: 'depart-after-night' },
  lights: { earlier: 'land-before-sunset', later: 'depart-after-sunrise' },
};
/** Moved flights leave on the five minutes and keep a minute clear of the night. */
const STEP = 300;
const MARGIN = 60;
/** How far past the arrival a night is looked for. */
const FAR = 10 * 86_400;
/** How far around the flight a day is looked for. */
const REACH = 2 * 86_400;

/**
 * 'Be on the ground at XQHB before 18:51, one hour after sunset.', for a flight that lies outside the night but ends
 * within so many hours of its beginning at any airfield of the route; none for a flight that ends well before. The
 * moment remembers from which departure the condition is told.
 */
export function downBeforeNight(
  moment: Moment,
  route: readonly AirfieldFact[],
  kind: NightKind,
  p: Parameters,
): string[] {
  const field = route[route.length - 1]!;
  const near = Math.round(p.number(NIGHT_PARAMETERS[0]) * 3600);
  const starts = moment.watch(({ departs, arrives }) => {
    const begins = route.map((place) => firstNight(kind, place, departs, arrives + FAR)?.from);
    const next = Math.min(...begins.map((from) => from ?? arrives + FAR));
    const told = next - arrives <= near;
    // `watch` takes the end of what is known as an arrival.
    return { answer: told ? next : null, edges: [], knownTo: told ? Number.POSITIVE_INFINITY : next - near };
  });
  if (starts === null) return [];
  return [`Be on the ground at ${field.code} before ${clockOf(starts, field.zone)}, ${BEGINS[kind]}.`];
}

/**
 * Moves a flight that touches the night (so that it is known where its airfields lie) to the nearest earlier, and to the nearest later, time that does not. Nothing is
 * offered before the facts were gathered, nor where no day within reach is long enough.
 */
export function flyByDay(moment: Moment, route: readonly AirfieldFact[], kind: NightKind): Remedy[] {
  const found = moment.watch((span) => ({
    answer: dayDepartures(moment, route, kind, span.departs),
    edges: [],
    knownTo: Number.POSITIVE_INFINITY,
  }));
  const field = route[route.length - 1]!;
  const move = (act: string, at: EpochSeconds | undefined): Remedy[] => {
    if (at === undefined) return [];
    const down = at + moment.durationSeconds;
    return [
      {
        act,
        title: `Leave at ${dateAndClock(at, moment.zone)} and be on the ground at ${field.code} by ${dateAndClock(down, moment.zone)}, outside the night.`,
        by: 'member',
        effects: [{ op: 'flight', fields: { departs: toInstant(at), arrives: toInstant(down) } }],
      },
    ];
  };
  return [...move(ACTS[kind].earlier, found.earlier), ...move(ACTS[kind].later, found.later)];
}

function dayDepartures(
  moment: Moment,
  route: readonly AirfieldFact[],
  kind: NightKind,
  planned: EpochSeconds,
): { earlier: EpochSeconds | undefined; later: EpochSeconds | undefined } {
  const length = moment.durationSeconds;
  const dark = (from: EpochSeconds, to: EpochSeconds) =>
    route.flatMap((field) => nightSpans(kind, field, from, to));
  const knownAt = toSeconds(moment.hoursFromKnowledge(0));
  const spans = dark(planned - REACH, planned + length + REACH);
  const free = (at: EpochSeconds): boolean => at >= knownAt && dark(at, at + length).length === 0;
  return {
    earlier: spans
      .map((span) => Math.floor((span.from - MARGIN - length) / STEP) * STEP)
      .filter((at) => at <= planned)
      .sort((a, b) => b - a)
      .find(free),
    later: spans
      .map((span) => Math.ceil((span.to + MARGIN) / STEP) * STEP)
      .filter((at) => at >= planned)
      .sort((a, b) => a - b)
      .find(free),
  };
}
