/** The flight's loading by station: what the member told, laid on the stations of the aircraft. */
import { balanceOf, fuelInTanks, type Balance, type LoadLine } from '../../../air/balance.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { FactView } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { DeclaredLoading } from '../../../facts/flight.js';
import type { LoadingFact, StationFact, StationKind, WeighingFact } from '../../../facts/loading.js';

/** Parameters that whoever works out a loading must declare. */
export const FUEL_WEIGHTS = ['us.fuel.avgas-lb-per-us-gal', 'us.fuel.jet-lb-per-us-gal'] as const;

/** A loading of which the totals are told. */
export type ToldLoading = DeclaredLoading & { occupantsLb: number; baggageLb: number; fuelUsGal: number };

/** The totals, each of them told. */
export function toldLoading(flight: Pick<FactView['flight'], 'loading'>): ToldLoading {
  const loading = need(flight.loading, 'flight.loading', 'the loading is not declared yet');
  const { occupantsLb, baggageLb, fuelUsGal } = loading;
  return {
    ...loading,
    occupantsLb: need(occupantsLb, 'flight.loading', 'the weight of the occupants is not declared'),
    baggageLb: need(baggageLb, 'flight.loading', 'the weight of the baggage is not declared'),
    fuelUsGal: need(fuelUsGal, 'flight.loading', 'the fuel on board is not declared'),
  };
}

/** To a tenth of a pound, so that binary fractions of gallons do not tip an exact limit. */
export const tenth = (lb: number): number => Math.round(lb * 10) / 10;
/** Whole pounds, rounded up. */
export const pounds = (lb: number): number => Math.ceil(tenth(lb));
/** Weight at take-off. */
export const totalLb = (emptyLb: number, loading: ToldLoading, perGallon: number): number =>
  tenth(emptyLb + loading.occupantsLb + loading.baggageLb + loading.fuelUsGal * perGallon);

/** Pounds of a US gallon of the aircraft's fuel. */
export function lbPerUsGal(type: AircraftType, sheet: LoadingFact | null, p: Parameters): number {
  const jet = sheet ? sheet.fuelKind === 'jet' : type.turbine;
  return p.number(FUEL_WEIGHTS[jet ? 1 : 0]);
}

/** Fuel burned as planned, US gallons; null where the burn is not on record. */
export function burnUsGal(
  type: AircraftType,
  flight: Pick<FactView['flight'], 'plannedTenths'>,
): number | null {
  return type.fuelBurnUsGalPerHour === null ? null : (flight.plannedTenths / 10) * type.fuelBurnUsGalPerHour;
}

export const stationsOf = (sheet: LoadingFact, ...kinds: StationKind[]): StationFact[] =>
  sheet.stations.filter(({ kind }) => kinds.includes(kind));
export const compartmentsOf = (sheet: LoadingFact): StationFact[] => stationsOf(sheet, 'baggage', 'other');

/** A weight by station in their order; null where it is not told which carries it, text where there is no such station. */
export type Spread = number[] | string | null;

function spread(
  told: readonly number[] | null | undefined,
  totalLb: number,
  stations: number,
  what: string,
): Spread {
  if (told) {
    if (told.slice(stations).some((lb) => lb > 0)) return `the aircraft has no ${what} ${told.length}`;
    return Array.from({ length: stations }, (_, index) => told[index] ?? 0);
  }
  if (totalLb === 0 || stations === 1) return Array.from({ length: stations }, () => totalLb);
  return stations === 0 ? `the aircraft has no ${what}` : null;
}

/** Occupants by seat row. Somebody alone sits in the first, which is the pilot's. */
export function rowsOf(sheet: LoadingFact, loading: ToldLoading, personsOnBoard: number): Spread {
  const rows = stationsOf(sheet, 'seats').length;
  const alone = personsOnBoard === 1 && !loading.rowsLb ? [loading.occupantsLb] : loading.rowsLb;
  return spread(alone, loading.occupantsLb, rows, 'seat row');
}

/** Baggage by compartment. */
export const bagsOf = (sheet: LoadingFact, loading: ToldLoading): Spread =>
  spread(loading.compartmentsLb, loading.baggageLb, compartmentsOf(sheet).length, 'baggage compartment');

/** What the working needs of one flight. */
export interface ToLoad {
  sheet: LoadingFact;
  weighing: WeighingFact;
  loading: ToldLoading;
  personsOnBoard: number;
  lbPerUsGal: number;
}

/** The lines of the loading sheet with so much fuel aboard. Throws UnknownFact where a weight has no place. */
export function linesOf(
  { sheet, weighing, loading, personsOnBoard, lbPerUsGal: lb }: ToLoad,
  usGal: number,
): LoadLine[] {
  const armIn = need(
    weighing.emptyArmIn,
    'aircraft.weighing',
    'the centre of gravity of the empty aircraft is not on record',
  );
  const placed = (of: Spread, untold: string): number[] => {
    const because = typeof of === 'string' ? of : untold;
    return need(typeof of === 'string' ? null : of, 'flight.loading', because);
  };
  const rows = placed(rowsOf(sheet, loading, personsOnBoard), 'it is not told who sits in which row');
  const bags = placed(bagsOf(sheet, loading), 'it is not told which baggage goes where');
  const lines = (stations: StationFact[], weightsLb: number[]): LoadLine[] =>
    stations.map((station, index) => ({
      what: station.name,
      weightLb: weightsLb[index]!,
      armIn: station.armIn,
    }));
  const tanks = stationsOf(sheet, 'fuel');
  const fuel = fuelInTanks(
    tanks.map(({ name, armIn: arm, usableUsGal }) => ({
      name,
      armIn: arm,
      usableUsGal: usableUsGal ?? usGal,
    })),
    usGal,
  );
  need(tanks.length > 0 || usGal === 0 ? true : null, 'aircraft.loading', 'no tank is on the loading sheet');
  return [
    { what: 'Empty aircraft', weightLb: weighing.emptyWeightLb, armIn },
    ...lines(stationsOf(sheet, 'seats'), rows),
    ...lines(compartmentsOf(sheet), bags),
    ...lines(
      tanks,
      fuel.map((gal) => gal * lb),
    ),
  ];
}

/** The loaded aircraft with so much fuel aboard. */
export const loadedWith = (of: ToLoad, usGal: number): Balance => balanceOf(linesOf(of, usGal));
