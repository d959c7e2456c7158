/** The loading and the runways of a flight worked out for people to read: the same arithmetic the rules judge by, every step shown. */
import { densityAltitudeFt } from '../../../air/atmosphere.js';
import { momentOf, type LoadLine } from '../../../air/balance.js';
import { categoriesOf } from '../../../air/envelope.js';
import type { DistanceStep } from '../../../air/field-length.js';
import { halfwaySpeedKt, takeoffCheck } from '../../../air/takeoff-check.js';
import { toSeconds } from '../../../calendar/instants.js';
import { crewAt, momentAt, type Ruleset } from '../../../engine/judge.js';
import { Parameters } from '../../../engine/parameters.js';
import { UnknownFact } from '../../../engine/unknown.js';
import type { Fact } from '../../../facts/fact.js';
import { readFact, type FactKey, type FactValue } from '../../../facts/keys.js';
import type { EnvelopeCategory, EnvelopeFact } from '../../../facts/loading.js';
import type { FactSheet } from '../../../facts/sheet.js';
import { workFields, type ToFly, type WorkedManoeuvre } from '../runway/field-work.js';
import { neededFt } from '../runway/held-against.js';
import { freshWeather } from '../shared/fresh-weather.js';
import {
  burnUsGal,
  FUEL_WEIGHTS,
  lbPerUsGal,
  linesOf,
  loadedWith,
  toldLoading,
  type ToLoad,
} from './loaded.js';

/** A line of the loading sheet with its moment, pound-inches. */
export interface WorkedLine extends LoadLine {
  momentLbIn: number;
}

/** The loaded aircraft at one moment of the flight. */
export interface WorkedPoint {
  when: 'takeoff' | 'landing' | 'zero-fuel';
  weightLb: number;
  armIn: number;
  momentLbIn: number;
  /** Categories in whose limits it lies; none: outside. */
  categories: EnvelopeCategory[];
}

/** A take-off or landing against its runway. Distances in feet. */
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
  steps: DistanceStep[];
  groundRollFt: number;
  over50Ft: number;
  /** With the club's margin. */
  neededFt: number;
  /** On a wet runway, where it is not told whether it is; null: told, or not known. */
  ifWetFt: number | null;
  /** Half the runway, the airspeed that lets a take-off go on there, and what is to be expected; null: no lift-off speed, a landing. */
  halfWay: { atFt: number; leastKt: number; expectedKt: number } | null;
}

/** All of it, and why the rest is not known. */
export interface LoadingWork {
  lines: WorkedLine[];
  points: WorkedPoint[];
  envelopes: EnvelopeFact[];
  maxTakeoffLb: number | null;
  runways: WorkedRunway[];
  /** The club's factor on distances. */
  marginFactor: number | null;
  unknown: string[];
}

const MARGIN = 'club.runway.margin-factor';
const WEATHER_HOURS = 'club.runway.weather-hours';

/** Works out what the sheet lets be worked out; what it does not is told. */
export function workLoading(sheet: FactSheet, ruleset: Ruleset): LoadingWork {
  const moment = momentAt(sheet, toSeconds(sheet.flight.departs));
  const p = new Parameters(ruleset.book, moment, [...FUEL_WEIGHTS, MARGIN, WEATHER_HOURS]);
  const { flight } = sheet;
  const { crew } = crewAt(sheet, ruleset, toSeconds(flight.departs));
  const peek = <K extends FactKey>(key: K): Fact<FactValue<K>> => readFact(sheet, crew, key);
  const get = <K extends FactKey>(key: K): FactValue<K> => {
    const fact = peek(key);
    if (!fact.known) throw new UnknownFact(key, fact.because);
    return fact.value;
  };
  const type = peek('aircraft.type');
  const loading = peek('aircraft.loading');
  const done: LoadingWork = {
    ...{ lines: [], points: [], envelopes: [], runways: [], marginFactor: null, unknown: [] },
    maxTakeoffLb: type.known ? type.value.maxTakeoffLb : null,
  };
  told(done, () => {
    const limits = get('aircraft.loading');
    done.envelopes = limits.envelopes;
    const of: ToLoad = {
      ...{ sheet: limits, weighing: get('aircraft.weighing') },
      ...{ loading: toldLoading(flight), personsOnBoard: flight.personsOnBoard },
      lbPerUsGal: lbPerUsGal(get('aircraft.type'), limits, p),
    };
    done.lines = linesOf(of, of.loading.fuelUsGal).map((line) => ({ ...line, momentLbIn: momentOf(line) }));
    const point = (when: WorkedPoint['when'], usGal: number): WorkedPoint => {
      const at = loadedWith(of, usGal);
      return { when, ...at, categories: categoriesOf(limits.envelopes, at) };
    };
    done.points = [point('takeoff', of.loading.fuelUsGal), point('zero-fuel', 0)];
    const burn = burnUsGal(get('aircraft.type'), flight);
    if (burn === null) throw new UnknownFact('aircraft.type', 'the fuel burn at cruise is not on record');
    done.points.splice(1, 0, point('landing', Math.max(0, of.loading.fuelUsGal - burn)));
  });
  told(done, () => {
    const weather = freshWeather(flight.weather, moment, p.number(WEATHER_HOURS));
    if (!weather) throw new UnknownFact('flight.weather', 'no recent weather is declared for the flight');
    const is = get('aircraft.type');
    if (is.emptyWeightLb === null)
      throw new UnknownFact('aircraft.type', 'the empty weight is not on record');
    const limits = loading.known ? loading.value : null;
    const performance = get('aircraft.performance');
    const toFly: ToFly = {
      ...{ type: is, performance, flight, weather, loading: toldLoading(flight) },
      ...{ emptyLb: is.emptyWeightLb, lbPerUsGal: lbPerUsGal(is, limits, p) },
    };
    const factor = p.number(MARGIN);
    done.marginFactor = factor;
    const work = workFields(toFly);
    done.runways = work.worked.map((one) => runwayOf(one, factor, performance.liftOffKias));
    done.unknown.push(...work.unknown);
  });
  return done;
}

/** Runs a part; what it cannot know is told once. */
function told(done: LoadingWork, part: () => void): void {
  try {
    part();
  } catch (error) {
    if (!(error instanceof UnknownFact)) throw error;
    if (!done.unknown.includes(error.because)) done.unknown.push(error.because);
  }
}

function runwayOf(one: WorkedManoeuvre, factor: number, liftOffKt: number | null): WorkedRunway {
  const { does, airfield, runway, headwindKt, at, answer, ifWet } = one;
  const check = does === 'takeoff' && liftOffKt !== null ? takeoffCheck(runway.lengthFt, liftOffKt) : null;
  return {
    ...{ does, airfield: airfield.code, runway: runway.designator, lengthFt: runway.lengthFt },
    ...{ weightLb: one.weightLb, pressureAltitudeFt: at.pressureAltitudeFt, oatC: at.oatC },
    densityAltitudeFt: Math.round(densityAltitudeFt(at.pressureAltitudeFt, at.oatC)),
    ...{ headwindKt, steps: answer.steps, groundRollFt: answer.groundRollFt, over50Ft: answer.over50Ft },
    neededFt: neededFt(answer.over50Ft, factor),
    ifWetFt: ifWet?.found ? ifWet.over50Ft : null,
    halfWay: check && {
      ...{ atFt: check.checkDistanceFt, leastKt: check.minimumKt },
      expectedKt: halfwaySpeedKt(check, answer.groundRollFt, liftOffKt!),
    },
  };
}
