/** How sure a detection is, said openly: a product of factors, each with its reason. It is no probability. */

export type ConfidenceReason =
  /** Points far apart show less. */
  | 'sampling'
  /** How well the ground velocities lie on one circle. */
  | 'circle-fit'
  /** How far the bank is from the limit, against its own scatter. */
  | 'clear-of-limit'
  /** How near to whole turns. */
  | 'whole-turns'
  | 'level'
  /** No elevation was recorded. */
  | 'no-elevation'
  /** The recorder's elevation was not checked at rest on an airfield. */
  | 'elevation-unchecked'
  /** Motion is not along a runway on record. */
  | 'no-runway-along'
  /** The height alone would not say that the wheels were down; the speed does. */
  | 'by-speed-alone'
  /** Time and height near the ground against what a landing needs. */
  | 'time-on-ground'
  /** The speed lies between a stop and a roll. */
  | 'speed-between'
  | 'recording-ends'
  | 'circuits'
  | 'return-to-fix'
  | 'reciprocal-legs';

export interface ConfidencePart {
  because: ConfidenceReason;
  /** 0 to 1; 1 takes nothing away. */
  factor: number;
}

export interface Confidence {
  /** 0 to 1: the product of the parts. */
  value: number;
  parts: readonly ConfidencePart[];
}

export function confidence(parts: readonly ConfidencePart[]): Confidence {
  const clipped = parts.map(({ because, factor }) => ({ because, factor: round(clip(factor)) }));
  return { value: round(clipped.reduce((product, { factor }) => product * factor, 1)), parts: clipped };
}

/** From 1 at `good` to `least` at `poor` and beyond, straight in between. */
export function slope(value: number, good: number, poor: number, least = 0): number {
  const share = clip((value - good) / (poor - good));
  return 1 - share * (1 - least);
}

const clip = (value: number): number => Math.min(1, Math.max(0, value));
const round = (value: number): number => Math.round(value * 1000) / 1000;
