import { defineRule, ruleList, type FactView } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { LoadingFact } from '../../../facts/loading.js';
import { loadWeight1 } from '../../../versions/past/load-weight-1.js';
import { keptUsGal, KEPT_FUEL, lighterLoads, surely } from './lighter.js';
import {
  bagsOf,
  burnUsGal,
  compartmentsOf,
  FUEL_WEIGHTS,
  lbPerUsGal,
  rowsOf,
  type Spread,
  stationsOf,
  toldLoading,
  type ToldLoading,
} from './loaded.js';

/**
 * 14 CFR 91.9(a), 91.103(b): the aircraft takes off within its weight limits, and where its loading sheet is on record is
 * within those of its seat rows, compartments and tanks, and at landing and without fuel too. Loading is settled before
 * departure, so what is not declared yet becomes a condition. Balance has a rule of its own.
 */
export const loadWeight = defineRule({
  id: 'load.weight',
  title: 'Weight limits',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: 'Add up occupants, baggage and fuel, and make sure that every weight is within its limit.',
  reads: ['aircraft.type', 'aircraft.loading'],
  parameters: [...FUEL_WEIGHTS, ...KEPT_FUEL],
  branches: {
    within: { status: 'met', says: 'About {total} lb at take-off of {most} lb allowed.' },
    'too-heavy': {
      status: 'short',
      says: 'About {total} lb at take-off, {over} lb more than the {most} lb allowed.',
    },
    'station-over': { status: 'short', says: '{station} would carry {load}; it may carry {most}.' },
    'zero-fuel-heavy': {
      status: 'short',
      says: 'About {total} lb without fuel, {over} lb more than the {most} lb allowed.',
    },
    'landing-heavy': {
      status: 'short',
      says: 'About {total} lb at landing after the planned flight, {over} lb more than the {most} lb allowed.',
    },
  },
  superseded: ruleList(loadWeight1),
  changed:
    'Holds seat rows, compartments, tanks, landing and zero-fuel weight against the loading sheet where one is on record, and advises less fuel only down to what the club keeps.',
  bodies: [
    {
      version: 2,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.9(a), 91.103(b)',
        status: 'from memory',
        reading: 'Fuel is counted at a usual weight per gallon; nothing is taken off for taxi fuel.',
      },
      judge(f, _moment, p, take) {
        const type = f.get('aircraft.type');
        const known = f.peek('aircraft.loading');
        const sheet = known.known ? known.value : null;
        const most = need(
          sheet?.maxTakeoffLb ?? type.maxTakeoffLb,
          'aircraft.type',
          'the greatest take-off weight is not on record',
        );
        const empty = need(type.emptyWeightLb, 'aircraft.type', 'the empty weight is not on record');
        const loading = toldLoading(f.flight);
        const of = { type, sheet, most, empty, lbPerUsGal: lbPerUsGal(type, sheet, p), flight: f.flight };
        const found = overLimit({ ...of, loading, personsOnBoard: f.flight.personsOnBoard });
        if (!found) return take('within', { total: pounds(takeoffLb(of, loading)), most });
        const remedies = () =>
          lighterLoads({
            ...{ flight: f.flight, crew: f.crew, loading, sheet },
            keptUsGal: keptUsGal(type, f.flight, p),
            fits: (changed) => surely(() => overLimit({ ...of, ...changed }) === null),
          });
        return take(found.branch, found.values, { remedies });
      },
    },
  ],
});

interface Weighed {
  type: AircraftType;
  sheet: LoadingFact | null;
  most: number;
  empty: number;
  lbPerUsGal: number;
  flight: FactView['flight'];
  loading: ToldLoading;
  personsOnBoard: number;
}

type Over = {
  branch: 'too-heavy' | 'station-over' | 'zero-fuel-heavy' | 'landing-heavy';
  values: Record<string, string | number>;
};

/** To a tenth of a pound, so that binary fractions of gallons do not tip an exact limit. */
const tenth = (lb: number): number => Math.round(lb * 10) / 10;
/** Whole pounds, rounded up. */
const pounds = (lb: number): number => Math.ceil(tenth(lb));
const takeoffLb = (of: Pick<Weighed, 'empty' | 'lbPerUsGal'>, loading: ToldLoading): number =>
  tenth(of.empty + loading.occupantsLb + loading.baggageLb + loading.fuelUsGal * of.lbPerUsGal);

/** The first limit that is passed; null when none is. Throws UnknownFact where one cannot be held against. */
function overLimit(of: Weighed): Over | null {
  const { sheet, loading, most } = of;
  const total = takeoffLb(of, loading);
  const over = (branch: Exclude<Over['branch'], 'station-over'>, lb: number, limit: number): Over => ({
    branch,
    values: { total: pounds(lb), most: limit, over: pounds(lb - limit) },
  });
  if (total > most) return over('too-heavy', total, most);
  if (!sheet) return null;
  const station = overStation(sheet, loading, of.personsOnBoard);
  if (station) return { branch: 'station-over', values: station };
  const zeroFuel = tenth(total - loading.fuelUsGal * of.lbPerUsGal);
  const { maxZeroFuelLb, maxLandingLb } = sheet;
  if (maxZeroFuelLb !== null && zeroFuel > maxZeroFuelLb)
    return over('zero-fuel-heavy', zeroFuel, maxZeroFuelLb);
  if (maxLandingLb === null || total <= maxLandingLb) return null;
  const burn = need(
    burnUsGal(of.type, of.flight),
    'aircraft.type',
    'the fuel burn at cruise is not on record',
  );
  const landing = tenth(total - Math.min(burn, loading.fuelUsGal) * of.lbPerUsGal);
  return landing > maxLandingLb ? over('landing-heavy', landing, maxLandingLb) : null;
}

/** The first station that carries too much. Where it is not told what goes where, all of a kind together are held against it. */
function overStation(
  sheet: LoadingFact,
  loading: ToldLoading,
  personsOnBoard: number,
): Over['values'] | null {
  const tanks = stationsOf(sheet, 'fuel');
  const usable = tanks.every((one) => one.usableUsGal !== null)
    ? tanks.reduce((sum, one) => sum + one.usableUsGal!, 0)
    : Infinity;
  if (loading.fuelUsGal > usable + 1e-9)
    return { station: 'The tanks', load: `${loading.fuelUsGal} US gal`, most: `${usable} US gal` };
  const rows = stationsOf(sheet, 'seats');
  return (
    overOf(rows, rowsOf(sheet, loading, personsOnBoard), loading.occupantsLb, 'The seats') ??
    overOf(compartmentsOf(sheet), bagsOf(sheet, loading), loading.baggageLb, 'The baggage compartments')
  );
}

function overOf(
  stations: ReturnType<typeof stationsOf>,
  spread: Spread,
  totalLb: number,
  all: string,
): Over['values'] | null {
  const says = (station: string, lb: number, most: number) => ({
    station,
    load: `${pounds(lb)} lb`,
    most: `${most} lb`,
  });
  if (Array.isArray(spread)) {
    const at = stations.findIndex(({ maxLb }, index) => maxLb !== null && tenth(spread[index]!) > maxLb);
    return at < 0 ? null : says(stations[at]!.name, spread[at]!, stations[at]!.maxLb!);
  }
  if (stations.length === 0 || stations.some(({ maxLb }) => maxLb === null)) return null;
  const most = stations.reduce((sum, { maxLb }) => sum + maxLb!, 0);
  return tenth(totalLb) > most ? says(all, totalLb, most) : null;
}
