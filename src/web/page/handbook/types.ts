/** Loading sheets and distance tables as the page shows them. */
export interface Station {
  name: string;
  kind: 'seats' | 'fuel' | 'baggage' | 'other';
  armIn: number;
  maxLb: number | null;
  seats: number | null;
  usableUsGal: number | null;
}
export interface Envelope {
  category: 'normal' | 'utility';
  points: { armIn: number; weightLb: number }[];
}
export interface LoadingSheet {
  source: string;
  fuelKind: 'avgas' | 'jet';
  maxTakeoffLb: number | null;
  maxLandingLb: number | null;
  maxZeroFuelLb: number | null;
  stations: Station[];
  envelopes: Envelope[];
  rowVersion: number;
}
export interface DistanceTable {
  weightLb: number;
  pressureAltitudesFt: number[];
  temperaturesC: number[];
  groundRollFt: number[][];
  over50Ft: number[][];
}
export const FACTORS = [
  ['headwindPercentPerKt', 'Taken off for each knot of wind from ahead, %'],
  ['tailwindPercentPerKt', 'Added for each knot from behind, %'],
  ['tailwindMaxKt', 'Up to how many knots from behind'],
  ['grassPercent', 'Dry grass, %'],
  ['gravelPercent', 'Gravel, %'],
  ['wetPavedPercent', 'Wet pavement, %'],
  ['wetUnpavedPercent', 'Wet grass or gravel, on top of dry, %'],
  ['slopePercentPerPercent', 'For each percent of slope against it, %'],
] as const;
export type Factor = (typeof FACTORS)[number][0];
export type Factors = Record<Factor, number | null> & { surfaceIsOf: 'ground-roll' | 'distance' };
export interface Distance {
  tables: DistanceTable[];
  factors: Factors;
}
export interface PerformanceSheet {
  source: string;
  liftOffKias: number | null;
  takeoff: Distance;
  landing: Distance;
  rowVersion: number;
}
