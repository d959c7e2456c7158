import type { ChargeLine, Entry, MoneyUnit } from './types.js';
import { moneySays } from './money.js';

const LINE: Record<ChargeLine['kind'], string> = {
  aircraft: 'Aircraft',
  'days-away': 'To the least of days away',
  fuel: "The club's fuel",
  'fuel-back': 'Fuel bought, paid back',
  instruction: 'Instruction',
};

export const KIND: Record<Entry['kind'], string> = {
  flight: 'Flight',
  receipt: 'Received',
  adjustment: 'Adjustment',
  reversal: 'Reversed',
};

/** 'Aircraft: 1.3 h at $145.05 = $188.565, rounded to $188.57' */
export function lineSays(line: ChargeLine, unit: MoneyUnit): string {
  const amount = moneySays(line.amountMinor, unit);
  const quantity = `${LINE[line.kind]}: ${line.quantity} ${line.unit}`;
  if (line.perUnitMinor === null) return `${quantity}, as paid: ${amount}`;
  const per = line.unit === 'min' ? ' an hour' : '';
  const exact = moneySays(line.exactMinor, unit, true);
  const rounded = line.exactMinor === line.amountMinor ? '' : `, rounded to ${amount}`;
  return `${quantity} at ${moneySays(line.perUnitMinor, unit)}${per} = ${exact}${rounded}`;
}

/** How an account stands, in words. */
export function standsAt(minor: number, unit: MoneyUnit): string {
  if (minor === 0) return 'Nothing is owed';
  return minor > 0 ? `${moneySays(minor, unit)} owed` : `${moneySays(-minor, unit)} in credit`;
}
