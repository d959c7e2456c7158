/** Is a centre of gravity within its limits? A polygon of weight (pounds) against arm (inches), its edge inside. */
import type { EnvelopeFact } from '../facts/loading.js';

/** A corner of the polygon, or a loaded aircraft. */
export interface WeightAtArm {
  armIn: number;
  weightLb: number;
}

/** Rounding of binary fractions: a millionth of an inch or pound tips no limit. */
const ROUNDING = 1e-6;

/** What is wrong with a polygon; empty when it can be read. */
export function envelopeFaults(points: readonly WeightAtArm[]): string[] {
  if (points.length < 3) return ['an envelope has at least three corners'];
  if (!points.every(({ armIn, weightLb }) => Number.isFinite(armIn) && weightLb > 0))
    return ['every corner has an arm and a weight of more than 0'];
  const edges = points.map((from, at) => [from, next(points, at)] as const);
  const crossed = edges.some(([a, b]) => edges.some(([c, d]) => cross(a, b, c, d)));
  if (crossed) return ['its edges cross; give the corners in order round the envelope'];
  // Asked last: the halves of a crossed one may cancel out.
  return Math.abs(areaOf(points)) < ROUNDING ? ['the corners lie on one line'] : [];
}

/** Within the polygon or on its edge. */
export function isInside(points: readonly WeightAtArm[], at: WeightAtArm): boolean {
  let inside = false;
  for (const [index, from] of points.entries()) {
    const to = next(points, index);
    if (isOn(from, to, at)) return true;
    if (from.weightLb > at.weightLb === to.weightLb > at.weightLb) continue;
    const armIn =
      from.armIn + ((at.weightLb - from.weightLb) / (to.weightLb - from.weightLb)) * (to.armIn - from.armIn);
    if (at.armIn < armIn) inside = !inside;
  }
  return inside;
}

/** The arms between which the polygon lies at a weight; null above and below it. */
export function armsAt(
  points: readonly WeightAtArm[],
  weightLb: number,
): { forwardIn: number; aftIn: number } | null {
  const arms = points.flatMap((from, index) => {
    const to = next(points, index);
    const [low, high] = [Math.min(from.weightLb, to.weightLb), Math.max(from.weightLb, to.weightLb)];
    if (weightLb < low || weightLb > high) return [];
    if (low === high) return [from.armIn, to.armIn];
    const part = (weightLb - from.weightLb) / (to.weightLb - from.weightLb);
    return [from.armIn + part * (to.armIn - from.armIn)];
  });
  return arms.length === 0 ? null : { forwardIn: Math.min(...arms), aftIn: Math.max(...arms) };
}

/** The categories in whose limits a loaded aircraft is. */
export const categoriesOf = (
  envelopes: readonly EnvelopeFact[],
  at: WeightAtArm,
): EnvelopeFact['category'][] =>
  envelopes.filter(({ points }) => isInside(points, at)).map(({ category }) => category);

const next = <T>(list: readonly T[], at: number): T => list[(at + 1) % list.length]!;

function areaOf(points: readonly WeightAtArm[]): number {
  const twice = points.reduce((sum, from, at) => {
    const to = next(points, at);
    return sum + from.armIn * to.weightLb - to.armIn * from.weightLb;
  }, 0);
  return twice / 2;
}

/** Twice the signed area of a triangle: which side of the line from a to b the third lies on. */
const side = (a: WeightAtArm, b: WeightAtArm, c: WeightAtArm): number =>
  (b.armIn - a.armIn) * (c.weightLb - a.weightLb) - (b.weightLb - a.weightLb) * (c.armIn - a.armIn);

function isOn(from: WeightAtArm, to: WeightAtArm, at: WeightAtArm): boolean {
  const length = Math.hypot(to.armIn - from.armIn, to.weightLb - from.weightLb);
  if (length === 0 || Math.abs(side(from, to, at)) / length > ROUNDING) return false;
  const between = (a: number, b: number, value: number): boolean =>
    value >= Math.min(a, b) - ROUNDING && value <= Math.max(a, b) + ROUNDING;
  return between(from.armIn, to.armIn, at.armIn) && between(from.weightLb, to.weightLb, at.weightLb);
}

/** Edges that only touch do not cross, such as one and the next. */
const cross = (a: WeightAtArm, b: WeightAtArm, c: WeightAtArm, d: WeightAtArm): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
