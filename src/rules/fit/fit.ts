/**
 * Which of several aircraft fits a flight best. The answer goes first; among the same answers points of misfit count, by the
 * club's policy: conditions still open, seats that stay empty, things few aircraft have that somebody else may need, and time
 * left over that is too short to book. Nothing here says whether a flight may be made.
 */
import { toSeconds } from '../calendar/instants.js';
import type { Answer, Decision } from '../engine/finding.js';
import type { AircraftFacts } from '../facts/aircraft.js';
import type { FactSheet } from '../facts/sheet.js';
import { featuresOf, isNeeded, scarceAmong, type Feature } from './features.js';

/** A share of the misfit: what it is for, how many of it, and its points. */
export interface FitPart {
  kind: 'conditions' | 'empty-seats' | 'scarce-features' | 'odd-hours';
  count: number;
  points: number;
  /** Scarce features alone: which. */
  features: Feature[];
}

/** How an aircraft fits the flight it was judged for. */
export interface Fit {
  aircraftId: string;
  registration: string;
  answer: Answer;
  /** The flight may be booked as it was asked for. */
  bookable: boolean;
  points: number;
  parts: FitPart[];
}

/** What fit needs of a judged flight. */
export interface Judged {
  sheet: FactSheet;
  decision: Pick<Decision, 'answer' | 'conditions'>;
}

/** Points of each kind, for one of it. */
export interface FitPrices {
  condition: number;
  emptySeat: number;
  scarceFeature: number;
  oddHour: number;
}

const ORDER: Answer[] = ['yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no'];
/** Less time than this beside a booking is of little use to anybody. */
const ODD_SECONDS = 3600;

/** The judged aircraft in order of fit, best first; what is scarce is counted over the fleet. */
export function byFit(
  judged: readonly Judged[],
  { fleet, prices }: { fleet: readonly AircraftFacts[]; prices: FitPrices },
): Fit[] {
  const scarce = scarceAmong(fleet);
  return judged
    .map((one) => fitOf(one, scarce, prices))
    .sort(
      (a, b) =>
        ORDER.indexOf(a.answer) - ORDER.indexOf(b.answer) ||
        a.points - b.points ||
        (`${a.registration} ${a.aircraftId}` < `${b.registration} ${b.aircraftId}` ? -1 : 1),
    );
}

function fitOf({ sheet, decision }: Judged, scarce: ReadonlySet<Feature>, prices: FitPrices): Fit {
  const { aircraft, flight } = sheet;
  const type = aircraft.type.known ? aircraft.type.value : null;
  const spare = featuresOf(aircraft).filter((one) => scarce.has(one) && !isNeeded(one, flight));
  const parts: FitPart[] = [
    part('conditions', decision.conditions.length, prices.condition),
    part('empty-seats', Math.max(0, (type?.seats ?? 0) - flight.personsOnBoard), prices.emptySeat),
    part('scarce-features', spare.length, prices.scarceFeature, spare),
    part('odd-hours', oddHours(sheet), prices.oddHour),
  ].filter(({ count }) => count > 0);
  return {
    ...{ aircraftId: aircraft.id, registration: type?.registration ?? '', answer: decision.answer },
    bookable: decision.answer === 'yes' || decision.answer === 'yes-with-conditions',
    points: tenths(parts.reduce((sum, one) => sum + one.points, 0)),
    parts,
  };
}

const part = (kind: FitPart['kind'], count: number, each: number, features: Feature[] = []): FitPart => ({
  ...{ kind, count, points: tenths(count * each), features },
});

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** Hours between this flight and the bookings next to it, where they are too few to be booked by somebody else. */
function oddHours({ aircraft, flight }: FactSheet): number {
  if (!aircraft.reservations.known) return 0;
  const [departs, arrives] = [toSeconds(flight.departs), toSeconds(flight.arrives)];
  const spans = aircraft.reservations.value.map(({ from, to }) => [toSeconds(from), toSeconds(to)] as const);
  const before = Math.min(
    ...spans.map(([, to]) => departs - to).filter((gap) => gap >= 0),
    Number.POSITIVE_INFINITY,
  );
  const after = Math.min(
    ...spans.map(([from]) => from - arrives).filter((gap) => gap >= 0),
    Number.POSITIVE_INFINITY,
  );
  const odd = [before, after].filter((gap) => gap < ODD_SECONDS).reduce((sum, gap) => sum + gap, 0);
  return tenths(odd / 3600);
}
