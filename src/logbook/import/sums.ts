/** Sums over flights, in tenths of an hour: what is held against each other before, added and after an import. Pure. */
import type { Settled } from '../log.checks.js';

export interface Sums {
  flights: number;
  totalTenths: number;
  nightTenths: number;
  crossCountryTenths: number;
  actualInstrumentTenths: number;
  simulatedInstrumentTenths: number;
  dualGivenTenths: number;
  takeoffs: number;
  landings: number;
}

export const SUMMED = [
  ...(['totalTenths', 'nightTenths', 'crossCountryTenths', 'actualInstrumentTenths'] as const),
  ...(['simulatedInstrumentTenths', 'dualGivenTenths', 'takeoffs', 'landings'] as const),
];

export function sumOf(entries: readonly Pick<Settled, (typeof SUMMED)[number]>[]): Sums {
  const sums: Sums = {
    ...{ flights: entries.length, totalTenths: 0, nightTenths: 0, crossCountryTenths: 0 },
    ...{
      actualInstrumentTenths: 0,
      simulatedInstrumentTenths: 0,
      dualGivenTenths: 0,
      takeoffs: 0,
      landings: 0,
    },
  };
  for (const entry of entries) for (const name of SUMMED) sums[name] += entry[name];
  return sums;
}
