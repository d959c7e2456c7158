import { LOCALE } from '../parts/locale.js';
import type { MoneyUnit } from './types.js';

/** '$123.45', as the reader's English writes it; `exact` keeps what is smaller than the smallest coin. */
export function moneySays(minor: number, { currency, minorPerUnit }: MoneyUnit, exact = false): string {
  const digits = String(minorPerUnit).length - 1;
  return new Intl.NumberFormat(LOCALE, {
    ...{ style: 'currency', currency, minimumFractionDigits: digits },
    maximumFractionDigits: exact ? digits + 3 : digits,
  }).format(minor / minorPerUnit);
}

/** An amount as it is typed, in the smallest unit; null: no amount, or finer than the currency. */
export function minorOf(text: string, { minorPerUnit }: MoneyUnit): number | null {
  const typed = /^\s*(-?)(\d{1,7})(?:[.,](\d{1,4}))?\s*$/.exec(text);
  if (!typed) return null;
  const digits = String(minorPerUnit).length - 1;
  const [, sign, whole, fraction = ''] = typed;
  if (fraction.length > digits) return null;
  const minor = Number(whole) * minorPerUnit + Number(fraction.padEnd(digits, '0') || 0);
  return sign === '-' ? 0 - minor : minor;
}
