/** What the parser read of a report or a part of a forecast, in the units the rules use. */
import type { parseMetar } from 'metar-taf-parser';
import type { WeatherConditions } from '../../rules/index.js';
import { windUnit } from './groups.js';

type Parsed = Pick<
  ReturnType<typeof parseMetar>,
  'wind' | 'visibility' | 'clouds' | 'verticalVisibility' | 'cavok' | 'weatherConditions'
>;

const METRES_PER_SM = 1609.344;
/** One knot is 1,852 m in an hour. */
const KT_IN = { KT: 1, MPS: 3600 / 1852, KMH: 1 / 1.852 } as const;
/** 9999 and CAVOK: ten kilometres or more (FM 15, 15.6.4 and 15.10). */
const TEN_KM = 10_000;
/** CLR: no cloud below 12,000 ft detected (AIM 7-1, key to the code); statute-mile reports tell layers up to there. */
const CLEAR_BELOW_FT = 12_000;
/** NSC, NCD, CAVOK and reports in metres tell of cloud below 5,000 ft only (FM 15, 15.9). */
const SIGNIFICANT_BELOW_FT = 5000;

const down = (value: number, digits: number): number =>
  Math.floor(value * 10 ** digits + 1e-9) / 10 ** digits;
const nearest = (value: number, digits: number): number => Math.round(value * 10 ** digits) / 10 ** digits;

/** Nothing is known. */
export const NOTHING: WeatherConditions = {
  ...{ windFromDeg: null, windKt: null, gustKt: null, windVaries: null },
  ...{ visibilitySm: null, visibilityIs: null, ceilingFtAgl: null, ceilingIs: null },
  ...{ phenomena: [], temperatureC: null, dewPointC: null, altimeterInHg: null },
};

/** @param groups the part's own groups; with any that could not be read, visibility and ceiling stay unknown. */
export function conditionsOf(
  parsed: Parsed,
  groups: readonly string[],
  unread: readonly string[],
): WeatherConditions {
  const wind = windOf(parsed, groups);
  const phenomena = parsed.weatherConditions
    .map(({ intensity, descriptive, phenomenons }) =>
      [intensity, descriptive, ...phenomenons].filter(Boolean).join(''),
    )
    .filter((code) => code !== '');
  const seen = unread.length > 0 ? {} : { ...visibilityOf(parsed), ...ceilingOf(parsed, groups) };
  return { ...NOTHING, ...wind, ...seen, phenomena };
}

function windOf({ wind }: Parsed, groups: readonly string[]): Partial<WeatherConditions> {
  const unit = windUnit(groups);
  if (!wind || unit === null) return {};
  const kt = (speed: number): number => nearest(speed * KT_IN[unit], 1);
  const between = wind.minVariation !== undefined && wind.maxVariation !== undefined;
  const fromDeg = wind.degrees !== undefined && wind.degrees <= 360 ? wind.degrees : null;
  return {
    windFromDeg: fromDeg,
    windKt: kt(wind.speed),
    gustKt: wind.gust === undefined ? null : kt(wind.gust),
    windVaries: between
      ? { fromDeg: wind.minVariation!, toDeg: wind.maxVariation! }
      : fromDeg === null
        ? 'any'
        : null,
  };
}

function visibilityOf({ visibility, cavok }: Parsed): Partial<WeatherConditions> {
  if (cavok) return { visibilitySm: down(TEN_KM / METRES_PER_SM, 2), visibilityIs: 'at-least' };
  if (!visibility) return {};
  const { value, unit, indicator, min } = visibility;
  const is = indicator === 'P' ? 'at-least' : indicator === 'M' ? 'less-than' : 'exactly';
  if (unit === 'SM') return { visibilitySm: value, visibilityIs: is };
  // Where one direction is worse, nobody chooses from where to come.
  const metres = min ? Math.min(value, min.value) : value >= 9999 ? TEN_KM : value;
  return {
    visibilitySm: down(metres / METRES_PER_SM, 2),
    visibilityIs: !min && value >= 9999 ? 'at-least' : 'exactly',
  };
}

function ceilingOf(
  { clouds, verticalVisibility, cavok }: Parsed,
  groups: readonly string[],
): Partial<WeatherConditions> {
  const said = (group: string): boolean => groups.includes(group);
  // A layer of unknown amount, or a sky obscured who knows how low.
  if (groups.some((group) => /^(?:\/\/\/(?:\d{3}|\/\/\/)|VV\/\/\/|\/{3}$|(?:BKN|OVC)\/\/\/)/.test(group)))
    return {};
  const bases = clouds
    .filter(({ quantity }) => quantity === 'BKN' || quantity === 'OVC')
    .map(({ height }) => height);
  if (verticalVisibility !== undefined) bases.push(verticalVisibility);
  if (bases.length > 0) {
    const lowest = Math.min(...bases.map((base) => base ?? Number.NaN));
    return Number.isFinite(lowest) ? { ceilingFtAgl: lowest, ceilingIs: 'base' } : {};
  }
  const none = (ceilingFtAgl: number): Partial<WeatherConditions> => ({
    ceilingFtAgl,
    ceilingIs: 'none-below',
  });
  if (said('CLR') || said('SKC')) return none(CLEAR_BELOW_FT);
  if (cavok || said('NSC') || said('NCD')) return none(SIGNIFICANT_BELOW_FT);
  if (clouds.length === 0) return {};
  return none(groups.some((group) => group.endsWith('SM')) ? CLEAR_BELOW_FT : SIGNIFICANT_BELOW_FT);
}
