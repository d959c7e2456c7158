/** How many of the smallest unit make one of a currency, by its ISO 4217 code (ECMA-402 knows them); null for what is no such code. */
export function minorPerUnit(currency: string): number | null {
  if (!/^[A-Z]{3}$/.test(currency)) return null;
  const { maximumFractionDigits } = new Intl.NumberFormat('en', {
    ...{ style: 'currency', currency },
  }).resolvedOptions();
  return 10 ** (maximumFractionDigits ?? 2);
}
