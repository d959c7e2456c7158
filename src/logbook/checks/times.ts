/** Date, hours and speed. */
import { localDateOf } from '../../rules/calendar/instants.js';
import { hoursText, NO_TIMES, type Check, type Flown, type Placed } from './check.js';
import { fastestKt } from './reach.js';
import type { Reach } from './reach.js';

const TENTH = 360;
const HOUR = 3600;

/** The date against the clock where the flight began. */
export function dateFlown({ on, departs, from, timesKnown }: Flown): Check {
  const head = { check: 'date', field: 'flownOn', written: on } as const;
  if (timesKnown === false)
    return { ...head, outcome: 'not-checkable', computed: null, source: null, says: NO_TIMES };
  if (from.at === null) {
    const says = `Where ${from.code} lies is not on record: it is no airfield of the club.`;
    return { ...head, outcome: 'not-checkable', computed: null, source: null, says };
  }
  const computed = localDateOf(departs, from.at.zone);
  return {
    ...{ ...head, computed, source: `The time zone of ${from.code}, ${from.at.zone}` },
    outcome: computed === on ? 'fits' : 'flagged',
    says: `The flight left its blocks on ${computed} at ${from.code}.`,
  };
}

/** Flight time is from the first move under its own power to rest after the landing (14 CFR 1.1), so it is the blocks'. */
export function blockHours({ departs, arrives, totalTenths, timesKnown }: Flown): Check {
  const head = { check: 'block-hours', field: 'totalH', written: hoursText(totalTenths) } as const;
  if (timesKnown === false)
    return { ...head, outcome: 'not-checkable', computed: null, source: null, says: NO_TIMES };
  const blockTenths = Math.round((arrives - departs) / TENTH);
  const [tooMany, tooFew] = [
    totalTenths > Math.ceil((arrives - departs) / TENTH) + 1,
    // Less is honest: part of the flight may be another pilot's, or stops lie in it. Under a half is more likely a slip.
    (totalTenths + 1) * 2 < blockTenths,
  ];
  return {
    ...head,
    computed: hoursText(blockTenths),
    outcome: tooMany || tooFew ? 'flagged' : 'fits',
    says: tooMany
      ? 'The hours are more than the time from off to on blocks.'
      : tooFew
        ? 'The hours are less than half of the time from off to on blocks. Check both times.'
        : 'The hours go with the time from off to on blocks.',
    source: 'Off and on blocks (14 CFR 1.1, flight time)',
  };
}

/** The straight way against the time it was flown in. */
export function speed(flown: Placed, { distanceNm }: Reach): Check {
  const seconds = Math.min(flown.arrives - flown.departs, (flown.totalTenths + 1) * TENTH);
  const [kt, most] = [Math.round(distanceNm / (seconds / HOUR)), fastestKt(flown)];
  return {
    ...{ check: 'speed', field: 'toAirfield', written: `${flown.from.code} to ${flown.to.code}` },
    computed: `${kt} kt`,
    outcome: kt > most ? 'flagged' : 'fits',
    says:
      kt > most
        ? `${distanceNm.toFixed(0)} NM in that time is ${kt} kt over the ground; no such aircraft makes ${most}. Check airfields and times.`
        : `${distanceNm.toFixed(0)} NM in that time is ${kt} kt over the ground in a straight line.`,
    source:
      'Geodesic of the WGS 84 ellipsoid; the top speed of the kind of aircraft is common practice, no source',
  };
}
