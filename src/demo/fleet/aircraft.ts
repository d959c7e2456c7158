import type { LocalDate } from '../../rules/index.js';
import { demoId } from '../ids.js';
import type { ModelKey } from './models.js';

export type AircraftKey = 'sprig-1' | 'sprig-2' | 'wicket' | 'almanac' | 'traverse' | 'lindle' | 'gemel';

/** One aircraft of the club, and where its inspections stand today. Hours in tenths. */
export interface Aircraft {
  key: AircraftKey;
  id: string;
  model: ModelKey;
  registration: string;
  /** What it is here to show. */
  shows: string;
  /** Instruction for hire is given in it, so the 100-hour inspection binds. */
  instruction: boolean;
  emptyWeightLb: number;
  certificatedAfter1996: boolean;
  manufacturedOn: LocalDate;
  /** Meters on the first day of the 18 months. */
  hobbsTenths: number;
  tachTenths: number;
  annualMonthsAgo: number;
  avionicsMonthsAgo: number;
  transponderMonthsAgo: number;
  /** Newest VOR check; null without a VOR receiver. */
  vorDaysAgo: number | null;
  /** Hours since the newest 100-hour inspection (or hour-based directive): about, or exactly. */
  sinceInspection: { tenths: number; exactly: boolean };
  /** Out of service in these days before today, the first of them included. */
  away: { fromDaysAgo: number; toDaysAgo: number }[];
}

/** The converted aircraft's weeks in the shop. */
export const CONVERSION = { beganDaysAgo: 163, finishedDaysAgo: 150 } as const;
/** When the retractable was grounded. */
export const GROUNDED_DAYS_AGO = 9;
/** When the lights of the second trainer were deferred. */
export const DEFERRED_DAYS_AGO = 12;

const aircraft = (
  key: AircraftKey,
  model: ModelKey,
  fields: Omit<Aircraft, 'key' | 'id' | 'model'>,
): Aircraft => ({
  key,
  id: demoId('aircraft', key),
  model,
  ...fields,
});

export const FLEET: readonly Aircraft[] = [
  aircraft('sprig-1', 'sprig', {
    registration: 'NX112Q',
    shows: 'trainer, 2.4 hours short of its 100-hour inspection',
    instruction: true,
    emptyWeightLb: 1115,
    certificatedAfter1996: false,
    manufacturedOn: '1994-06-14',
    hobbsTenths: 81_204,
    tachTenths: 68_713,
    annualMonthsAgo: 10,
    avionicsMonthsAgo: 13,
    transponderMonthsAgo: 13,
    vorDaysAgo: null,
    sinceInspection: { tenths: 976, exactly: true },
    away: [],
  }),
  aircraft('sprig-2', 'sprig', {
    registration: 'NX113Q',
    shows: 'trainer, position and landing lights deferred: by day only',
    instruction: true,
    emptyWeightLb: 1122,
    certificatedAfter1996: false,
    manufacturedOn: '1995-03-02',
    hobbsTenths: 64_020,
    tachTenths: 54_377,
    annualMonthsAgo: 3,
    avionicsMonthsAgo: 8,
    transponderMonthsAgo: 8,
    vorDaysAgo: null,
    sinceInspection: { tenths: 130, exactly: false },
    away: [],
  }),
  aircraft('wicket', 'wicket', {
    registration: 'NX115W',
    shows: 'tailwheel, transponder inspection lapsed: not where a transponder is used',
    instruction: true,
    emptyWeightLb: 985,
    certificatedAfter1996: false,
    manufacturedOn: '1988-09-20',
    hobbsTenths: 38_811,
    tachTenths: 33_940,
    annualMonthsAgo: 7,
    avionicsMonthsAgo: 26,
    transponderMonthsAgo: 26,
    vorDaysAgo: null,
    sinceInspection: { tenths: 420, exactly: false },
    away: [],
  }),
  aircraft('almanac', 'almanac', {
    registration: 'NX180G',
    shows: 'four-seater with a new electronic panel: differences checkout needed',
    instruction: true,
    emptyWeightLb: 1490,
    certificatedAfter1996: true,
    manufacturedOn: '2003-04-11',
    hobbsTenths: 27_350,
    tachTenths: 23_622,
    annualMonthsAgo: 5,
    avionicsMonthsAgo: 5,
    transponderMonthsAgo: 5,
    vorDaysAgo: 9,
    sinceInspection: { tenths: 350, exactly: false },
    away: [{ fromDaysAgo: CONVERSION.beganDaysAgo, toDaysAgo: CONVERSION.finishedDaysAgo }],
  }),
  aircraft('traverse', 'traverse', {
    registration: 'NX230T',
    shows: 'instrument tourer; annual due within two months, propeller directive by hours',
    instruction: false,
    emptyWeightLb: 1905,
    certificatedAfter1996: true,
    manufacturedOn: '2006-10-05',
    hobbsTenths: 31_906,
    tachTenths: 28_044,
    annualMonthsAgo: 11,
    avionicsMonthsAgo: 15,
    transponderMonthsAgo: 15,
    vorDaysAgo: 12,
    sinceInspection: { tenths: 600, exactly: false },
    away: [],
  }),
  aircraft('lindle', 'lindle', {
    registration: 'NX200L',
    shows: 'retractable, grounded by a squawk',
    instruction: false,
    emptyWeightLb: 1710,
    certificatedAfter1996: false,
    manufacturedOn: '1991-07-30',
    hobbsTenths: 45_518,
    tachTenths: 39_590,
    annualMonthsAgo: 6,
    avionicsMonthsAgo: 10,
    transponderMonthsAgo: 10,
    vorDaysAgo: 20,
    sinceInspection: { tenths: 500, exactly: false },
    away: [{ fromDaysAgo: GROUNDED_DAYS_AGO, toDaysAgo: -60 }],
  }),
  aircraft('gemel', 'gemel', {
    registration: 'NX360D',
    shows: 'twin; VOR check lapsed, ELT battery at half its life in 24 days, in the shop from day 18',
    instruction: false,
    emptyWeightLb: 2480,
    certificatedAfter1996: false,
    manufacturedOn: '1986-02-18',
    hobbsTenths: 52_277,
    tachTenths: 47_031,
    annualMonthsAgo: 8,
    avionicsMonthsAgo: 19,
    transponderMonthsAgo: 19,
    vorDaysAgo: 37,
    sinceInspection: { tenths: 450, exactly: false },
    away: [],
  }),
];

export const aircraftBy = (key: AircraftKey): Aircraft => FLEET.find((one) => one.key === key)!;

/** Was the aircraft there to be flown, so many days before today? */
export const inService = (one: Aircraft, daysAgo: number): boolean =>
  !one.away.some(({ fromDaysAgo, toDaysAgo }) => daysAgo <= fromDaysAgo && daysAgo >= toDaysAgo);
