/** Ceiling and visibility, by day and by night, against the limits set. */
import { plusSeconds } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
import { UnknownFact } from '../../../engine/unknown.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { DeclaredForecast, FlightFacts } from '../../../facts/flight.js';
import type { LimitsFact } from '../../../facts/person.js';
import { touchesNight } from '../../../sky/nights.js';
import { worstOf } from '../../../weather/worst.js';
import { freshWeather } from '../../common/shared/fresh-weather.js';
import { phasesOf } from '../../common/shared/phases.js';
import { takeInstructor } from '../../take-instructor.js';
import { countedLimits, elsewhere, type LimitsJudge } from './in-force.js';
import { LIMITS_WEATHER } from './wind.js';

export const CHECK_WEATHER = 'Check ceiling and visibility against the limits set, before departure.';

export const CEILING_BRANCHES = {
  'no-limit': {
    status: 'not-applicable',
    says: 'The limits of {from} ask for no ceiling or visibility on this flight.',
  },
  enough: { status: 'met', says: 'As the limits of {from} ask ({limits}): {told} at {airfield}.' },
  'too-low': {
    status: 'short',
    says: 'Below the limits of {from}: {wrong}. It is better weather that cures it, or an instructor aboard.',
  },
} as const;

/** The least that is asked, null where nothing is. */
interface Asked {
  ceilingFtAgl: number | null;
  visibilitySm: number | null;
}

const higher = (day: number | null, night: number | null): number | null =>
  night === null ? day : Math.max(night, day ?? night);

const byDayOf = (limits: LimitsFact): Asked => ({
  ...{ ceilingFtAgl: limits.ceilingDayFtAgl, visibilitySm: limits.visibilityDaySm },
});

/** By night both hold: what was thought of for the day alone is no licence for the night. */
const byNightOf = (limits: LimitsFact): Asked => ({
  ceilingFtAgl: higher(limits.ceilingDayFtAgl, limits.ceilingNightFtAgl),
  visibilitySm: higher(limits.visibilityDaySm, limits.visibilityNightSm),
});

/** 'ceiling 2000 ft, visibility 5 SM'; empty where nothing is there. */
function words({ ceilingFtAgl, visibilitySm }: Asked): string {
  const parts = [
    ceilingFtAgl === null ? '' : `ceiling ${ceilingFtAgl} ft`,
    visibilitySm === null ? '' : `visibility ${visibilitySm} SM`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}

/** What was told and is less than asked, in words. */
function lower(told: Asked, asked: Asked, where: string): string[] {
  const less = (found: number | null, least: number | null): boolean =>
    found !== null && least !== null && found < least;
  return [
    ...(less(told.ceilingFtAgl, asked.ceilingFtAgl)
      ? [`a ceiling of ${told.ceilingFtAgl} ft ${where}, less than ${asked.ceilingFtAgl} ft`]
      : []),
    ...(less(told.visibilitySm, asked.visibilitySm)
      ? [`a visibility of ${told.visibilitySm} SM ${where}, less than ${asked.visibilitySm} SM`]
      : []),
  ];
}

const lacks = (told: Asked, asked: Asked): boolean =>
  (asked.ceilingFtAgl !== null && told.ceilingFtAgl === null) ||
  (asked.visibilitySm !== null && told.visibilitySm === null);

/** The forecast for the destination where it speaks of the arrival; nothing told otherwise. */
function forecastThen(forecast: DeclaredForecast | null | undefined, moment: Moment): Asked {
  const covers =
    forecast?.from && forecast.to
      ? !moment.arrivesBefore(forecast.from) && moment.arrivesBefore(plusSeconds(forecast.to, 1))
      : false;
  return {
    ceilingFtAgl: covers ? forecast!.ceilingFtAgl : null,
    visibilitySm: covers ? forecast!.visibilitySm : null,
  };
}

/** The worst that is forecast to prevail at the departure; nothing told otherwise. */
function forecastForDeparture(
  flight: Pick<FlightFacts, 'route' | 'reports'>,
  moment: Moment,
  p: Parameters,
): Asked {
  const phases = (flight.reports ?? []).length === 0 ? [] : phasesOf(flight, moment, p);
  const [departure] = phases;
  return worstOf(departure?.prevailing ?? []);
}

/** The weather told or forecast for the departure field and the forecast for the destination; what is not told becomes a condition. */
export const judgeCeilingVisibility: LimitsJudge<keyof typeof CEILING_BRANCHES> = (of) => {
  const { limits, f, moment, p, take } = of;
  const { from } = limits;
  const [byDay, byNight] = [byDayOf(limits), byNightOf(limits)];
  const differs = words(byDay) !== words(byNight);
  const night = differs && touchesNight(moment, f.flight.route, 'civil');
  const asked = night ? byNight : byDay;
  const set = words(asked);
  if (set === '') return take('no-limit', { from });
  const here = f.flight.route[0]?.code ?? 'the field of departure';
  const fresh = freshWeather(f.flight.weather, moment, p.number(LIMITS_WEATHER[0]));
  const told: Asked = fresh ?? forecastForDeparture(f.flight, moment, p);
  const where = fresh ? here : `${here}, as reported or forecast`;
  const away = elsewhere(f);
  const forecast = forecastThen(f.flight.destinationForecast, moment);
  const counted = [countedLimits(limits)];
  const wrong = [
    ...lower(told, asked, `at ${where}`),
    ...lower(forecast, asked, 'forecast for the destination'),
  ];
  // Weather told for this departure says nothing of another one, so no other time is a cure that could be proven.
  if (wrong.length > 0)
    return take(
      'too-low',
      { from, wrong: wrong.join('; ') },
      { counted, remedies: () => takeInstructor(f.flight) },
    );
  if (lacks(told, asked))
    throw new UnknownFact(
      'flight.weather',
      `no recent ceiling and visibility are declared for the flight (${set} are asked for)`,
      `Check the weather before departure against the limits set: ${set}.`,
    );
  const settled = away === '' || (f.flight.route.length === 2 && !lacks(forecast, asked));
  const conditions = settled ? [] : [`Check the weather at ${away} against the limits set: ${set}.`];
  return take('enough', { from, limits: set, told: words(told), airfield: where }, { counted, conditions });
};
