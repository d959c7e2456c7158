/**
 * Weight and balance as the handbooks work it: weight times arm is moment, the sum of the moments over the sum of the
 * weights is the arm of the centre of gravity (FAA-H-8083-1, from memory). Pounds, inches aft of the datum, pound-inches.
 */
import type { WeightAtArm } from './envelope.js';

/** One line of the loading sheet. */
export interface LoadLine {
  what: string;
  weightLb: number;
  armIn: number;
}

/** The sum of the lines. */
export interface Balance extends WeightAtArm {
  momentLbIn: number;
}

export const momentOf = ({ weightLb, armIn }: Pick<LoadLine, 'weightLb' | 'armIn'>): number =>
  weightLb * armIn;

/** Adds the lines up. Throws RangeError where nothing is to be added, because then there is no centre. */
export function balanceOf(lines: readonly LoadLine[]): Balance {
  const weightLb = lines.reduce((sum, line) => sum + line.weightLb, 0);
  if (!(weightLb > 0)) throw new RangeError('a loading sheet without weight has no centre of gravity');
  const momentLbIn = lines.reduce((sum, line) => sum + momentOf(line), 0);
  return { weightLb, momentLbIn, armIn: momentLbIn / weightLb };
}

/** A tank: its arm and the usable fuel it holds, US gallons. */
export interface Tank {
  name: string;
  armIn: number;
  usableUsGal: number;
}

/**
 * Fuel by tank, filled in order; what none holds goes to the last. Burning the fuel empties them in the opposite order,
 * since less fuel is then spread as if that much had been filled.
 */
export function fuelInTanks(tanks: readonly Tank[], usGal: number): number[] {
  let left = usGal;
  return tanks.map(({ usableUsGal }, index) => {
    const here = index === tanks.length - 1 ? left : Math.min(left, usableUsGal);
    left -= here;
    return here;
  });
}

/** How far a centre of gravity moves when weight is moved along the aircraft: weight moved times distance over the whole. */
export const shiftIn = (movedLb: number, byIn: number, totalLb: number): number => (movedLb * byIn) / totalLb;
