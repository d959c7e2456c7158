/**
 * What a flight costs, in whole numbers of the currency's smallest unit. Pure. Each line is rounded once, half up (half away from
 * nothing where money comes back), and the charge is the sum of its rounded lines: nothing else is ever rounded.
 */
import { daysBetween, type LocalDate } from '../../rules/index.js';

/** What an hour of an aircraft costs. */
export interface AircraftRate {
  id: string;
  /** Which hours count: of the Hobbs meter, of the tachometer, or from departure to arrival. */
  basis: 'hobbs' | 'tachometer' | 'clock';
  perHourMinor: number;
  /** Wet: fuel is in it, and fuel bought elsewhere comes back up to a price. Dry: the club's fuel is paid for. */
  fuel: 'wet' | 'dry';
  fuelPerUsGalMinor: number;
}

/** What an hour of an instructor costs. */
export interface InstructionRate {
  id: string;
  perHourMinor: number;
}

/** What is told of a flight once it is over, or expected of it before. */
export interface FlownHours {
  hobbsTenths: number | null;
  tachTenths: number | null;
  /** Departure to arrival. */
  blockMinutes: number;
  /** Days of departure and arrival in the club's zone. */
  departedOn: LocalDate;
  arrivedOn: LocalDate;
  /** Null: nobody told. 0 where no instruction was given. */
  instructionMinutes: number | null;
  /** Bought elsewhere and paid for by whoever pays for the flight. */
  fuelBoughtUsGal: number;
  fuelPaidMinor: number;
  /** Drawn from the club's own supply. */
  fuelClubUsGal: number;
}

export const LINE_KINDS = ['aircraft', 'days-away', 'fuel', 'fuel-back', 'instruction'] as const;

/** One line of a charge. */
export interface ChargeLine {
  kind: (typeof LINE_KINDS)[number];
  quantity: number;
  unit: 'h' | 'min' | 'US gal';
  /** For an hour or a gallon; null where what was paid comes back as it is. */
  perUnitMinor: number | null;
  /** Before rounding, to three decimals. */
  exactMinor: number;
  amountMinor: number;
  rateId: string;
}

/** Why nothing can be charged yet. */
export type Missing = 'hobbs' | 'tachometer' | 'instruction-minutes' | 'instruction-rate' | 'aircraft-rate';

/** What the flight is charged by. */
export interface ChargeBasis {
  rate: AircraftRate;
  /** Null without an instructor aboard. */
  instruction: InstructionRate | 'missing' | null;
  /** Hours charged at least for each day of a flight that stays away overnight. */
  dayAwayHours: number;
}

/** The lines, or what is missing to work them out: a missing reading is never taken for nothing. */
export function chargeLines(
  of: FlownHours,
  { rate, instruction, dayAwayHours }: ChargeBasis,
): { lines: ChargeLine[]; amountMinor: number } | { missing: Missing } {
  const minutes = chargedMinutes(of, rate);
  if (minutes === null) return { missing: rate.basis as Missing };
  const lines = [
    timeLine('aircraft', minutes, rate, rate.basis === 'clock' ? 'min' : 'h'),
    ...dayLines(of, { rate, minutes, dayAwayHours }),
    ...fuelLines(of, rate),
  ];
  if (instruction === 'missing') return { missing: 'instruction-rate' };
  if (instruction !== null) {
    if (of.instructionMinutes === null) return { missing: 'instruction-minutes' };
    if (of.instructionMinutes > 0)
      lines.push(timeLine('instruction', of.instructionMinutes, instruction, 'min'));
  }
  return { lines, amountMinor: lines.reduce((sum, line) => sum + line.amountMinor, 0) };
}

function chargedMinutes(of: FlownHours, { basis }: AircraftRate): number | null {
  if (basis === 'clock') return of.blockMinutes;
  const tenths = basis === 'hobbs' ? of.hobbsTenths : of.tachTenths;
  return tenths === null ? null : tenths * 6;
}

function timeLine(
  kind: ChargeLine['kind'],
  minutes: number,
  { id, perHourMinor }: { id: string; perHourMinor: number },
  unit: 'h' | 'min',
): ChargeLine {
  return {
    ...{
      kind,
      quantity: unit === 'h' ? minutes / 60 : minutes,
      unit,
      perUnitMinor: perHourMinor,
      rateId: id,
    },
    ...rounded(minutes * perHourMinor, 60),
  };
}

/** What is missing to the least hours of a flight that stays away overnight; each date it touches is a day. */
function dayLines(
  { departedOn, arrivedOn }: FlownHours,
  of: { rate: AircraftRate; minutes: number; dayAwayHours: number },
): ChargeLine[] {
  const nights = daysBetween(departedOn, arrivedOn);
  if (nights < 1) return [];
  const short = Math.round(of.dayAwayHours * 60) * (nights + 1) - of.minutes;
  return short > 0 ? [timeLine('days-away', short, of.rate, 'min')] : [];
}

function fuelLines(of: FlownHours, { id, fuel, fuelPerUsGalMinor }: AircraftRate): ChargeLine[] {
  const price = (usGal: number) => rounded(Math.round(usGal * 100) * fuelPerUsGalMinor, 100);
  const line = { unit: 'US gal' as const, rateId: id };
  if (fuel === 'dry') {
    if (of.fuelClubUsGal <= 0) return [];
    const drawn = { kind: 'fuel' as const, quantity: of.fuelClubUsGal, perUnitMinor: fuelPerUsGalMinor };
    return [{ ...line, ...drawn, ...price(of.fuelClubUsGal) }];
  }
  if (of.fuelPaidMinor <= 0) return [];
  const most = price(of.fuelBoughtUsGal);
  const back = { kind: 'fuel-back' as const, quantity: of.fuelBoughtUsGal };
  if (of.fuelPaidMinor <= most.amountMinor) {
    const paid = { exactMinor: -of.fuelPaidMinor, amountMinor: -of.fuelPaidMinor };
    return [{ ...line, ...back, perUnitMinor: null, ...paid }];
  }
  if (most.amountMinor === 0) return [];
  const capped = { exactMinor: -most.exactMinor, amountMinor: -most.amountMinor };
  return [{ ...line, ...back, perUnitMinor: fuelPerUsGalMinor, ...capped }];
}

/** Both whole and not negative; what stays below 2^53 is exact. */
function rounded(numerator: number, denominator: number): Pick<ChargeLine, 'exactMinor' | 'amountMinor'> {
  return {
    exactMinor: Math.round((numerator * 1000) / denominator) / 1000,
    amountMinor: halfUp(numerator, denominator),
  };
}

/** The quotient of two whole numbers to the nearest whole one, halves up. */
export function halfUp(numerator: number, denominator: number): number {
  const rest = numerator % denominator;
  return (numerator - rest) / denominator + (2 * rest >= denominator ? 1 : 0);
}
