import { CROSS_COUNTRY_EXPERIENCE } from '../../rules/parameters/us/flight.js';
import { distanceNm } from '../../rules/air/distance.js';
import { hoursText, type Check, type Flown } from './check.js';

const SOURCE = 'Geodesic of the WGS 84 ellipsoid; 14 CFR 61.1(b), cross-country time (i) and (ii)';
const HEAD = { check: 'cross-country', field: 'crossCountryH' } as const;

/**
 * Cross-country hours against where the flight began and ended. Cross-country time is in an aircraft and takes a landing
 * elsewhere than where the flight began, at any distance (14 CFR 61.1(b), (i)); towards most certificates and ratings one
 * of more than 50 NM (ii). None logged is never flagged: many keep the longer flights alone. Time towards an airline
 * transport certificate without such a landing (vi) is no part of this column.
 */
export function crossCountry(flown: Flown): Check {
  const { crossCountryTenths, device, from, to, landings } = flown;
  const head = { ...HEAD, written: hoursText(crossCountryTenths), source: SOURCE };
  if (device !== null) {
    const logged = crossCountryTenths > 0;
    const says = logged
      ? 'Cross-country time is flown in an aircraft; this was a training device.'
      : 'It was time in a training device, and none is logged.';
    return { ...head, outcome: logged ? 'flagged' : 'fits', computed: '0.0 h', says };
  }
  if (from.code === to.code) return thereAndBack(head, crossCountryTenths, landings, from.code);
  if (from.at === null || to.at === null) {
    const code = from.at === null ? from.code : to.code;
    const says = `Where ${code} lies is not on record: it is no airfield of the club.`;
    return { ...head, outcome: 'not-checkable', computed: null, source: null, says };
  }
  const nm = distanceNm(from.at, to.at);
  const computed = `${nm.toFixed(1)} NM`;
  const way = `From ${from.code} to ${to.code} it is ${computed} in a straight line`;
  return { ...head, outcome: 'fits', computed, says: `${way}: ${comparison(nm, flown.on)}.` };
}

function thereAndBack(
  head: Pick<Check, 'check' | 'field' | 'written' | 'source'>,
  tenths: number,
  landings: number,
  code: string,
): Check {
  if (tenths === 0)
    return {
      ...head,
      outcome: 'fits',
      computed: '0.0 NM',
      says: `The flight ended where it began, at ${code}.`,
    };
  if (landings === 1) {
    const says = `The one landing was at ${code}, where the flight began; cross-country time takes a landing elsewhere.`;
    return { ...head, outcome: 'flagged', computed: '0.0 NM', says };
  }
  const says =
    landings === 0
      ? `The flight ended where it began, and whoever landed logs where.`
      : `The flight ended where it began; where else it landed the entry does not say.`;
  return { ...head, outcome: 'not-checkable', computed: null, source: null, says };
}

function comparison(nm: number, on: string): string {
  const limit = limitNm(on);
  return nm > limit
    ? `more than ${limit} NM, so it counts towards most certificates and ratings`
    : `towards most certificates and ratings it takes a landing more than ${limit} NM away`;
}

/** The distance in force on a day. */
function limitNm(on: string): number {
  const { values } = CROSS_COUNTRY_EXPERIENCE[0]!;
  return values.findLast(({ from }) => from === null || from <= on)!.value as number;
}
