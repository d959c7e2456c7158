/** What a loading sheet limits beside the centre of gravity: rows, compartments, tanks, landing and zero-fuel weight. */
import { need } from '../../../engine/unknown.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { LoadingFact, StationFact } from '../../../facts/loading.js';
import {
  bagsOf,
  compartmentsOf,
  pounds,
  rowsOf,
  stationsOf,
  tenth,
  totalLb,
  type Spread,
  type ToldLoading,
} from './loaded.js';

/** A loading to be held against the limits. */
export interface Weighed {
  type: Pick<AircraftType, 'maxTakeoffLb'>;
  sheet: LoadingFact;
  /** Null: not on record. */
  emptyLb: number | null;
  lbPerUsGal: number;
  burnUsGal: number | null;
  loading: ToldLoading;
  personsOnBoard: number;
}

/** A limit that is passed, as its sentence is filled. */
export type Over =
  | { branch: 'station-over'; values: { station: string; load: string; most: string } }
  | { branch: 'too-heavy'; values: { when: string; total: number; over: number; most: number } };

/** The first limit that is passed; null when none is. Throws UnknownFact where one cannot be held against. */
export function overLimit(of: Weighed): Over | null {
  const station = overStation(of);
  if (station) return station;
  const { sheet, loading, type } = of;
  const empty = need(of.emptyLb, 'aircraft.weighing', 'the empty weight is not on record');
  const total = totalLb(empty, loading, of.lbPerUsGal);
  const over = (when: string, lb: number, most: number | null): Over | null =>
    most === null || lb <= most
      ? null
      : { branch: 'too-heavy', values: { when, total: pounds(lb), over: pounds(lb - most), most } };
  const takeoff = over('at take-off', total, type.maxTakeoffLb);
  const zeroFuel = over(
    'without fuel',
    tenth(total - loading.fuelUsGal * of.lbPerUsGal),
    sheet.maxZeroFuelLb,
  );
  if (takeoff ?? zeroFuel) return takeoff ?? zeroFuel;
  if (sheet.maxLandingLb === null || total <= sheet.maxLandingLb) return null;
  const burn = need(of.burnUsGal, 'aircraft.type', 'the fuel burn at cruise is not on record');
  const landing = tenth(total - Math.min(burn, loading.fuelUsGal) * of.lbPerUsGal);
  return over('at landing after the planned flight', landing, sheet.maxLandingLb);
}

/** The first station that carries too much. Where it is not told what goes where, all of a kind are held against it together. */
function overStation({ sheet, loading, personsOnBoard }: Weighed): Over | null {
  const usable = stationsOf(sheet, 'fuel').reduce((sum, one) => sum + (one.usableUsGal ?? Infinity), 0);
  if (loading.fuelUsGal > usable + 1e-9 && usable > 0)
    return over('The tanks', `${loading.fuelUsGal} US gal`, `${usable} US gal`);
  const rows = stationsOf(sheet, 'seats');
  return (
    overOf(rows, rowsOf(sheet, loading, personsOnBoard), loading.occupantsLb, 'The seats') ??
    overOf(compartmentsOf(sheet), bagsOf(sheet, loading), loading.baggageLb, 'The baggage compartments')
  );
}

function overOf(stations: StationFact[], spread: Spread, allLb: number, all: string): Over | null {
  if (Array.isArray(spread)) {
    const at = stations.findIndex(({ maxLb }, index) => maxLb !== null && tenth(spread[index]!) > maxLb);
    return at < 0 ? null : overLb(stations[at]!.name, spread[at]!, stations[at]!.maxLb!);
  }
  if (stations.length === 0 || stations.some(({ maxLb }) => maxLb === null)) return null;
  const most = stations.reduce((sum, { maxLb }) => sum + maxLb!, 0);
  return tenth(allLb) > most ? overLb(all, allLb, most) : null;
}

const overLb = (station: string, lb: number, most: number): Over =>
  over(station, `${pounds(lb)} lb`, `${most} lb`);
const over = (station: string, load: string, most: string): Over => ({
  branch: 'station-over',
  values: { station, load, most },
});
