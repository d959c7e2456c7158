/**
 * What an entry says, held against what can be worked out: the sun, the distance, the clock. Pure. A flag is for people to
 * look at; nothing here changes or refuses an entry, and an entry that fits is not thereby right.
 */
import { counted, hoursText, placed, type Check, type Flown } from './check.js';
import { crossCountry } from './cross-country.js';
import { nightLandings, nightTakeOffs } from './night-counts.js';
import { nightHours } from './night-hours.js';
import { nightOf } from './night-of.js';
import { blockHours, dateFlown, speed } from './times.js';

export { CHECKS, OUTCOMES, type Check, type Field, type Flown } from './check.js';

/** Every check of an entry, in the order of `CHECKS`. */
export function checksOf(flown: Flown): Check[] {
  const where = placed(flown);
  const always = [dateFlown(flown), blockHours(flown)];
  if (typeof where === 'string') return [...always, ...withoutPlaces(flown, where), crossCountry(flown)];
  const night = nightOf(where);
  return [
    ...always,
    speed(where, night.reach),
    nightHours(where, night),
    nightTakeOffs(where, night),
    nightLandings(where, night),
    crossCountry(flown),
  ];
}

function withoutPlaces(flown: Flown, says: string): Check[] {
  const { from, to, nightTenths, nightTakeoffs, nightFullStopLandings } = flown;
  const unchecked = { outcome: 'not-checkable', computed: null, says, source: null } as const;
  return [
    { check: 'speed', field: 'toAirfield', written: `${from.code} to ${to.code}`, ...unchecked },
    { check: 'night-hours', field: 'nightH', written: hoursText(nightTenths), ...unchecked },
    {
      check: 'night-take-offs',
      field: 'nightTakeoffs',
      written: counted(nightTakeoffs, 'take-off'),
      ...unchecked,
    },
    {
      ...{ check: 'night-landings', field: 'nightFullStopLandings' },
      ...{ written: counted(nightFullStopLandings, 'full-stop landing'), ...unchecked },
    },
  ];
}
