/** Wind, crosswind and gusts against the limits set. */
import { bestRunway, windComponents, type RunwayWind, type Wind } from '../../../air/wind.js';
import type { Remedy } from '../../../engine/remedy.js';
import { need, UnknownFact } from '../../../engine/unknown.js';
import type { AirfieldFact, DeclaredWeather, RunwayChoice } from '../../../facts/flight.js';
import type { LimitsFact } from '../../../facts/person.js';
import { freshWeather } from '../../common/shared/fresh-weather.js';
import { takeInstructor } from '../../take-instructor.js';
import { countedLimits, elsewhere, type LimitsJudge } from './in-force.js';

/** Parameters that whoever asks for declared weather must declare. */
export const LIMITS_WEATHER = ['club.runway.weather-hours'] as const;
export const CHECK_WIND = 'Check wind, crosswind and gusts against the limits set, before departure.';

export const WIND_BRANCHES = {
  'no-limit': { status: 'not-applicable', says: 'The limits of {from} say nothing about wind.' },
  within: {
    status: 'met',
    says: 'Within the limits of {from} ({limits}): wind {wind} kt at {airfield}{across}.',
  },
  beyond: { status: 'short', says: 'Beyond the limits of {from}, at {airfield}: {beyond}.' },
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
function runwayIn(
  airfield: AirfieldFact,
  choices: readonly RunwayChoice[] | null | undefined,
  wind: Wind,
): RunwayWind | null {
  const chosen = choices?.find((one) => one.airfield === airfield.code)?.runway;
  const runways = airfield.runways.filter(({ designator }) => chosen === undefined || designator === chosen);
  return bestRunway(runways, wind);
}

/** What is beyond the limits, in words; `across` is null where the crosswind is not asked for or no runway is known. */
function beyondIn(limits: Figures, wind: Wind, across: RunwayWind | null): string[] {
  const most = Math.max(wind.kt, wind.gustKt ?? 0);
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

const windOf = (weather: DeclaredWeather, kt: number): Wind => ({
  ...{ fromDegTrue: weather.windFromDeg, kt, gustKt: weather.gustKt },
});

/** The wind told for the departure field; the other fields of the route become a condition. */
export const judgeWind: LimitsJudge<keyof typeof WIND_BRANCHES> = ({ limits, f, moment, p, take }) => {
  const set = words(limits);
  const { from } = limits;
  if (set === '') return take('no-limit', { from });
  const airfield = need(f.flight.route[0], 'flight.route', 'no airfield is named');
  const hours = p.number(LIMITS_WEATHER[0]);
  const weather = freshWeather(f.flight.weather, moment, hours);
  const kt = weather?.windKt ?? null;
  const check = `Check the wind before departure against the limits set: ${set}.`;
  if (!weather || kt === null)
    throw new UnknownFact('flight.weather', `no recent wind is declared for the flight (${set})`, check);
  const wind = windOf(weather, kt);
  const asked = limits.crosswindKt !== null;
  const across = asked ? runwayIn(airfield, f.flight.runways, wind) : null;
  const counted = [countedLimits(limits)];
  const beyond = beyondIn(limits, wind, across);
  const values = { from, airfield: airfield.code };
  if (beyond.length > 0)
    return take(
      'beyond',
      { ...values, beyond: beyond.join('; ') },
      {
        counted,
        remedies: () => [
          ...otherRunways(limits, airfield, f.flight.runways, wind),
          ...takeInstructor(f.flight),
        ],
      },
    );
  if (asked && !across)
    throw new UnknownFact('flight.route', `no runway of ${airfield.code} is on record`, check);
  const told = {
    ...{ ...values, limits: set, wind: Math.max(kt, wind.gustKt ?? 0) },
    across: across
      ? `, ${Math.abs(across.crosswindKt).toFixed(1)} kt of it across runway ${across.runway.designator}`
      : '',
  };
  const away = elsewhere(f);
  const conditions = [
    ...(wind.gustKt === null ? [`Make sure that gusts keep within the limits set: ${set}.`] : []),
    ...(away === '' ? [] : [`Check the wind at ${away} against the limits set: ${set}.`]),
  ];
  return take('within', told, { counted, conditions });
};

/** Runways of the field on which everything would be within the limits: never the one in use, which is not. */
function otherRunways(
  limits: Figures,
  airfield: AirfieldFact,
  choices: readonly RunwayChoice[] | null | undefined,
  wind: Wind,
): Remedy[] {
  const { fromDegTrue } = wind;
  if (fromDegTrue === null) return [];
  const kt = Math.max(wind.kt, wind.gustKt ?? 0);
  const others = (choices ?? []).filter((one) => one.airfield !== airfield.code);
  return airfield.runways.flatMap((runway): Remedy[] => {
    const { designator } = runway;
    const components = windComponents(runway.trueHeadingDeg, fromDegTrue, kt);
    // Nobody is sent off with the wind from behind.
    if (components.headwindKt < -1e-9) return [];
    if (beyondIn(limits, wind, { runway, ...components }).length > 0) return [];
    const runways = [...others, { airfield: airfield.code, runway: designator }];
    const title = `Use runway ${designator} at ${airfield.code}.`;
    return [{ act: 'choose-runway', title, by: 'member', effects: [{ op: 'flight', fields: { runways } }] }];
  });
}
