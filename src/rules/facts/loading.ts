import type { LocalDate } from '../calendar/dates.js';
import type { Evidence } from './fact.js';

/** The empty weight that counts. Arms in inches aft of the datum, weights in pounds. */
export interface WeighingFact extends Evidence {
  /** First day it holds. */
  on: LocalDate;
  emptyWeightLb: number;
  /** Null: nothing is known of the centre of gravity. */
  emptyArmIn: number | null;
  source: 'weighing' | 'computed' | 'equipment-change';
}

/** Where something is loaded. `other`: cargo pods and the like, which are loaded as baggage compartments are. */
export type StationKind = 'seats' | 'fuel' | 'baggage' | 'other';

/** A loading station. Of each kind they are told in order: seat rows from the front, tanks as they are filled. */
export interface StationFact {
  name: string;
  kind: StationKind;
  armIn: number;
  /** Most it may carry; null: only the aircraft's limits count. */
  maxLb: number | null;
  /** Seats of a row; null for the other kinds. */
  seats: number | null;
  /** Usable fuel of a tank, US gallons; null for the other kinds. */
  usableUsGal: number | null;
}

export type EnvelopeCategory = 'normal' | 'utility';

/** Limits of the centre of gravity: a polygon of weight against arm, its corners in order. The edge is inside. */
export interface EnvelopeFact {
  category: EnvelopeCategory;
  points: { armIn: number; weightLb: number }[];
}

/** What the handbook says of loading: of this aircraft, or of its model. */
export interface LoadingFact extends Evidence {
  /** Document and section the figures are from. */
  source: string;
  fuelKind: 'avgas' | 'jet';
  /** Null: the handbook sets none of its own. */
  maxLandingLb: number | null;
  maxZeroFuelLb: number | null;
  stations: StationFact[];
  envelopes: EnvelopeFact[];
}

/** A printed table at one weight; `[i][j]` belongs to `pressureAltitudesFt[i]` and `temperaturesC[j]`. */
export interface DistanceTableFact {
  weightLb: number;
  pressureAltitudesFt: number[];
  temperaturesC: number[];
  groundRollFt: number[][];
  /** From standstill to 50 ft, or from 50 ft to standstill. */
  over50Ft: number[][];
}

/**
 * What the handbook adds to its tables. Null: it says nothing, and then a distance is not known where the thing is met;
 * but for the headwind, of which nothing is then taken off.
 */
export interface DistanceFactors {
  /** Percent taken off for each knot from ahead. */
  headwindPercentPerKt: number | null;
  /** Percent added for each knot from behind, up to so many knots. */
  tailwindPercentPerKt: number | null;
  tailwindMaxKt: number | null;
  /** Percent added on dry grass, on gravel, and on top of these when wet. */
  grassPercent: number | null;
  gravelPercent: number | null;
  wetPavedPercent: number | null;
  wetUnpavedPercent: number | null;
  /** Percent added for each percent of slope against the aircraft: up at take-off, down at landing. */
  slopePercentPerPercent: number | null;
  /** What surface and slope are percent of: the ground roll, or the whole distance. */
  surfaceIsOf: 'ground-roll' | 'distance';
}

/** Tables and factors of one manoeuvre. */
export interface DistanceFact {
  tables: DistanceTableFact[];
  factors: DistanceFactors;
}

/** What the handbook says of take-off and landing distance. */
export interface PerformanceFact extends Evidence {
  source: string;
  /** Airspeed at lift-off, knots indicated; null: not on record. */
  liftOffKias: number | null;
  takeoff: DistanceFact;
  landing: DistanceFact;
}
