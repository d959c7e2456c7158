/** The speed check at half the runway: 70% of lift-off speed there, else abort. Common practice, no source. */
export interface TakeoffCheck {
  checkDistanceFt: number;
  minimumKt: number;
}

/** Where to look, and what the airspeed must be by then. */
export function takeoffCheck(runwayFt: number, liftOffKt: number): TakeoffCheck {
  return { checkDistanceFt: runwayFt / 2, minimumKt: (liftOffKt * 70) / 100 };
}

/** Abort at the half-way point? Reaching the minimum exactly is enough. */
export function mustAbort(check: TakeoffCheck, speedAtHalfKt: number): boolean {
  return speedAtHalfKt < check.minimumKt;
}

/**
 * Airspeed to be expected at the half-way point where acceleration is even: the square of the speed grows with the
 * distance rolled (v² = 2 a s). No more than the lift-off speed, at which the aircraft leaves the ground.
 */
export function halfwaySpeedKt(check: TakeoffCheck, groundRollFt: number, liftOffKt: number): number {
  return liftOffKt * Math.sqrt(Math.min(1, check.checkDistanceFt / groundRollFt));
}
