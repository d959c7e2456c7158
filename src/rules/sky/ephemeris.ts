/**
 * Where the sun stands over the earth. The positions are astronomy-engine's, taken twice a day and interpolated: the
 * sun's declination and its lead or lag on mean time are so smooth that three points a day give both to a hundred
 * thousandth of a degree, for every place at once.
 */
import {
  Body,
  EquatorFromVector,
  GeoVector,
  MakeTime,
  RotateVector,
  Rotation_EQJ_EQD,
  SiderealTime,
} from 'astronomy-engine';
import type { EpochSeconds } from '../calendar/instants.js';

/** The point of the earth that the sun stands over, as seen from the earth's centre. */
export interface SubsolarPoint {
  declinationDeg: number;
  /** Hour angle of the sun at Greenwich, degrees westward, not reduced to one turn. */
  greenwichHourAngleDeg: number;
}

interface Sample {
  declinationDeg: number;
  /** Hour angle less that of the mean sun: the equation of time, in degrees. */
  leadDeg: number;
}

const HALF_DAY = 43_200;
const samples = new Map<number, Sample>();
const MOST_SAMPLES = 20_000;

/** Where the sun stands at an instant (fractions of a second allowed). */
export function subsolarPoint(at: EpochSeconds): SubsolarPoint {
  const day = Math.floor(at / (2 * HALF_DAY));
  const u = at / (2 * HALF_DAY) - day;
  const [a, b, c] = [sample(2 * day), sample(2 * day + 1), sample(2 * day + 2)];
  // Lagrange's quadratic through u = 0, 1/2 and 1.
  const [p, q, r] = [2 * (u - 0.5) * (u - 1), -4 * u * (u - 1), 2 * u * (u - 0.5)];
  return {
    declinationDeg: p * a.declinationDeg + q * b.declinationDeg + r * c.declinationDeg,
    greenwichHourAngleDeg: 360 * u - 180 + p * a.leadDeg + q * b.leadDeg + r * c.leadDeg,
  };
}

function sample(halfDay: number): Sample {
  const known = samples.get(halfDay);
  if (known) return known;
  if (samples.size >= MOST_SAMPLES) samples.clear();
  const time = MakeTime(new Date(halfDay * HALF_DAY * 1000));
  const { ra, dec } = EquatorFromVector(
    RotateVector(Rotation_EQJ_EQD(time), GeoVector(Body.Sun, time, true)),
  );
  const hourAngleDeg = 15 * (SiderealTime(time) - ra);
  const made = { declinationDeg: dec, leadDeg: turned(hourAngleDeg - 180 * (halfDay - 1)) };
  samples.set(halfDay, made);
  return made;
}

/** An angle brought into [-180, 180). */
const turned = (deg: number): number => deg - 360 * Math.floor((deg + 180) / 360);
