/** An aircraft's insurance terms, a line each; who is named in them stays with the officers. */
import type { InsuranceFact, PilotMinimums } from '../../facts/insurance.js';
import { counted } from '../words.js';
import { hours, parts, type Show } from './shown.js';

export const showInsurance: Show<InsuranceFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.from,
    says: parts(
      `${one.source}: ${one.from} through ${one.through}`,
      one.namedPilotIds.length > 0 && counted(one.namedPilotIds.length, 'named pilot'),
      one.minimums === null ? 'named pilots only' : minimumsSay(one.minimums),
    ),
  }));

const least = (tenths: number | null, where: string): string | false =>
  tenths !== null && `${hours(tenths)} ${where}`;

function minimumsSay(of: PilotMinimums): string {
  const asked = parts(
    of.leastLevel !== null && `${of.leastLevel} pilot certificate`,
    of.instrumentRating && 'instrument rating',
    of.leastAgeYears !== null && `aged ${of.leastAgeYears} or more`,
    of.mostAgeYears !== null && `aged ${of.mostAgeYears} or less`,
    least(of.totalTenths, 'in all'),
    least(of.classTenths, 'in the category and class'),
    least(of.retractableTenths, 'with retractable gear'),
    least(of.tailwheelTenths, 'in tailwheel aircraft'),
    least(of.modelTenths, 'in the make and model'),
    least(of.recentTenths, `in ${of.recentDays} days`),
    of.checkoutInModel && 'checkout in the model',
    least(of.dualInModelTenths, 'of instruction in the model'),
    of.reviewMonths !== null && `review within ${of.reviewMonths} months`,
  );
  return asked === '' ? 'nothing asked of other pilots' : `other pilots: ${asked}`;
}
