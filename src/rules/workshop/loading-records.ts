/** Example records of loading and of distance tables. The handbook is invented. */
import type { LoadingFact, PerformanceFact, StationFact, WeighingFact } from '../facts/loading.js';

export const WEIGHING: WeighingFact = {
  id: 'weighing-1',
  on: '2026-11-12',
  emptyWeightLb: 1450,
  emptyArmIn: 84,
  source: 'weighing',
};

export const STATION: StationFact = {
  name: 'a station',
  kind: 'baggage',
  armIn: 100,
  maxLb: null,
  seats: null,
  usableUsGal: null,
};

/** Forward limit 82 inches up to 1,950 lb, then in a line to 86 at 2,400; aft limit 93, in the utility category 88. */
export const LOADING_SHEET: LoadingFact = {
  id: 'loading-sheet-1',
  source: 'Invented handbook, section 6',
  fuelKind: 'avgas',
  maxLandingLb: null,
  maxZeroFuelLb: null,
  stations: [
    { ...STATION, name: 'Front seats', kind: 'seats', armIn: 81, seats: 2 },
    { ...STATION, name: 'Rear seats', kind: 'seats', armIn: 117, seats: 2 },
    { ...STATION, name: 'Wing tanks', kind: 'fuel', armIn: 95, usableUsGal: 48 },
    { ...STATION, name: 'Baggage', armIn: 142, maxLb: 120 },
  ],
  envelopes: [
    {
      category: 'normal',
      points: [
        { armIn: 82, weightLb: 1400 },
        { armIn: 82, weightLb: 1950 },
        { armIn: 86, weightLb: 2400 },
        { armIn: 93, weightLb: 2400 },
        { armIn: 93, weightLb: 1400 },
      ],
    },
    {
      category: 'utility',
      points: [
        { armIn: 82, weightLb: 1400 },
        { armIn: 82, weightLb: 1950 },
        { armIn: 83, weightLb: 2062.5 },
        { armIn: 88, weightLb: 2062.5 },
        { armIn: 88, weightLb: 1400 },
      ],
    },
  ],
};

const AXES = { pressureAltitudesFt: [4000, 6000, 8000], temperaturesC: [-20, 10, 40] };
const FACTORS: PerformanceFact['takeoff']['factors'] = {
  headwindPercentPerKt: 1,
  tailwindPercentPerKt: 5,
  tailwindMaxKt: 10,
  grassPercent: 15,
  gravelPercent: 10,
  wetPavedPercent: 10,
  wetUnpavedPercent: 20,
  slopePercentPerPercent: 10,
  surfaceIsOf: 'ground-roll',
};

/** Invented tables, with figures that are easy to interpolate by hand. */
export const PERFORMANCE: PerformanceFact = {
  id: 'performance-sheet-1',
  source: 'Invented handbook, section 5',
  liftOffKias: 50,
  takeoff: {
    tables: [
      {
        weightLb: 2000,
        ...AXES,
        groundRollFt: [
          [600, 700, 800],
          [700, 800, 900],
          [800, 900, 1000],
        ],
        over50Ft: [
          [1100, 1200, 1300],
          [1300, 1400, 1500],
          [1500, 1600, 1700],
        ],
      },
      {
        weightLb: 2400,
        ...AXES,
        groundRollFt: [
          [900, 1000, 1100],
          [1100, 1200, 1300],
          [1300, 1400, 1500],
        ],
        over50Ft: [
          [1600, 1800, 2000],
          [2000, 2200, 2400],
          [2400, 2600, 2800],
        ],
      },
    ],
    factors: FACTORS,
  },
  landing: {
    tables: [
      {
        weightLb: 2400,
        ...AXES,
        groundRollFt: [
          [500, 550, 600],
          [550, 600, 650],
          [600, 650, 700],
        ],
        over50Ft: [
          [1000, 1100, 1200],
          [1100, 1200, 1300],
          [1200, 1300, 1400],
        ],
      },
    ],
    factors: FACTORS,
  },
};
