/** What people are told of suggestions. */
import { NOT_RECORDED, type LimitName, type Suggested } from './suggest.js';

/** In the order in which they are shown. */
export const LIMIT_NAMES: readonly LimitName[] = [
  ...['windKt', 'crosswindKt', 'gustSpreadKt', 'ceilingDayFtAgl', 'ceilingNightFtAgl'],
  ...['visibilityDaySm', 'visibilityNightSm', 'runwayFt', 'night'],
] as LimitName[];

/** What a suggestion rests on, in a sentence. */
export function suggestionSays({ limit, value, evidence }: Suggested): string {
  const last = evidence[0]!.on;
  if (limit === 'crosswindKt')
    return `The most crosswind in which a landing went well was ${value} kt, last on ${last}.`;
  if (limit === 'gustSpreadKt')
    return `The strongest gusts in which a landing went well were ${value} kt over the wind, last on ${last}.`;
  if (limit === 'runwayFt')
    return `The shortest runway landed on was at most ${value} ft long, last on ${last}.`;
  return `Landed at night, last on ${last}.`;
}

/** Why nothing is suggested. */
export function noSuggestionSays(limit: LimitName, days: number): string {
  if ((NOT_RECORDED as readonly string[]).includes(limit))
    return 'Flights on record do not tell it, so nothing is suggested.';
  const missing: Partial<Record<LimitName, string>> = {
    crosswindKt: 'No landing to standard in a crosswind',
    gustSpreadKt: 'No landing to standard in gusts',
    runwayFt: 'No landing on a runway of known length',
    night: 'No landing at night',
  };
  return `${missing[limit]} is on record in the last ${days} days, so nothing is suggested.`;
}
