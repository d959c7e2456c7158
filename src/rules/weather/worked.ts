/** The weather of a flight worked out for people to read: what was reported, what it makes of each runway, and each phase. */
import { densityAltitudeFt, pressureAltitudeFt } from '../air/atmosphere.js';
import { windComponents } from '../air/wind.js';
import { toSeconds, type Instant } from '../calendar/instants.js';
import { momentAt, type Ruleset } from '../engine/judge.js';
import { Parameters } from '../engine/parameters.js';
import { UnknownFact } from '../engine/unknown.js';
import type { AirfieldFact, RunwayFact } from '../facts/flight.js';
import type { FactSheet } from '../facts/sheet.js';
import type { ForecastPeriod, WeatherConditions, WeatherReport } from '../facts/weather.js';
import { phasesOf } from '../packs/common/shared/phases.js';
import { SPEAKS } from '../parameters/club/weather.js';
import { newest, type Phase, type PhaseWeather } from './phases.js';
import { conditionWords, worstOf } from './worst.js';

/** Wind on one runway, knots; with gusts where there are any. Headwind negative: from behind. Crosswind positive: from the right. */
export interface RunwayComponents {
  runway: string;
  /** Null where the wind keeps to no direction: then all of it may blow across, and from behind. */
  headwindKt: number | null;
  crosswindKt: number | null;
  gustHeadwindKt: number | null;
  gustCrosswindKt: number | null;
}

/** A wind on each runway of an airfield. */
export interface WindOnRunways {
  windKt: number | null;
  gustKt: number | null;
  runways: RunwayComponents[];
}

/** What the newest report of an airfield tells. */
export interface FieldWeather extends WindOnRunways {
  airfield: string;
  report: string;
  /** Minutes from the observation to the asking, and to the departure. */
  ageMinutes: number;
  minutesBeforeDeparture: number;
  pressureAltitudeFt: number | null;
  densityAltitudeFt: number | null;
}

/** A phase of the flight as reports and forecasts tell it. */
export interface WorkedPhase {
  phase: Phase;
  airfield: string;
  /** What prevails, in words; more than one while the weather changes; none: nothing speaks of it. */
  prevailing: string[];
  ceilingFtAgl: number | null;
  visibilitySm: number | null;
  /** Departure and arrival where a forecast speaks of them: each wind that may prevail. A report's wind stands under `fields`. */
  winds: WindOnRunways[];
  passing: {
    change: ForecastPeriod['change'];
    probabilityPercent: number | null;
    from: Instant;
    to: Instant;
    says: string;
  }[];
  oldForecast: boolean;
  reportIds: string[];
}

/** A report as it was got, and what was read of it. */
export interface ShownReport extends Pick<
  WeatherReport,
  'id' | 'kind' | 'airfield' | 'text' | 'source' | 'issuedAt' | 'obtainedAt'
> {
  from: Instant | null;
  to: Instant | null;
  unread: string[];
  says: string;
}

export interface WeatherWork {
  reports: ShownReport[];
  fields: FieldWeather[];
  phases: WorkedPhase[];
  /** Why the rest is not known. */
  unknown: string[];
}

/** Works out what the reports on the sheet let be worked out; what they do not is told. */
export function workWeather(sheet: FactSheet, ruleset: Ruleset): WeatherWork {
  const { flight } = sheet;
  const reports = flight.reports ?? [];
  const fields = flight.route.filter(
    ({ code }, index) => flight.route.findIndex((one) => one.code === code) === index,
  );
  const missing = fields
    .filter(({ code }) => !reports.some(({ airfield }) => airfield === code))
    .map(({ code }) => `no report or forecast for ${code} is at hand`);
  const work: WeatherWork = {
    reports: reports.map(shown),
    fields: fields.flatMap((field) => fieldWeather(field, sheet, newest(reports, field.code, 'metar'))),
    phases: [],
    unknown: [
      ...missing,
      ...reports
        .filter(({ unread }) => unread.length > 0)
        .map(({ airfield, unread }) => `of ${airfield} could not be read: ${unread.join(' ')}`),
    ],
  };
  const moment = momentAt(sheet, toSeconds(flight.departs));
  try {
    work.phases = phasesOf(flight, moment, new Parameters(ruleset.book, moment, SPEAKS)).map((one) =>
      phaseShown(one, fields),
    );
  } catch (error) {
    if (!(error instanceof UnknownFact)) throw error;
    work.unknown.push(error.because);
  }
  return work;
}

function shown({ observed, periods, trend, ...report }: WeatherReport): ShownReport {
  const { id, kind, airfield, text, source, issuedAt, obtainedAt, from, to, unread } = report;
  const words = observed ? [conditionWords(observed), ...(trend === null ? [] : [trend])] : [];
  const silent = kind === 'metar' ? observed === null : periods.length === 0;
  return {
    ...{ id, kind, airfield, text, source, issuedAt, obtainedAt, from, to, unread },
    says: silent ? 'says nothing' : words.filter((word) => word !== '').join('; '),
  };
}

function fieldWeather(field: AirfieldFact, sheet: FactSheet, report: WeatherReport | null): FieldWeather[] {
  if (!report?.observed) return [];
  const { observed, issuedAt } = report;
  const minutes = (instant: Instant): number => Math.round((toSeconds(instant) - toSeconds(issuedAt)) / 60);
  const pressure =
    observed.altimeterInHg === null ? null : pressureAltitudeFt(field.elevationFt, observed.altimeterInHg);
  const { temperatureC } = observed;
  return [
    {
      ...{ airfield: field.code, report: report.id },
      ...{ ageMinutes: minutes(sheet.knownAt), minutesBeforeDeparture: minutes(sheet.flight.departs) },
      pressureAltitudeFt: pressure === null ? null : Math.round(pressure),
      densityAltitudeFt:
        pressure === null || temperatureC === null
          ? null
          : Math.round(densityAltitudeFt(pressure, temperatureC)),
      ...onRunways(field, observed),
    },
  ];
}

const onRunways = ({ runways }: AirfieldFact, of: WeatherConditions): WindOnRunways => ({
  ...{ windKt: of.windKt, gustKt: of.gustKt },
  runways: runways.map((runway) => componentsOn(runway, of)),
});

function componentsOn(runway: RunwayFact, of: WeatherConditions): RunwayComponents {
  const { windFromDeg, windKt, gustKt, windVaries } = of;
  const on = (kt: number | null): [head: number | null, cross: number | null] => {
    if (kt === null || windFromDeg === null || windVaries !== null) return [null, null];
    const { headwindKt, crosswindKt } = windComponents(runway.trueHeadingDeg, windFromDeg, kt);
    return [tenth(headwindKt), tenth(crosswindKt)];
  };
  const [[headwindKt, crosswindKt], [gustHeadwindKt, gustCrosswindKt]] = [on(windKt), on(gustKt)];
  return { runway: runway.designator, headwindKt, crosswindKt, gustHeadwindKt, gustCrosswindKt };
}

/** Zero has no sign for people. */
const tenth = (value: number): number => Math.round(value * 10) / 10 + 0;

function phaseShown(of: PhaseWeather, fields: readonly AirfieldFact[]): WorkedPhase {
  const { phase, airfield, prevailing, passing, oldForecast, from } = of;
  const field = fields.find(({ code }) => code === airfield)!;
  const forecast = phase !== 'en-route' && from.every(({ kind }) => kind === 'taf');
  return {
    ...{ phase, airfield, oldForecast, ...worstOf(prevailing) },
    prevailing: prevailing.map((one) => conditionWords(one) || 'says nothing'),
    winds: forecast ? prevailing.map((one) => onRunways(field, one)) : [],
    passing: passing.map(({ change, probabilityPercent, conditions, ...span }) => ({
      ...{ change, probabilityPercent, from: span.from, to: span.to },
      says: conditionWords(conditions) || 'could not be read',
    })),
    reportIds: from.map(({ id }) => id),
  };
}
