/** Every take-off and landing of a flight against the runway it uses. */
import { pressureAltitudeFt } from '../../../air/atmosphere.js';
import { workDistances, type DistanceAnswer, type FieldConditions } from '../../../air/field-length.js';
import { need } from '../../../engine/unknown.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { AirfieldFact, DeclaredWeather, FlightFacts } from '../../../facts/flight.js';
import type { PerformanceFact } from '../../../facts/loading.js';
import { burnUsGal, tenth, type ToldLoading } from '../loading/loaded.js';
import { runwayAt, type ChosenRunway } from './choose.js';

/** Degrees Celsius that the standard atmosphere loses in a thousand feet: 6.5 a kilometre (ICAO Doc 7488). */
const LAPSE_C_PER_1000_FT = 1.9812;

/** What the distances of a flight hang on. */
export interface ToFly {
  type: AircraftType;
  performance: PerformanceFact;
  /** Empty weight and weight of a gallon, pounds. */
  emptyLb: number;
  lbPerUsGal: number;
  loading: ToldLoading;
  flight: Pick<FlightFacts, 'route' | 'plannedTenths' | 'runways'>;
  /** Weather that speaks of the departure. */
  weather: DeclaredWeather;
}

/** One take-off or landing. */
export interface Manoeuvre {
  does: 'takeoff' | 'landing';
  airfield: AirfieldFact;
  /** Not the field of departure: the weather told is not its own. */
  away: boolean;
  weightLb: number;
}

/** It with its runway and its distances, on a dry and on a wet runway where it is not told which. */
export interface WorkedManoeuvre extends Manoeuvre, ChosenRunway {
  at: FieldConditions;
  slopeKnown: boolean;
  answer: DistanceAnswer & { found: true };
  /** Null: it is told whether runways are wet. */
  ifWet: DistanceAnswer | null;
}

/** What could be worked out, and why the rest could not. */
export interface FieldWork {
  worked: WorkedManoeuvre[];
  unknown: string[];
}

/** Works every take-off and landing out. Throws UnknownFact where the weather told is not enough for any. */
export function workFields(of: ToFly): FieldWork {
  const { weather } = of;
  const oatC = need(weather.temperatureC, 'flight.weather', 'the temperature is not declared');
  const inHg = need(weather.altimeterInHg, 'flight.weather', 'the altimeter setting is not declared');
  const windKt = need(weather.windKt, 'flight.weather', 'the wind is not declared');
  const home = need(of.flight.route[0], 'flight.route', 'no airfield is named');
  const work: FieldWork = { worked: [], unknown: [] };
  for (const one of manoeuvresOf(of)) {
    const wind = one.away ? null : { ...weather, windKt };
    const chosen = runwayAt(one.airfield, of.flight.runways, wind);
    if (!chosen) {
      note(work, `no runway of ${one.airfield.code} is on record`);
      continue;
    }
    const slope = chosen.runway.slopePercent ?? null;
    const below = Math.max(0, home.elevationFt - one.airfield.elevationFt);
    const at: FieldConditions = {
      weightLb: one.weightLb,
      pressureAltitudeFt: Math.round(pressureAltitudeFt(one.airfield.elevationFt, inHg)),
      // Lower fields are taken to be warmer; higher ones as warm as home, which is the cautious reading.
      oatC: Math.round((oatC + (LAPSE_C_PER_1000_FT * below) / 1000) * 10) / 10,
      headwindKt: chosen.headwindKt,
      surface: chosen.runway.surface,
      wet: weather.wet ?? false,
      slopeAgainstPercent: slope === null ? 0 : one.does === 'takeoff' ? slope : -slope,
    };
    const by = of.performance[one.does];
    const answer = workDistances(by, at);
    if (!answer.found) {
      note(work, `${DOES[one.does]} at ${one.airfield.code}: ${answer.because}`);
      continue;
    }
    const untold = weather.wet === null || weather.wet === undefined;
    const ifWet = untold ? workDistances(by, { ...at, wet: true }) : null;
    work.worked.push({ ...one, ...chosen, at, slopeKnown: slope !== null, answer, ifWet });
  }
  return work;
}

export const DOES = { takeoff: 'take-off', landing: 'landing' } as const;

const note = (work: FieldWork, because: string): void => {
  if (!work.unknown.includes(because)) work.unknown.push(because);
};

/**
 * The take-offs and landings in order, each kind once an airfield and weight. All but the last landing are reckoned at the
 * weight of the first take-off: nothing says how much is burned by then, and no fuel is taken on the way.
 */
function manoeuvresOf({ type, emptyLb, lbPerUsGal, loading, flight }: ToFly): Manoeuvre[] {
  const takeoffLb = tenth(emptyLb + loading.occupantsLb + loading.baggageLb + loading.fuelUsGal * lbPerUsGal);
  const burn = Math.min(burnUsGal(type, flight) ?? 0, loading.fuelUsGal);
  const landingLb = tenth(takeoffLb - burn * lbPerUsGal);
  const { route } = flight;
  const found: Manoeuvre[] = [];
  const add = (does: Manoeuvre['does'], airfield: AirfieldFact, weightLb: number): void => {
    const heavier = found.some(
      (one) => one.does === does && one.airfield.id === airfield.id && one.weightLb >= weightLb,
    );
    if (!heavier) found.push({ does, airfield, away: airfield.id !== route[0]!.id, weightLb });
  };
  route.slice(0, -1).forEach((airfield) => add('takeoff', airfield, takeoffLb));
  route.slice(1, -1).forEach((airfield) => add('landing', airfield, takeoffLb));
  if (route.length > 1) add('landing', route.at(-1)!, landingLb);
  return found;
}
