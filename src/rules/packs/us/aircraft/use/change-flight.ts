/** Remedies that change the flight instead of the aircraft. */
import { plusSeconds, toInstant, toSeconds } from '../../../../calendar/instants.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { AirfieldFact } from '../../../../facts/flight.js';
import { nightSpans } from '../../../../sky/nights.js';
import { isPlace } from '../../../../sky/sun.js';

export const changeToVfr: Remedy = {
  act: 'change-to-vfr',
  title: 'Fly under VFR.',
  by: 'member',
  effects: [{ op: 'flight', fields: { flightRules: 'VFR' } }],
};

const REACH = 36 * 3600;

/**
 * Moves a flight that touches civil night into the nearest daylight: earlier, so that it is down before night begins, or
 * later, after it ends. Nothing is offered before the facts were gathered, or where no daylight within a day and a half
 * is long enough.
 */
export function flyByDay(moment: Moment, route: readonly AirfieldFact[]): Remedy[] {
  if (route.length === 0 || !route.every(isPlace)) return [];
  const length = moment.durationSeconds;
  const earliest = toSeconds(moment.hoursFromKnowledge(0));
  return moment.watch(({ departs, arrives }) => {
    const nights = route
      .flatMap((field) => nightSpans('civil', field, departs - REACH, arrives + REACH))
      .sort((a, b) => a.from - b.from);
    let last = departs - REACH;
    let before: number | null = null;
    let after: number | null = null;
    for (const night of [...nights, { from: arrives + REACH, to: arrives + REACH }]) {
      // Daylight lies strictly between two nights; whole minutes keep the times readable.
      const from = Math.ceil((last + 1) / 60) * 60;
      const to = Math.floor((night.from - 1 - length) / 60) * 60;
      if (to >= from && to < departs && to >= earliest) before = to;
      if (to >= from && after === null && from > departs && from >= earliest) after = from;
      last = Math.max(last, night.to);
    }
    const move = (act: string, title: string, at: number | null): Remedy[] => {
      if (at === null) return [];
      const fields = { departs: toInstant(at), arrives: plusSeconds(toInstant(at), length) };
      return [{ act, title, by: 'member', effects: [{ op: 'flight', fields }] }];
    };
    return {
      answer: [
        ...move('land-before-night', 'Fly earlier, and be down before civil night begins.', before),
        ...move('depart-after-night', 'Depart after civil night has ended.', after),
      ],
      edges: [],
      knownTo: Number.POSITIVE_INFINITY,
    };
  });
}
