import type { AirspaceClass, Instant, Purpose } from '../rules/index.js';

/** A flight as a member would ask for it; a subset of what the service's question takes, by the same names. */
export interface FlightAsk {
  memberId: string;
  departs: Instant;
  arrives: Instant;
  purpose: Purpose;
  flightRules?: 'VFR' | 'IFR';
  personsOnBoard: number;
  instructorId?: string;
  /** Airfield codes. */
  route?: string[];
  plannedHours?: number;
  airspace?: AirspaceClass[];
  maxAltitudeFtMsl?: number;
  maxSpeedKias?: number;
  usesVor?: boolean;
  usesTransponder?: boolean;
  overWaterBeyondGlide?: boolean;
  weather?: {
    observedAt?: Instant;
    windFromDeg?: number;
    windKt?: number;
    visibilitySm?: number;
    ceilingFtAgl?: number;
    temperatureC?: number;
    altimeterInHg?: number;
    wet?: boolean;
  };
  loading?: { occupantsLb?: number; rowsLb?: number[]; baggageLb?: number; fuelUsGal?: number };
}
