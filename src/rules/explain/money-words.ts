/** What an amount is counted in. */
export interface MoneyUnit {
  /** How many of the smallest make one: 100 cents. */
  minorPerUnit: number;
  /** ISO 4217 code. */
  currency: string;
}

/** 'USD 123.40'. Whole numbers all the way: no amount is ever a fraction of the smallest unit. */
export function moneyWords(minor: number, { minorPerUnit, currency }: MoneyUnit): string {
  const amount = Math.abs(minor);
  const rest = amount % minorPerUnit;
  const digits = String(minorPerUnit).length - 1;
  const fraction = digits === 0 ? '' : `.${String(rest).padStart(digits, '0')}`;
  return `${minor < 0 ? '-' : ''}${currency} ${(amount - rest) / minorPerUnit}${fraction}`;
}
