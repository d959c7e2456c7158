import type { Policy } from '../../facts/sheet.js';
import { CLUB_PARAMETERS } from './index.js';

/**
 * The policy a new club starts with: the first declared value of each club parameter. It is written to the club's own
 * dated rows when the club is made, and from then on only those rows count.
 */
export function startingPolicy(): Policy {
  return {
    values: CLUB_PARAMETERS.map(({ id, values }) => ({
      id,
      from: values[0]!.from ?? '2000-01-01',
      value: values[0]!.value,
      reference: values[0]!.reference,
    })),
  };
}
