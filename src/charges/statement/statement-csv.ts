import { type Cell, csvText } from '../../platform/csv/csv-text.js';
import type { StatementView } from './statement.dto.js';

const HEADINGS = [
  ...['entered on', 'of day', 'kind', 'aircraft', 'departed', 'arrived', 'line', 'quantity', 'unit'],
  ...[
    'rate',
    'exact',
    'amount',
    'entry amount',
    'balance',
    'currency',
    'words',
    'flight',
    'rate id',
    'entry id',
    'reverses',
  ],
] as const;

type Row = Partial<Record<(typeof HEADINGS)[number], Cell>>;

/** A statement as a table: a row for each line of a charge, so that each amount can be followed to its flight and its rate. */
export function statementCsv(of: StatementView): string {
  const money = (minor: number | null): Cell => (minor === null ? null : minor / of.minorPerUnit);
  const rows: Row[] = [
    {
      'entered on': of.from,
      kind: 'opening balance',
      balance: money(of.openingMinor),
      currency: of.currency,
    },
    ...of.entries.flatMap((entry): Row[] => {
      const row: Row = {
        ...{ 'entered on': entry.postedOn, 'of day': entry.ofDay, kind: entry.kind },
        ...{ aircraft: entry.registration, departed: entry.departedAt, arrived: entry.arrivedAt },
        ...{
          'entry amount': money(entry.amountMinor),
          balance: money(entry.balanceMinor),
          currency: entry.currency,
        },
        ...{ words: entry.words, flight: entry.bookingId, 'entry id': entry.id, reverses: entry.reverses },
      };
      if (entry.lines.length === 0) return [{ ...row, amount: money(entry.amountMinor) }];
      return entry.lines.map((line, index) => ({
        ...row,
        // The sums stand once, or adding up a column would count them twice.
        ...(index > 0 ? { 'entry amount': null, balance: null } : {}),
        ...{ line: line.kind, quantity: line.quantity, unit: line.unit, rate: money(line.perUnitMinor) },
        ...{ exact: money(line.exactMinor), amount: money(line.amountMinor), 'rate id': line.rateId },
      }));
    }),
    { 'entered on': of.to, kind: 'closing balance', balance: money(of.closingMinor), currency: of.currency },
  ];
  return csvText(
    HEADINGS,
    rows.map((row) => HEADINGS.map((heading) => row[heading])),
  );
}
