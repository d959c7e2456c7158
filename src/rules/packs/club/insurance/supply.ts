/** One act that supplies everything an insurer asks for besides, where one can. */
import type { Moment } from '../../../engine/moment.js';
import type { Effect, Remedy } from '../../../engine/remedy.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import { hours } from '../../common/items/meter.js';
import { canStillAct } from '../../common/people/plans.js';
import { plannedLandings } from '../../planned-flight.js';
import { signOffRemedy } from '../checks/sign-offs.js';
import type { Lack } from './minimums.js';

/** What one flight with an instructor would have to give. */
interface Wanted {
  tenths: number;
  checkout: boolean;
  check: boolean;
}

/**
 * A flight with an instructor that gives all that is missing; nothing where something cannot be given by one.
 *
 * @param of.mostTenths the longest flight of practice anybody would plan: nobody makes up a hundred hours for one flight.
 */
export function supplyAll(
  lacks: readonly Lack[],
  of: { type: AircraftType; moment: Moment; mostTenths: number },
): Remedy[] {
  const { type, moment, mostTenths } = of;
  const supplies = lacks.map(({ supply }) => supply);
  const missing = supplies.map((one) => (one !== null && typeof one === 'object' ? one.dualTenths : 0));
  const wanted: Wanted = {
    tenths: Math.max(0, ...missing),
    checkout: supplies.includes('checkout'),
    check: supplies.includes('check'),
  };
  if (supplies.includes(null) || wanted.tenths > mostTenths || !canStillAct(moment)) return [];
  const act = actOf(wanted);
  const title = titleOf(type, wanted);
  const signed = (kind: 'model' | 'annual-check'): Effect[] =>
    signOffRemedy({
      ...{ act: `${act}-${kind}`, title, moment },
      fields: { kind, modelId: kind === 'model' ? type.modelId : null, aircraftId: null },
    }).effects;
  const effects: Effect[] = [
    ...(wanted.tenths > 0 ? [dualFlight(type, wanted.tenths, moment, act)] : []),
    ...(wanted.checkout ? signed('model') : []),
    ...(wanted.check ? signed('annual-check') : []),
  ];
  return [{ act, title, by: 'instructor', effects }];
}

function actOf({ tenths, checkout }: Wanted): string {
  if (tenths > 0) return 'fly-missing-with-instructor';
  return checkout ? 'fly-checkout' : 'fly-club-check';
}

function titleOf({ makeModel }: AircraftType, { tenths, checkout, check }: Wanted): string {
  const signs = [...(checkout ? ['the checkout'] : []), ...(check ? ['the club check'] : [])].join(' and ');
  const time = tenths > 0 ? `${hours(tenths)} h in ` : '';
  return `Fly ${time}the ${makeModel} with an instructor${signs === '' ? '.' : `, who signs ${signs}.`}`;
}

const dualFlight = (type: AircraftType, tenths: number, moment: Moment, act: string): Effect => ({
  op: 'append',
  fact: 'pic.log',
  value: {
    ...plannedLandings(type, 1, false, moment),
    id: `planned:${act}`,
    role: 'dual-received',
    totalTenths: tenths,
  },
});
