/** What flights cost: worked cases, and rounding held against ECMA-402 (ICU) and ISO 4217. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { parse } from 'yaml';
import {
  type AircraftRate,
  type ChargeBasis,
  chargeLines,
  type FlownHours,
  halfUp,
} from '../../src/charges/flights/charge-lines.js';
import { minorPerUnit } from '../../src/charges/currency.js';

const RATE: AircraftRate = {
  ...{ id: 'rate-1', basis: 'hobbs', perHourMinor: 14_500, fuel: 'wet', fuelPerUsGalMinor: 600 },
};
const FLOWN: FlownHours = {
  ...{ hobbsTenths: 13, tachTenths: 11, blockMinutes: 84, departedOn: '2027-03-01', arrivedOn: '2027-03-01' },
  ...{ instructionMinutes: null, fuelBoughtUsGal: 0, fuelPaidMinor: 0, fuelClubUsGal: 0 },
};

interface Case {
  name: string;
  flown?: Partial<FlownHours>;
  rate?: Partial<AircraftRate>;
  instruction?: { perHourMinor: number } | 'missing';
  dayAwayHours?: number;
  lines?: [kind: string, quantity: number, unit: string, amountMinor: number][];
  exact?: number[];
  missing?: string;
}

const cases = parse(readFileSync('src/charges/flights/charge-lines.cases.yaml', 'utf8')) as Case[];

test.each(cases)('$name', (one) => {
  const found = chargeLines({ ...FLOWN, ...one.flown }, basisOf(one));
  if (one.missing !== undefined) {
    expect(found).toEqual({ missing: one.missing });
    return;
  }
  if ('missing' in found) throw new Error(`missing ${found.missing}`);
  expect(
    found.lines.map(({ kind, quantity, unit, amountMinor }) => [kind, quantity, unit, amountMinor]),
  ).toEqual(one.lines);
  if (one.exact) expect(found.lines.map(({ exactMinor }) => exactMinor)).toEqual(one.exact);
  expect(found.amountMinor).toBe(one.lines!.reduce((sum, line) => sum + line[3], 0));
});

function basisOf({ rate, instruction, dayAwayHours = 0 }: Case): ChargeBasis {
  return {
    rate: { ...RATE, ...rate },
    instruction:
      instruction === undefined || instruction === 'missing'
        ? (instruction ?? null)
        : { id: 'rate-2', ...instruction },
    dayAwayHours,
  };
}

// ECMA-402, Intl.NumberFormat: roundingMode 'halfExpand' is half away from zero; decimal texts are taken exactly.
const rounds = new Intl.NumberFormat('en', {
  ...{ maximumFractionDigits: 0, useGrouping: false, roundingMode: 'halfExpand' },
} as Intl.NumberFormatOptions);

test('tenths and hundredths are rounded as ECMA-402 rounds them', () => {
  fc.assert(
    fc.property(fc.nat(4_000_000_000), fc.constantFrom(1, 2), (whole, places) => {
      const denominator = 10 ** places;
      const text = `${Math.floor(whole / denominator)}.${String(whole % denominator).padStart(places, '0')}`;
      expect(String(halfUp(whole, denominator))).toBe(rounds.format(text as unknown as number));
    }),
    { numRuns: 2000 },
  );
});

test('minutes are rounded as exact whole-number arithmetic rounds them', () => {
  fc.assert(
    fc.property(fc.nat(200_000), fc.nat(10_000_000), (minutes, perHour) => {
      const exact = (2n * BigInt(minutes) * BigInt(perHour) + 60n) / 120n;
      expect(halfUp(minutes * perHour, 60)).toBe(Number(exact));
    }),
    { numRuns: 2000 },
  );
});

// ISO 4217, minor units (list one, from memory).
test.each([
  ['USD', 100],
  ['JPY', 1],
  ['KWD', 1000],
])('%s counts %i of its smallest unit', (currency, count) => {
  expect(minorPerUnit(currency)).toBe(count);
});

test('what is no code of a currency is none', () => {
  expect(minorPerUnit('dollars')).toBeNull();
  expect(minorPerUnit('usd')).toBeNull();
});
