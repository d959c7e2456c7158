/** When no emergency locator transmitter is needed: the exceptions of 14 CFR 91.207(a), (e) and (f). */
import { addDays } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { FactView } from '../../../../engine/rule.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import type { AirfieldFact } from '../../../../facts/flight.js';
import { farthestFromOrigin } from '../../../../air/distance.js';
import { isPlace } from '../../../../sky/sun.js';
import { essentialCrewOnly } from '../../../common/permits/permit-flight.js';

/** Why no transmitter is needed, and what must hold for that. */
export interface EltException {
  because: string;
  conditions: string[];
}

type Reads = FactView<'aircraft.type' | 'aircraft.equipment' | 'aircraft.squawks'>;

/** Facts and parameters a rule declares to ask about the exceptions. */
export const ELT_READS = ['aircraft.type', 'aircraft.equipment', 'aircraft.squawks'] as const;
export const ELT_PARAMETERS = ['us.elt.training-radius-nm', 'us.elt.removed-days'] as const;

/** Are all airfields of the route within so many nautical miles of the first? False where a place is not known. */
export function routeWithin(route: readonly AirfieldFact[], radiusNm: number): boolean {
  if (!route.every(isPlace)) return false;
  const farthest = farthestFromOrigin(route);
  return farthest !== null && farthest.nm <= radiusNm;
}

/** Why aircraft of this type need none whatever the flight (91.207(a), (f)(9)), or null. */
export function neverNeedsElt(type: AircraftType): string | null {
  if (type.category !== 'airplane') return 'only airplanes need one';
  return type.occupantsCertificated === 1 ? 'the airplane carries one person only' : null;
}

/** The exception this flight may use, or null. Asked only when the transmitter would otherwise ground it. */
export function eltException(f: Reads, moment: Moment, p: Parameters): EltException | null {
  const type = f.get('aircraft.type');
  const never = neverNeedsElt(type);
  if (never !== null) return { because: never, conditions: [] };
  if (f.flight.purpose === 'ferry-to-inspection' && essentialCrewOnly(f.flight)) {
    return {
      because: 'it is ferried to where the transmitter can be put right',
      conditions: [
        'Make sure that the ELT cannot be put right where the airplane stands, and take nobody but required crew.',
      ],
    };
  }
  const radiusNm = p.number('us.elt.training-radius-nm');
  const home = f.flight.route[0];
  if (f.crew.instruction && home && routeWithin(f.flight.route, radiusNm)) {
    return {
      because: `training within ${radiusNm} NM of ${home.name}`,
      conditions: [
        `Train no farther than ${radiusNm} NM from ${home.name} for the whole flight, as the ELT is not good.`,
      ],
    };
  }
  return removedForRepair(f, moment, p.number('us.elt.removed-days'));
}

/** 91.207(f)(10): away for inspection or repair, placarded and entered in the records. */
function removedForRepair(f: Reads, moment: Moment, days: number): EltException | null {
  const squawks = f.get('aircraft.squawks');
  for (const elt of f.get('aircraft.equipment')) {
    if (elt.kind !== 'elt' || elt.removedOn === null) continue;
    const recorded = squawks.some(
      ({ equipmentId, state, deferral }) =>
        equipmentId === elt.id &&
        state === 'deferred' &&
        deferral !== null &&
        moment.startsOnOrAfter(deferral.on) &&
        deferral.removedOrDeactivated === true &&
        deferral.placarded === true &&
        deferral.recorded === true,
    );
    const through = addDays(elt.removedOn, days);
    if (recorded && moment.startsOnOrAfter(elt.removedOn) && moment.endsOnOrBefore(through)) {
      return {
        because: `it is away for repair since ${elt.removedOn}, for ${days} days at most`,
        conditions: [
          `Make sure that the placard "ELT not installed" is in view and the entry in the records stands (through ${through}).`,
        ],
      };
    }
  }
  return null;
}
