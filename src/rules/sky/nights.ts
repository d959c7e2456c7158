/**
 * The three nights of the regulations, as whole-second spans at a place:
 *
 * - `civil`: end of evening civil twilight to beginning of morning civil twilight (14 CFR 1.1)
 * - `passenger`: one hour after sunset to one hour before sunrise (14 CFR 61.57(b))
 * - `lights`: sunset to sunrise (14 CFR 91.209, 61.101)
 *
 * A span holds both its ends. A flight that arrives in the very second the night begins touches it: the engine judges a
 * flight up to and including its arrival, and for every rule that asks, night is the stricter side. Under the midnight
 * sun there is no night; in polar night it does not end, and is cut at the ends of what was asked.
 */
import { localClock, type EpochSeconds } from '../calendar/instants.js';
import type { Moment } from '../engine/moment.js';
import { UnknownFact } from '../engine/unknown.js';
import type { AirfieldFact } from '../facts/flight.js';
import {
  CIVIL_TWILIGHT_ALTITUDE_DEG,
  isPlace,
  solarDay,
  solarDayNumber,
  SUNSET_ALTITUDE_DEG,
  type Place,
} from './sun.js';

export type NightKind = 'civil' | 'passenger' | 'lights';

/** A stretch of night, both ends included. */
export interface NightSpan {
  from: EpochSeconds;
  to: EpochSeconds;
}

const DAY = 86_400;
/** How far inside sunset and sunrise each night lies, and which altitude bounds it. */
const BOUNDS: Record<NightKind, { altitudeDeg: number; insetSeconds: number }> = {
  civil: { altitudeDeg: CIVIL_TWILIGHT_ALTITUDE_DEG, insetSeconds: 0 },
  passenger: { altitudeDeg: SUNSET_ALTITUDE_DEG, insetSeconds: 3600 },
  lights: { altitudeDeg: SUNSET_ALTITUDE_DEG, insetSeconds: 0 },
};

/** Spans are worked out in pages of so many solar days and remembered by kind, place and page. */
const PAGE_DAYS = 8;
const pages = new Map<string, Map<number, NightSpan[]>>();
const MOST_PAGES = 5000;
let kept = 0;

/** The nights at a place that share a second with [from, to], cut to it, in order and apart from each other. */
export function nightSpans(kind: NightKind, place: Place, from: EpochSeconds, to: EpochSeconds): NightSpan[] {
  const first = Math.floor(solarDayNumber(from, place.longitudeDeg) / PAGE_DAYS);
  const last = Math.floor(solarDayNumber(to, place.longitudeDeg) / PAGE_DAYS);
  const spans: NightSpan[] = [];
  for (let page = first; page <= last; page += 1) {
    for (const span of pageOf(kind, place, page)) {
      if (span.to < from || span.from > to) continue;
      join(spans, { from: Math.max(span.from, from), to: Math.min(span.to, to) });
    }
  }
  return spans;
}

/** Is it night at a place in a given second? */
export function isNight(kind: NightKind, place: Place, at: EpochSeconds): boolean {
  return nightSpans(kind, place, at, at).length > 0;
}

/**
 * The first night at a place that shares a second with [from, to], not cut to it; null when there is none. Where a night
 * runs over the edge of a page it is seen in two pieces that meet.
 */
export function firstNight(
  kind: NightKind,
  place: Place,
  from: EpochSeconds,
  to: EpochSeconds,
): NightSpan | null {
  const last = Math.floor(solarDayNumber(to, place.longitudeDeg) / PAGE_DAYS);
  for (let page = Math.floor(solarDayNumber(from, place.longitudeDeg) / PAGE_DAYS); page <= last; page += 1) {
    for (const span of pageOf(kind, place, page)) {
      if (span.to >= from) return span.from <= to ? span : null;
    }
  }
  return null;
}

function pageOf(kind: NightKind, place: Place, page: number): NightSpan[] {
  const near = `${kind}|${place.latitudeDeg}|${place.longitudeDeg}`;
  let byPage = pages.get(near);
  const known = byPage?.get(page);
  if (known) return known;
  if (kept >= MOST_PAGES) {
    pages.clear();
    byPage = undefined;
    kept = 0;
  }
  if (!byPage) pages.set(near, (byPage = new Map()));
  const spans = workOut(kind, place, page);
  byPage.set(page, spans);
  kept += 1;
  return spans;
}

function workOut(kind: NightKind, place: Place, page: number): NightSpan[] {
  const { altitudeDeg, insetSeconds } = BOUNDS[kind];
  // One day more at each side, so that a night on the edge of the page is seen whole before an hour is taken off it.
  const from = page * PAGE_DAYS;
  const dark = darkness(altitudeDeg, place, from - 1, from + PAGE_DAYS);
  const start = Math.round(from * DAY - place.longitudeDeg * 240);
  const end = Math.round((from + PAGE_DAYS) * DAY - place.longitudeDeg * 240);
  return dark
    .map((span) => ({ from: span.from + insetSeconds, to: span.to - insetSeconds }))
    .filter((span) => span.from <= span.to && span.to >= start && span.from <= end)
    .map((span) => ({ from: Math.max(span.from, start), to: Math.min(span.to, end) }));
}

/** The sun below an altitude, over solar days `first` to `last`. */
function darkness(altitudeDeg: number, place: Place, first: number, last: number): NightSpan[] {
  const spans: NightSpan[] = [];
  for (let number = first; number <= last; number += 1) {
    const day = solarDay(altitudeDeg, place, number);
    const edges = [day.from, ...day.crossings, day.to];
    for (let index = day.beginsBelow ? 0 : 1; index + 1 < edges.length; index += 2) {
      join(spans, { from: edges[index]!, to: edges[index + 1]! });
    }
  }
  return spans;
}

/** Adds a later span, making one of two that meet. */
function join(spans: NightSpan[], next: NightSpan): void {
  const before = spans[spans.length - 1];
  if (before && next.from <= before.to + 1) before.to = Math.max(before.to, next.to);
  else spans.push({ ...next });
}

/** How far past the arrival the sun is looked up for the next change. */
const LOOK_AHEAD = 4 * DAY;

/**
 * Does any part of the flight lie in that night, at any airfield of its route? It remembers the one departure at which
 * the answer next differs (or the end of what it looked up), so asking costs two change points a day and no more.
 * Throws UnknownFact when the route has no place to look from.
 */
export function touchesNight(moment: Moment, route: readonly AirfieldFact[], kind: NightKind): boolean {
  const places = placesOf(route);
  return moment.watch(({ departs, arrives }) => {
    const end = arrives + LOOK_AHEAD;
    let next = end;
    for (const place of places) next = Math.min(next, firstNight(kind, place, departs, end)?.from ?? end);
    const answer = next <= arrives;
    // `watch` takes the end of what is known as an arrival.
    const length = arrives - departs;
    return {
      answer,
      edges: [],
      knownTo: answer ? lastTouching(kind, places, departs, length, end) + 1 + length : next,
    };
  });
}

/** The last departure of the present run of departures that touch: nights whose departures follow without a gap join. */
function lastTouching(
  kind: NightKind,
  places: readonly Place[],
  departs: EpochSeconds,
  length: number,
  end: EpochSeconds,
): EpochSeconds {
  let last = departs;
  for (;;) {
    const before = last;
    for (const place of places) {
      // A flight that leaves a second later still touches a night that begins by the time it arrives.
      const night = firstNight(kind, place, last + 1, last + 1 + length);
      if (night) last = Math.max(last, Math.min(night.to, end));
    }
    if (last === before || last >= end) return last;
  }
}

/** How far ahead a sentence may name the start of a night. */
const SENTENCE_REACH = 36 * 3600;

/**
 * Clock reading 'HH:MM' at which the next such night begins at a place, for a flight that departs by day; the seconds
 * are dropped, so the clock is never late. In the place's own zone where it has one, else the club's. Null when the
 * flight departs in the night, or none begins within 36 hours. For sentences only: it adds no change point.
 */
export function nextNightStarts(
  moment: Moment,
  place: Place & { zone?: string },
  kind: NightKind,
): string | null {
  return moment.watch(({ departs }) => {
    const next = firstNight(kind, place, departs, departs + SENTENCE_REACH);
    const answer = next && next.from > departs ? localClock(next.from, place.zone ?? moment.zone) : null;
    return { answer, edges: [], knownTo: Number.POSITIVE_INFINITY };
  });
}

function placesOf(route: readonly AirfieldFact[]): Place[] {
  const places: Place[] = [];
  for (const field of route) {
    if (!isPlace(field))
      throw new UnknownFact(
        'flight.route',
        `where ${field.name} lies is not on record, so night there is not known`,
      );
    const seen = places.some(
      (place) => place.latitudeDeg === field.latitudeDeg && place.longitudeDeg === field.longitudeDeg,
    );
    if (!seen) places.push(field);
  }
  if (places.length === 0)
    throw new UnknownFact('flight.route', 'the flight names no airfield, so night on its way is not known');
  return places;
}
