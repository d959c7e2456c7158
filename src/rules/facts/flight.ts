import type { Instant } from '../calendar/instants.js';
import type { WeatherReport } from './weather.js';

/** What the flight is for. `checkout` is dual instruction towards a club sign-off; `ferry-to-inspection` positions to a shop. */
export type Purpose = 'solo' | 'passengers' | 'dual' | 'checkout' | 'maintenance' | 'ferry-to-inspection';

export type AirspaceClass = 'A' | 'B' | 'C' | 'D' | 'E' | 'G';

/** An airfield of the route. Coordinates in degrees, north and east positive; elevation in feet above mean sea level. */
export interface AirfieldFact {
  id: string;
  code: string;
  name: string;
  latitudeDeg: number;
  longitudeDeg: number;
  elevationFt: number;
  zone: string;
  runways: RunwayFact[];
}

/** One runway direction: true heading in degrees, usable length in feet. */
export interface RunwayFact {
  designator: string;
  trueHeadingDeg: number;
  lengthFt: number;
  surface: 'paved' | 'grass' | 'gravel' | 'water';
  lit: boolean;
  /** Percent, up in the runway's direction positive; null: not known. Absent in sheets stored before it was kept. */
  slopePercent?: number | null;
}

/** Which runway the member means to use at an airfield. */
export interface RunwayChoice {
  /** The airfield's code. */
  airfield: string;
  /** The runway's designator. */
  runway: string;
}

/** Weather the member declared for the flight; each part may be missing. */
export interface DeclaredWeather {
  observedAt: Instant | null;
  windFromDeg: number | null;
  windKt: number | null;
  gustKt: number | null;
  visibilitySm: number | null;
  ceilingFtAgl: number | null;
  temperatureC: number | null;
  altimeterInHg: number | null;
  /** The runways are wet. Absent in sheets stored before it was kept. */
  wet?: boolean | null;
}

/** The worst that is forecast for the destination between two instants, as the member declared it; parts may be missing. */
export interface DeclaredForecast {
  from: Instant | null;
  to: Instant | null;
  ceilingFtAgl: number | null;
  visibilitySm: number | null;
  /** An instrument approach is published for the destination. */
  approachPublished: boolean | null;
}

/** Loading the member declared. Weights in pounds, fuel in US gallons. */
export interface DeclaredLoading {
  occupantsLb: number | null;
  baggageLb: number | null;
  fuelUsGal: number | null;
  /** Occupants by seat row, from the front; together `occupantsLb`. Absent or null: who sits where is not told. */
  rowsLb?: number[] | null;
  /** Baggage by compartment, in the order of the aircraft's stations; together `baggageLb`. */
  compartmentsLb?: number[] | null;
}

/**
 * The request, as the member states it. Null means the member did not say: a rule that needs it either cannot tell or,
 * where the law lets it be settled before departure, makes it a condition.
 */
export interface FlightFacts {
  departs: Instant;
  arrives: Instant;
  purpose: Purpose;
  flightRules: 'VFR' | 'IFR';
  personsOnBoard: number;
  /** Who asks, and flies or is taught. */
  memberId: string;
  instructorId: string | null;
  /** Another rated pilot at the controls (safety pilot, shared flight). */
  secondPilotId: string | null;
  /** Who acts as pilot in command when two pilots fly; null = the member. */
  actingPilotId: string | null;
  /** The second pilot is required crew (safety pilot for simulated instrument flight, 14 CFR 91.109(c)). */
  secondPilotRequired: boolean;
  /** Persons or property carried for compensation or hire. */
  forHire: boolean;
  /** Airfields in order, first = departure, last = destination; every one in between is a landing. */
  route: AirfieldFact[];
  /** Runways the member chose; at the other airfields the wind chooses. Absent in sheets stored before it was kept. */
  runways?: RunwayChoice[] | null;
  /** Planned meter hours, in tenths, as counted by the aircraft's inspection meter. */
  plannedTenths: number;
  airspace: AirspaceClass[] | null;
  maxAltitudeFtMsl: number | null;
  maxSpeedKias: number | null;
  usesVor: boolean | null;
  usesTransponder: boolean | null;
  /** Flown beyond power-off gliding distance from shore, for hire (flotation and flare, 14 CFR 91.205(b)(12)). */
  overWaterBeyondGlide: boolean | null;
  weather: DeclaredWeather | null;
  /** Reports and forecasts at hand for the airfields of the route. Absent where there are none. */
  reports?: WeatherReport[] | null;
  /** Absent in sheets stored before it was kept. */
  destinationForecast?: DeclaredForecast | null;
  loading: DeclaredLoading | null;
  /** Asked ahead of making a booking: how a booking is made is not asked. Absent: a booking may be made of it. */
  planned?: boolean;
}
