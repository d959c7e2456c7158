/** Invented loading sheets and distance tables of the models: made by plain formulas, so that they hang together. */
import type {
  DistanceFact,
  DistanceFactors,
  DistanceTableFact,
  EnvelopeFact,
  Instant,
  StationFact,
} from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { LoadingSheetRow, PerformanceSheetRow, WeighingRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { FLEET } from './aircraft.js';
import { MODELS, type ModelKey } from './models.js';

/** What the sheets of a model are made of. Arms in inches; distances in feet at sea level, 15 °C and the greatest weight. */
interface Sheet {
  /** Lightest weight of the envelope, and the weight to which the forward limit is upright. */
  lightLb: number;
  kneeLb: number;
  forwardIn: number;
  forwardAtMostIn: number;
  aftIn: number;
  emptyArmIn: number;
  rowsIn: number[];
  tanksIn: number;
  baggageIn: number;
  baggageLb: number;
  takeoffRollFt: number;
  takeoffFt: number;
  landingRollFt: number;
  landingFt: number;
  liftOffKias: number;
}

const SHEETS: Record<ModelKey, Sheet> = {
  sprig: {
    ...{ lightLb: 1100, kneeLb: 1350, forwardIn: 31, forwardAtMostIn: 32.6, aftIn: 36.5, emptyArmIn: 31.4 },
    ...{ rowsIn: [39], tanksIn: 42, baggageIn: 64, baggageLb: 100 },
    ...{ takeoffRollFt: 690, takeoffFt: 1260, landingRollFt: 470, landingFt: 1120, liftOffKias: 50 },
  },
  wicket: {
    ...{ lightLb: 950, kneeLb: 1250, forwardIn: 12, forwardAtMostIn: 13, aftIn: 19.5, emptyArmIn: 13.4 },
    ...{ rowsIn: [20], tanksIn: 24, baggageIn: 42, baggageLb: 50 },
    ...{ takeoffRollFt: 520, takeoffFt: 980, landingRollFt: 430, landingFt: 900, liftOffKias: 44 },
  },
  almanac: {
    ...{ lightLb: 1450, kneeLb: 2000, forwardIn: 35, forwardAtMostIn: 39, aftIn: 47.3, emptyArmIn: 38.6 },
    ...{ rowsIn: [37, 73], tanksIn: 48, baggageIn: 95, baggageLb: 120 },
    ...{ takeoffRollFt: 820, takeoffFt: 1480, landingRollFt: 560, landingFt: 1290, liftOffKias: 55 },
  },
  traverse: {
    ...{ lightLb: 1850, kneeLb: 2350, forwardIn: 33, forwardAtMostIn: 39.5, aftIn: 48.5, emptyArmIn: 37.8 },
    ...{ rowsIn: [37, 74], tanksIn: 46.5, baggageIn: 97, baggageLb: 200 },
    ...{ takeoffRollFt: 790, takeoffFt: 1430, landingRollFt: 600, landingFt: 1350, liftOffKias: 59 },
  },
  lindle: {
    ...{ lightLb: 1650, kneeLb: 2200, forwardIn: 80, forwardAtMostIn: 85, aftIn: 91.5, emptyArmIn: 83.6 },
    ...{ rowsIn: [84, 118], tanksIn: 95, baggageIn: 142, baggageLb: 150 },
    ...{ takeoffRollFt: 880, takeoffFt: 1560, landingRollFt: 620, landingFt: 1400, liftOffKias: 61 },
  },
  gemel: {
    ...{ lightLb: 2400, kneeLb: 2900, forwardIn: 83, forwardAtMostIn: 87, aftIn: 93.5, emptyArmIn: 86.2 },
    ...{ rowsIn: [84, 118], tanksIn: 94, baggageIn: 144, baggageLb: 200 },
    ...{ takeoffRollFt: 860, takeoffFt: 1620, landingRollFt: 680, landingFt: 1520, liftOffKias: 68 },
  },
};

const SOURCE = 'Invented handbook of the demonstration';
const ALTITUDES_FT = [0, 2000, 4000, 6000, 8000, 10_000];
const TEMPERATURES_C = [-20, 0, 20, 40];

const FACTORS: DistanceFactors = {
  headwindPercentPerKt: 1,
  tailwindPercentPerKt: 5,
  tailwindMaxKt: 10,
  grassPercent: 15,
  gravelPercent: 15,
  wetPavedPercent: 10,
  wetUnpavedPercent: 20,
  slopePercentPerPercent: 10,
  surfaceIsOf: 'ground-roll',
};

const seats = (name: string, armIn: number, count: number): StationFact => ({
  ...{ name, kind: 'seats', armIn, maxLb: null, seats: count, usableUsGal: null },
});

function stations(of: Sheet, usableUsGal: number): StationFact[] {
  const none = { maxLb: null, seats: null, usableUsGal: null };
  return [
    ...of.rowsIn.map((armIn, row) => seats(row === 0 ? 'Front seats' : 'Rear seats', armIn, 2)),
    { ...none, name: 'Wing tanks', kind: 'fuel', armIn: of.tanksIn, usableUsGal },
    { ...none, name: 'Baggage', kind: 'baggage', armIn: of.baggageIn, maxLb: of.baggageLb },
  ];
}

const envelope = (of: Sheet, mostLb: number): EnvelopeFact => ({
  category: 'normal',
  points: [
    { armIn: of.forwardIn, weightLb: of.lightLb },
    { armIn: of.forwardIn, weightLb: of.kneeLb },
    { armIn: of.forwardAtMostIn, weightLb: mostLb },
    { armIn: of.aftIn, weightLb: mostLb },
    { armIn: of.aftIn, weightLb: of.lightLb },
  ],
});

const toFive = (ft: number): number => Math.round(ft / 5) * 5;

/** So much a thousand feet and a degree above the standard temperature; in the square of the weight. */
function table(
  weightLb: number,
  mostLb: number,
  of: { rollFt: number; overFt: number; perThousand: number; perDegree: number },
): DistanceTableFact {
  const rows = (ft: number): number[][] =>
    ALTITUDES_FT.map((altitudeFt) =>
      TEMPERATURES_C.map((oatC) => {
        const above = oatC - (15 - (1.98 * altitudeFt) / 1000);
        const air = (1 + of.perThousand) ** (altitudeFt / 1000) * (1 + of.perDegree * above);
        return toFive(ft * (weightLb / mostLb) ** 2 * air);
      }),
    );
  return {
    weightLb,
    pressureAltitudesFt: ALTITUDES_FT,
    temperaturesC: TEMPERATURES_C,
    groundRollFt: rows(of.rollFt),
    over50Ft: rows(of.overFt),
  };
}

function distances(mostLb: number, of: Parameters<typeof table>[2]): DistanceFact {
  const weights = [Math.round(mostLb * 0.85), mostLb];
  return { tables: weights.map((weightLb) => table(weightLb, mostLb, of)), factors: FACTORS };
}

/** A loading sheet and distance tables of every model, and a weighing of every aircraft. */
export function sheetRows(
  when: When,
  recordedAt: Instant,
): {
  weighings: WeighingRow[];
  loading_sheets: LoadingSheetRow[];
  performance_sheets: PerformanceSheetRow[];
} {
  const keys = Object.keys(SHEETS) as ModelKey[];
  const weighedOn = (index: number): string => when.inMonth(5 + index * 2, 7 + index);
  const head = (kind: string, key: ModelKey) => ({
    ...{ club_id: DEMO_CLUB_ID, id: demoId(kind, key), model_id: MODELS[key].id, aircraft_id: null },
    ...{ source: SOURCE, recorded_at: recordedAt },
  });
  return {
    weighings: FLEET.map((one, index) => ({
      ...{ club_id: DEMO_CLUB_ID, id: demoId('weighing', one.key), aircraft_id: one.id },
      ...{ effective_on: weighedOn(index), source: 'weighing', note: '' },
      ...{ empty_weight_lb: one.emptyWeightLb, empty_arm_in: SHEETS[one.model].emptyArmIn },
      recorded_at: at(weighedOn(index), clock(12)),
    })),
    loading_sheets: keys.map((key) => ({
      ...head('loading-sheet', key),
      ...{ fuel_kind: 'avgas', max_takeoff_lb: null, max_landing_lb: null, max_zero_fuel_lb: null },
      stations: stations(SHEETS[key], MODELS[key].fuelUsGal),
      envelopes: [envelope(SHEETS[key], MODELS[key].row.max_takeoff_lb)],
    })),
    performance_sheets: keys.map((key) => {
      const { row } = MODELS[key];
      const of = SHEETS[key];
      return {
        ...head('performance-sheet', key),
        lift_off_kias: of.liftOffKias,
        takeoff: distances(row.max_takeoff_lb, {
          ...{ rollFt: of.takeoffRollFt, overFt: of.takeoffFt, perThousand: 0.1, perDegree: 0.01 },
        }),
        landing: distances(row.max_takeoff_lb, {
          ...{ rollFt: of.landingRollFt, overFt: of.landingFt, perThousand: 0.03, perDegree: 0.003 },
        }),
      };
    }),
  };
}
