/** Lengths of the runways of a flight against the limit set. */
import type { Remedy } from '../../../engine/remedy.js';
import { need } from '../../../engine/unknown.js';
import type { AirfieldFact, FlightFacts } from '../../../facts/flight.js';
import { runwayAt, type CountedWind } from '../../common/runway/choose.js';
import { freshWeather } from '../../common/shared/fresh-weather.js';
import { stayLocal } from '../../common/shared/flight-changes.js';
import { takeInstructor } from '../../take-instructor.js';
import { countedLimits, type LimitsJudge } from './in-force.js';
import { useRunways, withChoices } from '../../choose-runway.js';
import { LIMITS_WEATHER } from './wind.js';

export const RUNWAY_BRANCHES = {
  'no-limit': { status: 'not-applicable', says: 'The limits of {from} say nothing about runways.' },
  'long-enough': {
    status: 'met',
    says: 'The shortest is runway {runway} at {airfield} with {length} ft; the limits of {from} ask for {limit} ft.',
  },
  'too-short': {
    status: 'short',
    says: 'Runway {runway} at {airfield} has only {length} ft; the limits of {from} ask for {limit} ft.',
  },
} as const;

/** The runways used: the one chosen, else the best for the wind told at the field of departure, else the longest. */
function usedOn(
  flight: Pick<FlightFacts, 'route' | 'runways'>,
  wind: CountedWind | null,
): { airfield: AirfieldFact; runway: AirfieldFact['runways'][number] }[] {
  const fields = flight.route.filter(
    ({ id }, index) => flight.route.findIndex((one) => one.id === id) === index,
  );
  return fields.map((airfield, index) => {
    const used = runwayAt(airfield, flight.runways, index === 0 ? wind : null);
    const because = `no runway of ${airfield.code} is on record`;
    return { airfield, runway: need(used, 'flight.route', because).runway };
  });
}

/** Every runway of the flight, the shortest told. A shorter one beside the one taken for granted becomes a condition. */
export const judgeRunway: LimitsJudge<keyof typeof RUNWAY_BRANCHES> = ({ limits, f, moment, p, take }) => {
  const { from, runwayFt: limit } = limits;
  if (limit === null) return take('no-limit', { from });
  const { flight } = f;
  const weather = freshWeather(flight.weather, moment, p.number(LIMITS_WEATHER[0]));
  const windKt = weather?.windKt ?? null;
  const wind = weather && windKt !== null ? { ...weather, windKt } : null;
  const used = usedOn(flight, wind).sort((a, b) => a.runway.lengthFt - b.runway.lengthFt);
  const { airfield, runway } = need(used[0], 'flight.route', 'no airfield is named');
  const counted = [countedLimits(limits)];
  const values = {
    ...{ from, limit, runway: runway.designator, airfield: airfield.code, length: runway.lengthFt },
  };
  if (runway.lengthFt < limit)
    return take('too-short', values, {
      counted,
      remedies: () => [...longerRunways(flight, wind, limit), ...takeInstructor(flight)],
    });
  const conditions = used.flatMap(({ airfield: { code, runways }, runway: { designator } }) => {
    const shorter = runways.some((one) => one.lengthFt < limit);
    const chosen = flight.runways?.some((one) => one.airfield === code);
    return shorter && !chosen
      ? [
          `Use runway ${designator} at ${code}: another there is shorter than the ${limit} ft of the limits set.`,
        ]
      : [];
  });
  return take('long-enough', values, { counted, conditions });
};

/** One change after which every runway is long enough: the longest of the field that is short, or no landing away. */
function longerRunways(
  flight: Pick<FlightFacts, 'route' | 'runways'>,
  wind: CountedWind | null,
  limit: number,
): Remedy[] {
  const fits = (changed: Pick<FlightFacts, 'route' | 'runways'>): boolean =>
    usedOn(changed, wind).every(({ runway }) => runway.lengthFt >= limit);
  const short = usedOn(flight, wind).filter(({ runway }) => runway.lengthFt < limit);
  const { airfield } = short[0]!;
  const choose = airfield.runways.flatMap(({ designator }): Remedy[] => {
    const instead = [{ airfield: airfield.code, runway: designator }];
    if (!fits({ ...flight, runways: withChoices(flight.runways, instead) })) return [];
    return [useRunways(flight.runways, instead)];
  });
  const origin = flight.route[0]!;
  const local = fits({ ...flight, route: [origin, origin] }) ? [stayLocal(flight.route)] : [];
  return [...choose, ...local];
}
