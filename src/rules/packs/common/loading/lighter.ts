/** Ways to load less, or elsewhere: each is tried before it is offered. Who flies is not for the engine to choose. */
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { FactView } from '../../../engine/rule.js';
import { UnknownFact } from '../../../engine/unknown.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { FlightFacts } from '../../../facts/flight.js';
import type { LoadingFact } from '../../../facts/loading.js';
import { burnUsGal, compartmentsOf, stationsOf, type ToldLoading } from './loaded.js';

/** Parameters that whoever offers these remedies must declare. */
export const KEPT_FUEL = ['club.loading.kept-minutes'] as const;

/** A flight changed in its loading, and whether the rule would then be met. */
export type Fits = (flight: Pick<FlightFacts, 'personsOnBoard'> & { loading: ToldLoading }) => boolean;

interface Asked {
  flight: FactView['flight'];
  crew: Pick<FactView['crew'], 'passengers' | 'instruction'>;
  loading: ToldLoading;
  sheet: LoadingFact | null;
  /** Fuel that stays aboard; null: not known, and then none is taken off. */
  keptUsGal: number | null;
  fits: Fits;
}

/** What a try says; one that cannot tell is no. */
export function surely(says: () => boolean): boolean {
  try {
    return says();
  } catch (error) {
    if (error instanceof UnknownFact) return false;
    throw error;
  }
}

/** Fuel for the planned time and what the club keeps beyond it; null where the burn is not on record. */
export function keptUsGal(type: AircraftType, flight: FactView['flight'], p: Parameters): number | null {
  const burn = burnUsGal(type, flight);
  if (burn === null) return null;
  return burn + (p.number(KEPT_FUEL[0]) / 60) * type.fuelBurnUsGalPerHour!;
}

/** Less baggage; less fuel; both, where neither alone is enough; the last row left at home. */
export function lighterLoads(of: Asked): Remedy[] {
  const one = [lessBaggage(of), lessFuel(of, of.loading)].filter((remedy) => remedy !== null);
  return [...(one.length > 0 ? one : both(of)), ...withoutLastRow(of)];
}

/** Baggage in another compartment. */
export function otherCompartments(of: Asked): Remedy[] {
  const { sheet, loading } = of;
  const bags = loading.compartmentsLb;
  if (!sheet || !bags) return [];
  const named = compartmentsOf(sheet);
  return named.flatMap((from, at) =>
    named.flatMap((to, into): Remedy[] => {
      const here = bags[at] ?? 0;
      if (at === into || here <= 0) return [];
      const moved = (lb: number): ToldLoading => ({
        ...loading,
        compartmentsLb: named.map((_, i) => (bags[i] ?? 0) - (i === at ? lb : 0) + (i === into ? lb : 0)),
      });
      const lb = leastThat(here, 1, (amount) => of.fits({ ...of.flight, loading: moved(amount) }));
      if (lb === null) return [];
      const title = `Move ${lb} lb of baggage from ${from.name} to ${to.name}.`;
      return [{ act: 'move-load', title, by: 'member', effects: [told(moved(lb))] }];
    }),
  );
}

function lessBaggage(of: Asked): Remedy | null {
  for (const aftFirst of [true, false]) {
    const fits = (lb: number) => of.fits({ ...of.flight, loading: without(of.loading, lb, aftFirst) });
    const lb = leastThat(of.loading.baggageLb, 1, fits);
    if (lb !== null) return reduce(`${lb} lb of baggage`, without(of.loading, lb, aftFirst));
  }
  return null;
}

function both(of: Asked): Remedy[] {
  const { baggageLb } = of.loading;
  if (baggageLb === 0) return [];
  const fuel = lessFuel(of, without(of.loading, baggageLb, true), `${baggageLb} lb of baggage and `);
  return fuel ? [fuel] : [];
}

function lessFuel(of: Asked, loading: ToldLoading, also = ''): Remedy | null {
  if (of.keptUsGal === null) return null;
  const spare = Math.floor((loading.fuelUsGal - of.keptUsGal) * 10 + 1e-6) / 10;
  const less = (usGal: number): ToldLoading => ({
    ...loading,
    fuelUsGal: Math.max(of.keptUsGal!, Math.floor((loading.fuelUsGal - usGal) * 10 + 1e-6) / 10),
  });
  const usGal = leastThat(spare, 0.1, (amount) => of.fits({ ...of.flight, loading: less(amount) }));
  if (usGal === null) return null;
  // What stays is rounded down: of an odd amount more goes than was tried.
  const left = less(usGal);
  const goes = Math.round((loading.fuelUsGal - left.fuelUsGal) * 100) / 100;
  return reduce(`${also}${goes} US gal of fuel`, left);
}

/** Nobody in the last row that anybody sits in. At most as many stay as there are seats left. */
function withoutLastRow(of: Asked): Remedy[] {
  const { flight, loading, sheet, crew } = of;
  const rows = loading.rowsLb;
  if (!sheet || !rows || flight.purpose !== 'passengers' || crew.instruction || crew.passengers === 0)
    return [];
  const last = rows.findLastIndex((lb) => lb > 0);
  const named = stationsOf(sheet, 'seats');
  if (last < 1 || last >= named.length) return [];
  const seats = named.slice(0, last).reduce((sum, one) => sum + (one.seats ?? 20), 0);
  const staying = Math.min(flight.personsOnBoard - 1, seats);
  if (staying < (flight.secondPilotId === null ? 1 : 2)) return [];
  const rowsLb = rows.map((lb, index) => (index === last ? 0 : lb));
  const less = { ...loading, rowsLb, occupantsLb: rowsLb.reduce((sum, lb) => sum + lb, 0) };
  if (!of.fits({ personsOnBoard: staying, loading: less })) return [];
  return [
    {
      act: 'take-fewer-passengers',
      title: `Take no passengers in ${named[last]!.name.toLowerCase()}.`,
      by: 'member',
      effects: [
        {
          op: 'flight',
          fields: {
            personsOnBoard: staying,
            loading: less,
            ...(staying === 1 && { purpose: 'solo' as const }),
          },
        },
      ],
    },
  ];
}

/** The loading with so much less baggage, taken out compartment by compartment. */
function without(loading: ToldLoading, lb: number, aftFirst: boolean): ToldLoading {
  const baggageLb = loading.baggageLb - lb;
  if (!loading.compartmentsLb) return { ...loading, baggageLb };
  const bags = [...loading.compartmentsLb];
  const order = bags.map((_, index) => index);
  let left = lb;
  for (const index of aftFirst ? order.reverse() : order) {
    const taken = Math.min(bags[index]!, left);
    bags[index]! -= taken;
    left -= taken;
  }
  return { ...loading, baggageLb, compartmentsLb: bags };
}

const COARSE = 40;

/** The least amount in steps up to `most` that fits; found coarse, then fine. Null: none of those tried does. */
function leastThat(most: number, step: number, fits: (amount: number) => boolean): number | null {
  const steps = Math.ceil(most / step - 1e-9);
  if (!(steps >= 1)) return null;
  const amount = (count: number): number => Math.min(most, Math.round(count * step * 10) / 10);
  const stride = Math.max(1, Math.ceil(steps / COARSE));
  let found: number;
  for (let count = Math.min(stride, steps); ; count = Math.min(count + stride, steps)) {
    if (fits(amount(count))) {
      found = count;
      break;
    }
    if (count === steps) return null;
  }
  let low = Math.max(0, found - stride);
  while (found - low > 1) {
    const middle = Math.floor((low + found) / 2);
    if (fits(amount(middle))) found = middle;
    else low = middle;
  }
  return amount(found);
}

const reduce = (what: string, loading: ToldLoading): Remedy => ({
  act: 'reduce-load',
  title: `Leave behind ${what}.`,
  by: 'member',
  effects: [told(loading)],
});

const told = (loading: ToldLoading) => ({ op: 'flight' as const, fields: { loading } });
