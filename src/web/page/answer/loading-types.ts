/** A flight's loading and runways as the page shows them. */
export interface Point {
  when: 'takeoff' | 'landing' | 'zero-fuel';
  weightLb: number;
  armIn: number;
  categories: string[];
}
export interface Limits {
  category: string;
  points: { armIn: number; weightLb: number }[];
}
type Step = 'table' | 'headwind' | 'tailwind' | 'slope' | 'surface' | 'wet';
export interface WorkedRunway {
  does: 'takeoff' | 'landing';
  airfield: string;
  runway: string;
  lengthFt: number;
  weightLb: number;
  pressureAltitudeFt: number;
  densityAltitudeFt: number;
  oatC: number;
  headwindKt: number;
  steps: { step: Step; percent: number | null; groundRollFt: number; over50Ft: number }[];
  neededFt: number;
  ifWetFt: number | null;
  halfWay: { atFt: number; leastKt: number; expectedKt: number } | null;
}
export interface Work {
  lines: { what: string; weightLb: number; armIn: number; momentLbIn: number }[];
  points: Point[];
  envelopes: Limits[];
  maxTakeoffLb: number | null;
  runways: WorkedRunway[];
  marginFactor: number | null;
  unknown: string[];
  caution: string;
}

export const WHEN_WORDS: Record<Point['when'], string> = {
  takeoff: 'Take-off',
  landing: 'Landing',
  'zero-fuel': 'Without fuel',
};
export const STEP_WORDS: Record<Step, string> = {
  table: 'By the table',
  headwind: 'Wind from ahead',
  tailwind: 'Wind from behind',
  slope: 'Slope',
  surface: 'Surface',
  wet: 'Wet',
};
