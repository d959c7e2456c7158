/** A report or forecast from its text. The parser is metar-taf-parser; what it passes over in silence is looked at here. */
import { parseMetar, parseTAF } from 'metar-taf-parser';
import { toSeconds, type Instant, type WeatherReport } from '../../rules/index.js';
import { conditionsOf } from './conditions.js';
import { periodsOf } from './forecast-periods.js';
import { groupsOf, trendAt, unreadIn } from './groups.js';
import { instantOf, nearestInstant } from './times.js';

/** What is read of a text, whoever brought it. */
export type ReadReport = Omit<WeatherReport, 'id' | 'source' | 'obtainedAt'>;
export type Kind = WeatherReport['kind'];

/** The text is not a report at all; `message` says what is wrong, for people. */
export class UnreadableReport extends Error {}

/** No forecast speaks of more than thirty hours (ICAO Annex 3, from memory). */
const LONGEST_FORECAST_SECONDS = 36 * 3600;
const HPA_PER_INHG = 33.8639;

/** One line, capitals, without the sign that ends it. */
export const tidy = (text: string): string =>
  text
    .toUpperCase()
    .replace(/\s+/g, ' ')
    .replace(/[=$ ]+$/, '')
    .trim();

/**
 * Reads a report as of an instant near which it was written: the code tells days of the month only.
 * @throws UnreadableReport
 */
export function readReport(kind: Kind, given: string, near: Instant): ReadReport {
  const text = tidy(given);
  const { station, issuedAt } = headOf(kind, text, near);
  const bare = { kind, airfield: station, text, issuedAt, periods: [], unread: [] };
  const nothing = { observed: null, trend: null, from: null, to: null };
  if (/\b(?:NIL|CNL)\b/.test(text)) return { ...bare, ...nothing };
  return kind === 'metar'
    ? { ...bare, ...nothing, ...observation(text) }
    : { ...bare, ...nothing, ...forecast(text, issuedAt) };
}

/** Station and time; every report has them. */
function headOf(kind: Kind, text: string, near: Instant): { station: string; issuedAt: Instant } {
  const head = /^(?:(?:METAR|SPECI|TAF|AMD|COR) )*([A-Z][A-Z0-9]{3}) (?:NIL )?(\d\d)(\d\d)(\d\d)Z\b/.exec(
    text,
  );
  if (!head)
    throw new UnreadableReport(
      'A report begins with its station of four letters and its time, such as XQHB 271651Z; copy it whole.',
    );
  const forecastGiven = /^TAF\b/.test(text) || /Z \d{4}\/\d{4}\b/.test(text);
  if (forecastGiven !== (kind === 'taf'))
    throw new UnreadableReport(
      kind === 'taf'
        ? 'This is a report, no forecast: it tells no span for which it holds. Give it as a METAR.'
        : 'This is a forecast; give it as a TAF.',
    );
  const [, station, day, hour, minute] = head;
  const issuedAt = nearestInstant({ day: Number(day), hour: Number(hour), minute: Number(minute) }, near);
  if (issuedAt === null) throw new UnreadableReport(`There is no time ${day}${hour}${minute}Z.`);
  return { station: station!, issuedAt };
}

function observation(text: string): Pick<ReadReport, 'observed' | 'trend' | 'unread'> {
  const parsed = parsing(() => parseMetar(text));
  const groups = groupsOf(text);
  const trend = trendAt(groups);
  const body = trend === -1 ? groups : groups.slice(0, trend);
  const unread = unreadIn(body, parsed.station);
  const { temperature = null, dewPoint = null, altimeter } = parsed;
  const inHg = altimeter && (altimeter.unit === 'inHg' ? altimeter.value : altimeter.value / HPA_PER_INHG);
  const plausible = inHg !== undefined && inHg >= 25 && inHg <= 33;
  return {
    observed: {
      ...conditionsOf(parsed, body, unread),
      ...{ temperatureC: temperature, dewPointC: dewPoint },
      altimeterInHg: plausible ? Math.round(inHg * 100) / 100 : null,
    },
    trend: trend === -1 || groups[trend] === 'NOSIG' ? null : groups.slice(trend).join(' '),
    unread,
  };
}

function forecast(text: string, issuedAt: Instant): Pick<ReadReport, 'from' | 'to' | 'periods' | 'unread'> {
  const parsed = parsing(() => parseTAF(text, { issued: new Date(issuedAt) }));
  const [from, to] = [instantOf(parsed.validity.start), instantOf(parsed.validity.end)];
  const seconds = toSeconds(to) - toSeconds(from);
  if (seconds <= 0 || seconds > LONGEST_FORECAST_SECONDS)
    throw new UnreadableReport('The span for which the forecast holds cannot be read; copy it whole.');
  return { from, to, ...periodsOf(parsed) };
}

/** The parser's own errors say little to people. */
function parsing<T>(parse: () => T): T {
  try {
    return parse();
  } catch {
    throw new UnreadableReport('It cannot be read as a report or forecast; copy it whole from its source.');
  }
}
