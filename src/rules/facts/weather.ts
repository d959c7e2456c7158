/** Weather reports and forecasts as read from their text: plain data, so that a judgement can be replayed without reading them anew. */
import type { Instant } from '../calendar/instants.js';

/**
 * What a report, or one part of a forecast, says. Null is not said, or could not be read: unknown, never assumed. In a
 * temporary or probable part null is not said to differ.
 */
export interface WeatherConditions {
  /** Degrees true; null with a speed: variable. */
  windFromDeg: number | null;
  windKt: number | null;
  gustKt: number | null;
  /** The wind keeps to no direction: VRB, or between two (dddVddd). */
  windVaries: { fromDeg: number; toDeg: number } | 'any' | null;
  visibilitySm: number | null;
  /** How the visibility is meant: P6SM and 9999 say at least, M1/4SM less than. */
  visibilityIs: 'exactly' | 'at-least' | 'less-than' | null;
  /** Lowest broken or overcast layer, or vertical visibility; where there is none, the height below which there is none. */
  ceilingFtAgl: number | null;
  ceilingIs: 'base' | 'none-below' | null;
  /** Weather in the code's own letters: '+TSRA', 'BR'. */
  phenomena: string[];
  temperatureC: number | null;
  dewPointC: number | null;
  altimeterInHg: number | null;
}

/** A part of a forecast. Prevailing parts overlap while one becomes the other: then either may be. */
export interface ForecastPeriod {
  change: 'prevailing' | 'temporary' | 'probable';
  /** Of a probable part: 30 or 40. */
  probabilityPercent: number | null;
  from: Instant;
  to: Instant;
  conditions: WeatherConditions;
  /** The part as it was written. */
  text: string;
}

/** A report (METAR, SPECI) or a forecast (TAF) of one airfield. */
export interface WeatherReport {
  /** Id of the stored text. */
  id: string;
  kind: 'metar' | 'taf';
  /** The airfield's code. */
  airfield: string;
  text: string;
  source: 'fetched' | 'pasted';
  /** When it was observed, or issued. */
  issuedAt: Instant;
  /** When the service got it. */
  obtainedAt: Instant;
  /** Of a report: what was observed. */
  observed: WeatherConditions | null;
  /** Of a report: what it adds about the next two hours, as written. */
  trend: string | null;
  /** Of a forecast: from when to when it speaks, and its parts in order. */
  from: Instant | null;
  to: Instant | null;
  periods: ForecastPeriod[];
  /** Groups that could not be read; what they may have said of visibility and clouds is then unknown. */
  unread: string[];
}
