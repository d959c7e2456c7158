import type { LocalDate } from '../../../calendar/dates.js';
import type { ItemFact } from '../../../facts/aircraft.js';

/** Fields of an item once it is signed again. */
export function signedFields(act: string, on: LocalDate, tenths: number | null): Partial<ItemFact> {
  return {
    lastDoneOn: on,
    lastDoneTenths: tenths,
    lastDueTenths: null,
    complianceId: `planned:${act}`,
    fixedDueOn: null,
    fixedDueTenths: null,
  };
}
