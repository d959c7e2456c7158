/** Where a transponder and ADS-B Out are needed: 14 CFR 91.215(b) and 91.225(d) as one pure question. */
import { grouped } from '../../../../explain/words.js';
import type { AirspaceClass } from '../../../../facts/flight.js';

/** What is known of the flight's airspace. Null = not known. */
export interface AirspaceOfFlight {
  classes: readonly AirspaceClass[] | null;
  maxAltitudeFtMsl: number | null;
  /** Nautical miles from the nearest listed primary airport (part 91, appendix D section 1), at the closest. */
  nearestPrimaryNm: number | null;
  /** Greatest height above the surface while at or above the altitude of the third case. Absent = not known. */
  heightFtAgl?: number | null;
  /** Not certificated with an engine-driven electrical system, or a balloon or glider (91.215(b)(3), (5)). */
  excepted: boolean;
}

/** Needed, and why; or not needed as long as the conditions hold. */
export interface AirspaceNeed {
  needed: boolean;
  because: string;
  conditions: string[];
}

const feet = (ft: number): string => `${grouped(ft)} ft`;

/**
 * Is the equipment needed?
 *
 * - in class A, B and C, by every aircraft, and above class B and C up to `fromFt`
 * - within `veilNm` of a listed primary airport, up to `fromFt`, except aircraft of the exception
 * - at and above `fromFt`, except aircraft of the exception, and except within `surfaceFt` of the surface. A planned
 *   altitude does not say how high the ground is: without a height the exception is not taken (strict)
 *
 * Class D alone needs neither.
 */
export function transponderNeed(
  of: AirspaceOfFlight,
  fromFt: number,
  veilNm: number,
  surfaceFt: number,
): AirspaceNeed {
  const controlled = (of.classes ?? []).filter((one) => one === 'A' || one === 'B' || one === 'C');
  const yes = (because: string): AirspaceNeed => ({ needed: true, because, conditions: [] });
  if (controlled.length > 0)
    return yes(`the flight goes through class ${[...new Set(controlled)].sort().join(', ')}`);
  const nearSurface = typeof of.heightFtAgl === 'number' && of.heightFtAgl <= surfaceFt;
  const high = of.maxAltitudeFtMsl !== null && of.maxAltitudeFtMsl >= fromFt && !nearSurface;
  if (high && !of.excepted) return yes(`the flight goes to ${feet(of.maxAltitudeFtMsl!)}`);
  if (of.nearestPrimaryNm !== null && of.nearestPrimaryNm <= veilNm && !of.excepted)
    return yes(`the flight goes within ${veilNm} NM of a listed primary airport`);
  return {
    needed: false,
    because: 'the airspace named does not ask for it',
    conditions: [
      `Stay out of class A, B and C, and do not fly above class B or C below ${feet(fromFt)}.`,
      ...(of.nearestPrimaryNm === null && !of.excepted
        ? [`Stay more than ${veilNm} NM from the primary airports listed in part 91, appendix D.`]
        : []),
      ...(of.maxAltitudeFtMsl === null && !of.excepted ? [`Remain below ${feet(fromFt)}.`] : []),
    ],
  };
}

/**
 * ADS-B Out over the Gulf: at and above `fromFt` within `withinNm` of the coast of the United States (91.225(d)(5)).
 * The request does not say how near the coast a flight stays, so no booking is judged by it.
 */
export function adsBOverGulf(
  at: { altitudeFtMsl: number | null; coastNm: number | null },
  fromFt: number,
  withinNm: number,
): boolean {
  const { altitudeFtMsl, coastNm } = at;
  return altitudeFtMsl !== null && coastNm !== null && altitudeFtMsl >= fromFt && coastNm <= withinNm;
}
