/** Which airfields of a flight ask for the short-field checkout, by the runways that can be used there. */
import type { Remedy } from '../../../engine/remedy.js';
import { useRunways } from '../../choose-runway.js';
import type { AirfieldFact, FlightFacts, RunwayChoice, RunwayFact } from '../../../facts/flight.js';

/** What makes a runway one for the checkout. */
export interface ShortField {
  /** Shorter than this, feet; 0: length does not matter. */
  shorterThanFt: number;
  grass: boolean;
}

/** One airfield of the route. */
export interface FieldAsked {
  airfield: AirfieldFact;
  /** Runways that may be used: the one chosen, else all. */
  usable: RunwayFact[];
  /** Runways of the airfield that ask for no checkout. */
  easy: RunwayFact[];
  /** `some`: it hangs on which runway is used. `unknown`: no runway that may be used is on record. */
  asks: 'no' | 'some' | 'yes' | 'unknown';
}

export const isShortField = (runway: RunwayFact, { shorterThanFt, grass }: ShortField): boolean =>
  runway.lengthFt < shorterThanFt || (grass && runway.surface === 'grass');

/** Every airfield of the route, each once, in order. */
export function fieldsAsked(flight: Pick<FlightFacts, 'route' | 'runways'>, by: ShortField): FieldAsked[] {
  const airfields = [...new Map(flight.route.map((one) => [one.code, one])).values()];
  return airfields.map((airfield) => {
    const chosen = flight.runways?.find((one) => one.airfield === airfield.code)?.runway;
    const usable = airfield.runways.filter(({ designator }) => chosen === undefined || designator === chosen);
    const easy = airfield.runways.filter((one) => !isShortField(one, by));
    const asking = usable.filter((one) => isShortField(one, by)).length;
    if (usable.length === 0) return { airfield, usable, easy, asks: 'unknown' };
    const asks = asking === 0 ? 'no' : asking === usable.length ? 'yes' : 'some';
    return { airfield, usable, easy, asks };
  });
}

/** 'Use runway 09 or 27 at XQFR: ...', for an airfield where it hangs on the runway. */
export const useEasyRunway = ({ airfield, easy }: FieldAsked): string => {
  const names = easy.map(({ designator }) => designator).sort();
  const last = names.pop()!;
  const which = names.length === 0 ? last : `${names.join(', ')} or ${last}`;
  return `Use runway ${which} at ${airfield.code}: others there need a short-field checkout, and none is on record.`;
};

/** Other runways, where each airfield that asks has one; nothing otherwise. */
export function otherRunways(flight: Pick<FlightFacts, 'runways'>, fields: readonly FieldAsked[]): Remedy[] {
  const asking = fields.filter(({ asks }) => asks === 'yes');
  if (asking.some(({ easy }) => easy.length === 0)) return [];
  const instead = asking.map(({ airfield, easy }): RunwayChoice => {
    const [longest] = [...easy].sort(
      (a, b) => b.lengthFt - a.lengthFt || (a.designator < b.designator ? -1 : 1),
    );
    return { airfield: airfield.code, runway: longest!.designator };
  });
  return [useRunways(flight.runways, instead)];
}
