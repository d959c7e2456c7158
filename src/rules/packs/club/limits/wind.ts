/** Wind, crosswind and gusts against the limits set. */
import { bestRunway, windComponents, withGustKt, type RunwayWind, type Wind } from '../../../air/wind.js';
import type { Remedy } from '../../../engine/remedy.js';
import { need, UnknownFact } from '../../../engine/unknown.js';
import type { AirfieldFact, FlightFacts, RunwayFact } from '../../../facts/flight.js';
import type { LimitsFact } from '../../../facts/person.js';
import { SPEAKS } from '../../../parameters/club/weather.js';
import { openFields, windsOf, type WindsAt } from '../../common/shared/winds.js';
import { runwaysToUse, useRunways } from '../../choose-runway.js';
import { takeInstructor } from '../../take-instructor.js';
import { countedLimits, type LimitsJudge } from './in-force.js';

/** Parameters that whoever asks for declared weather must declare. */
export const LIMITS_WEATHER = ['club.runway.weather-hours'] as const;
/** And whoever asks for the wind at both ends. */
export const WIND_WEATHER = [...LIMITS_WEATHER, ...SPEAKS] as const;
export const CHECK_WIND = 'Check wind, crosswind and gusts against the limits set, before departure.';

export const WIND_BRANCHES = {
  'no-limit': { status: 'not-applicable', says: 'The limits of {from} say nothing about wind.' },
  within: {
    status: 'met',
    says: 'Within the limits of {from} ({limits}): {winds}.',
  },
  beyond: { status: 'short', says: 'Beyond the limits of {from}, {beyond}.' },
} as const;

type Figures = Pick<LimitsFact, 'windKt' | 'crosswindKt' | 'gustSpreadKt'>;

/** 'wind 20 kt, across the runway 12 kt, gusts 8 kt over the wind'; empty where none is set. */
function words({ windKt, crosswindKt, gustSpreadKt }: Figures): string {
  const parts = [
    windKt === null ? '' : `wind ${windKt} kt`,
    crosswindKt === null ? '' : `across the runway ${crosswindKt} kt`,
    gustSpreadKt === null ? '' : `gusts ${gustSpreadKt} kt over the wind`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}

/** Rounding of computed components does not decide. */
const over = (found: number, limit: number | null): limit is number => limit !== null && found > limit + 1e-9;

/** The runway chosen, or the one that lies best to the wind; null where none is on record. */
function runwayIn(airfield: AirfieldFact, choices: FlightFacts['runways'], wind: Wind): RunwayWind | null {
  return bestRunway(runwaysToUse(airfield, choices), wind);
}

/** What is beyond the limits, in words; `across` is null where the crosswind is not asked for or no runway is known. */
function beyondIn(limits: Figures, wind: Wind, across: RunwayWind | null): string[] {
  const most = withGustKt(wind);
  const spread = Math.max(0, (wind.gustKt ?? 0) - wind.kt);
  const crosswind = across === null ? 0 : Math.abs(across.crosswindKt);
  return [
    ...(over(most, limits.windKt) ? [`${most} kt of wind, more than ${limits.windKt} kt`] : []),
    ...(over(crosswind, limits.crosswindKt)
      ? [
          `${crosswind.toFixed(1)} kt across runway ${across!.runway.designator}, more than ${limits.crosswindKt} kt`,
        ]
      : []),
    ...(over(spread, limits.gustSpreadKt)
      ? [`gusts ${spread} kt over the wind, more than ${limits.gustSpreadKt} kt`]
      : []),
  ];
}

/** The wind at one end of the flight, held against the limits. */
interface Held {
  at: WindsAt;
  /** The strongest across the runway of the winds that may blow; null where not asked for or no runway is known. */
  across: RunwayWind | null;
  most: number;
  beyond: string[];
}

/** The winds told, reported or forecast for departure and arrival; where nothing speaks of them they become a condition. */
export const judgeWind: LimitsJudge<keyof typeof WIND_BRANCHES> = ({ limits, f, moment, p, take }) => {
  const set = words(limits);
  const { from } = limits;
  if (set === '') return take('no-limit', { from });
  const ends = need(
    windsOf(f.flight, moment, p, p.number(WIND_WEATHER[0])),
    'flight.route',
    'no airfield is named',
  );
  const [departure] = ends;
  const held = ends.map((at) => heldAgainst(limits, at, f.flight.runways));
  const counted = [countedLimits(limits)];
  const beyond = held.filter((one) => one.beyond.length > 0);
  if (beyond.length > 0)
    return take(
      'beyond',
      {
        from,
        beyond: beyond.map(({ at, beyond: what }) => `at ${at.where}: ${what.join('; ')}`).join(', and '),
      },
      {
        counted,
        remedies: () => [
          ...beyond.flatMap(({ at }) => otherRunways(limits, at, f.flight.runways)),
          ...takeInstructor(f.flight),
        ],
      },
    );
  const check = `Check the wind before departure against the limits set: ${set}.`;
  if (!departure.known)
    throw new UnknownFact('flight.weather', `no recent wind is declared for the flight (${set})`, check);
  const asked = limits.crosswindKt !== null;
  if (asked && held[0]!.across === null)
    throw new UnknownFact('flight.route', `no runway of ${departure.airfield.code} is on record`, check);
  const isTold = ({ at, across }: Held): boolean => at.known && (!asked || across !== null);
  const told = held.filter(isTold);
  const open = openFields(f.flight.route, ends, (end) => told.some(({ at }) => at === end)).join(' and ');
  const conditions = [
    ...(departure.winds.some(({ gustKt }) => gustKt === null)
      ? [`Make sure that gusts keep within the limits set: ${set}.`]
      : []),
    ...(open === '' ? [] : [`Check the wind at ${open} against the limits set: ${set}.`]),
    ...new Set(ends.flatMap((at) => allowances(limits, at, f.flight.runways))),
  ];
  return take(
    'within',
    { from, limits: set, winds: told.map(heldWords).join('; ') },
    { counted, conditions },
  );
};

function heldAgainst(limits: Figures, at: WindsAt, choices: FlightFacts['runways']): Held {
  const each = at.winds.map((wind) => {
    const across = limits.crosswindKt === null ? null : runwayIn(at.airfield, choices, wind);
    return { across, beyond: beyondIn(limits, wind, across) };
  });
  const across = each.flatMap((one) => one.across ?? []);
  across.sort((a, b) => Math.abs(b.crosswindKt) - Math.abs(a.crosswindKt));
  return {
    ...{ at, across: across[0] ?? null, most: Math.max(...at.winds.map(withGustKt)) },
    beyond: [...new Set(each.flatMap((one) => one.beyond))],
  };
}

/** 'wind 10 kt at XQHB, 0.0 kt of it across runway 09'. */
function heldWords({ at, across, most }: Held): string {
  const part = across
    ? `, ${Math.abs(across.crosswindKt).toFixed(1)} kt of it across runway ${across.runway.designator}`
    : '';
  return `wind ${most} kt at ${at.where}${part}`;
}

/** What may pass through and would be beyond the limits. */
function allowances(limits: Figures, at: WindsAt, choices: FlightFacts['runways']): string[] {
  return at.passing.flatMap(({ wind, text }) => {
    const beyond = beyondIn(limits, wind, runwayIn(at.airfield, choices, wind));
    return beyond.length === 0
      ? []
      : [`Allow at ${at.airfield.code} for ${beyond.join('; ')}: the forecast says ${text}.`];
  });
}

/** Runways of the field on which everything would be within the limits: never the one in use, which is not. */
function otherRunways(
  limits: Figures,
  { airfield, winds }: WindsAt,
  choices: FlightFacts['runways'],
): Remedy[] {
  const within = (runway: RunwayFact): boolean =>
    winds.every((wind) => {
      if (wind.fromDegTrue === null) return false;
      const components = windComponents(runway.trueHeadingDeg, wind.fromDegTrue, withGustKt(wind));
      // Nobody is sent off with the wind from behind.
      return components.headwindKt >= -1e-9 && beyondIn(limits, wind, { runway, ...components }).length === 0;
    });
  return airfield.runways
    .filter(within)
    .map(({ designator }) => useRunways(choices, [{ airfield: airfield.code, runway: designator }]));
}
