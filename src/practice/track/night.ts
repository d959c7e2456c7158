/** Time at night along a track: the sun below civil twilight where the aircraft is (14 CFR 1.1). */
import { CIVIL_TWILIGHT_ALTITUDE_DEG, sunAltitudeDeg } from '../../rules/sky/sun.js';
import type { TrackPoint } from './point.js';

/** The sun is looked up no oftener than this; it moves a quarter of a degree in the time. */
const STEP_SECONDS = 60;

/** Seconds of night between two instants; the crossing is taken straight between two looks at the sun. */
export function nightSeconds(points: readonly TrackPoint[], from: number, to: number): number {
  const within = points.filter(({ atSeconds }) => atSeconds >= from && atSeconds <= to);
  let night = 0;
  let before: { at: number; below: number } | null = null;
  for (const [index, point] of within.entries()) {
    const last = index === within.length - 1;
    if (before && point.atSeconds - before.at < STEP_SECONDS && !last) continue;
    const below = CIVIL_TWILIGHT_ALTITUDE_DEG - sunAltitudeDeg(point, Math.round(point.atSeconds));
    if (before) night += (point.atSeconds - before.at) * shareBelow(before.below, below);
    before = { at: point.atSeconds, below };
  }
  return night;
}

/** The share of a stretch on which a straight line from a to b is above zero. */
function shareBelow(a: number, b: number): number {
  if (a > 0 && b > 0) return 1;
  if (a <= 0 && b <= 0) return 0;
  return Math.max(a, b) / Math.abs(a - b);
}
