import { hoursText, type Check, type Placed } from './check.js';
import type { NightOf } from './night-of.js';

const TENTH = 360;
/** Hours are written to a tenth and a clock is read to the minute, so one tenth either way is still honest. */
const HONEST_TENTHS = 1;
const SOURCE = 'Civil twilight at the places on the straight way (14 CFR 1.1), from the position of the sun';

/** Night hours against the sun between off and on blocks, wherever the aircraft can have been meanwhile. */
export function nightHours(flown: Placed, { civil }: NightOf): Check {
  const { nightTenths, totalTenths } = flown;
  // What was not logged at all may have been the night part.
  const leftOut = Math.max(0, flown.arrives - flown.departs - totalTenths * TENTH);
  const least = Math.max(0, Math.floor((civil.least - leftOut) / TENTH));
  const most = Math.min(totalTenths, Math.ceil(civil.most / TENTH));
  const straight = Math.min(totalTenths, Math.round(civil.straight / TENTH));
  const computed = least === most ? hoursText(straight) : `${hoursText(straight)} (${range(least, most)})`;
  const [tooMany, tooFew] = [nightTenths > most + HONEST_TENTHS, nightTenths < least - HONEST_TENTHS];
  return {
    ...{ check: 'night-hours', field: 'nightH', written: hoursText(nightTenths), computed, source: SOURCE },
    outcome: tooMany || tooFew ? 'flagged' : 'fits',
    says: tooMany
      ? `Of this flight at most ${hoursText(most)} can lie in the night.`
      : tooFew
        ? `Of this flight at least ${hoursText(least)} lies in the night.`
        : 'The night hours go with the sun at the time.',
  };
}

const range = (least: number, most: number): string =>
  `${(least / 10).toFixed(1)} to ${(most / 10).toFixed(1)} h wherever it was flown`;
