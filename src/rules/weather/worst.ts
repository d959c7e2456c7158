/** What is the worst of several conditions, and how conditions are told. */
import type { WeatherConditions } from '../facts/weather.js';

/** Ceiling and visibility that may be relied on; null where one of the conditions leaves it open. */
export interface Worst {
  ceilingFtAgl: number | null;
  visibilitySm: number | null;
}

/** A visibility to be relied on: 'less than' promises nothing. */
export const sureVisibilitySm = ({ visibilitySm, visibilityIs }: WeatherConditions): number | null =>
  visibilitySm !== null && visibilityIs === 'less-than' ? 0 : visibilitySm;

/** The lowest of each among conditions of which any may prevail. */
export function worstOf(conditions: readonly WeatherConditions[]): Worst {
  return {
    ceilingFtAgl: lowest(conditions.map(({ ceilingFtAgl }) => ceilingFtAgl)),
    visibilitySm: lowest(conditions.map(sureVisibilitySm)),
  };
}

const lowest = (values: readonly (number | null)[]): number | null =>
  values.length === 0 || values.some((value) => value === null) ? null : Math.min(...(values as number[]));

/** 'wind from 140° at 21 kt, gusts 26 kt; visibility 0.75 SM; ceiling 800 ft; +TSRA'; empty where nothing is said. */
export function conditionWords(of: WeatherConditions): string {
  return [windWords(of), visibilityWords(of), ceilingWords(of), of.phenomena.join(' ')]
    .filter((part) => part !== '')
    .join('; ');
}

function windWords({ windFromDeg, windKt, gustKt, windVaries }: WeatherConditions): string {
  if (windKt === null) return '';
  const gusts = gustKt === null ? '' : `, gusts ${gustKt} kt`;
  if (windKt === 0 && gustKt === null) return 'calm';
  const between =
    windVaries !== null && windVaries !== 'any'
      ? `, between ${windVaries.fromDeg}° and ${windVaries.toDeg}°`
      : '';
  const from = windFromDeg === null ? 'variable wind' : `wind from ${windFromDeg}°${between}`;
  return `${from} at ${windKt} kt${gusts}`;
}

const MEANT = { exactly: '', 'at-least': ' or more', 'less-than': '' } as const;

function visibilityWords({ visibilitySm, visibilityIs }: WeatherConditions): string {
  if (visibilitySm === null) return '';
  const less = visibilityIs === 'less-than' ? 'less than ' : '';
  return `visibility ${less}${visibilitySm} SM${MEANT[visibilityIs ?? 'exactly']}`;
}

function ceilingWords({ ceilingFtAgl, ceilingIs }: WeatherConditions): string {
  if (ceilingFtAgl === null) return '';
  return ceilingIs === 'none-below' ? `no ceiling below ${ceilingFtAgl} ft` : `ceiling ${ceilingFtAgl} ft`;
}
