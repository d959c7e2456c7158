/** Level, coordinated turns. Speeds are true airspeeds in knots, angles in degrees. Physics; FAA-H-8083-25. */

const RAD = Math.PI / 180;
/** Metres a second in a knot. */
const MPS_PER_KT = 1852 / 3600;
/** Standard gravity, metres a second squared. */
const G = 9.80665;
const METRES_PER_FT = 0.3048;
/** Standard rate: a full turn in two minutes. */
export const STANDARD_RATE_DEG_PER_S = 3;

/** Load factor in a level turn, in g. Throws RangeError from 90 degrees on, where no level turn exists. */
export function loadFactor(bankDeg: number): number {
  return 1 / Math.cos(turningBank(bankDeg) * RAD);
}

/** Factor by which the stall speed rises in a level turn. */
export function stallSpeedFactor(bankDeg: number): number {
  return Math.sqrt(loadFactor(bankDeg));
}

/** Bank for a rate of turn. */
export function bankForRateDeg(ktas: number, rateDegPerS: number = STANDARD_RATE_DEG_PER_S): number {
  return Math.atan((ktas * MPS_PER_KT * rateDegPerS * RAD) / G) / RAD;
}

/** Bank for a standard-rate turn by the rule of thumb: a tenth of the speed plus five (some teach plus seven). */
export function standardRateBankByRuleDeg(ktas: number): number {
  return ktas / 10 + 5;
}

/** Radius of turn in feet. Throws RangeError without bank, where the radius is endless. */
export function turnRadiusFt(ktas: number, bankDeg: number): number {
  if (turningBank(bankDeg) === 0) throw new RangeError('wings level: there is no radius of turn');
  return (ktas * MPS_PER_KT) ** 2 / (G * Math.tan(Math.abs(bankDeg) * RAD)) / METRES_PER_FT;
}

function turningBank(bankDeg: number): number {
  if (!(Math.abs(bankDeg) < 90)) throw new RangeError(`no level turn at ${bankDeg} degrees of bank`);
  return bankDeg;
}
