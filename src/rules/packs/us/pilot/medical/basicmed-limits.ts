/** The flight's side of BasicMed: aircraft, passengers, altitude, speed and hire (14 CFR 61.113(i)). */
import type { Parameters } from '../../../../engine/parameters.js';
import type { FactView } from '../../../../engine/rule.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import {
  FLY_WITHOUT_HIRE,
  stayAtOrBelow,
  stayAtOrUnder,
  takeFewerPassengers,
} from '../../../common/shared/flight-changes.js';
import { NO_CURE, type Shortfall } from '../../../common/people/shortfalls.js';

/** Parameters that whoever asks for the limits must declare. */
export const LIMIT_PARAMETERS = [
  'us.basicmed.occupants',
  'us.basicmed.passengers',
  'us.basicmed.takeoff-lb',
  'us.basicmed.altitude-ft',
  'us.basicmed.speed-kias',
] as const;

/** What exceeds a limit, what is not known, and what must hold where the member did not say. */
export function basicMedLimits(
  f: Pick<FactView, 'flight' | 'crew'>,
  type: AircraftType,
  p: Parameters,
  transportRotorcraftExcluded: boolean,
): { shortfalls: Shortfall[]; missing: string[]; conditions: string[] } {
  const { flight, crew } = f;
  const shortfalls: Shortfall[] = [];
  const missing: string[] = [];
  const conditions: string[] = [];
  const occupants = p.number('us.basicmed.occupants');
  const passengers = p.number('us.basicmed.passengers');
  const takeoffLb = p.number('us.basicmed.takeoff-lb');
  const altitudeFt = p.number('us.basicmed.altitude-ft');
  const speedKias = p.number('us.basicmed.speed-kias');

  if (type.occupantsCertificated > occupants) {
    const what = `the aircraft is certificated for ${type.occupantsCertificated} occupants, more than ${occupants}`;
    shortfalls.push({ what, cures: NO_CURE });
  }
  if (type.maxTakeoffLb === null) missing.push('the aircraft’s maximum take-off weight');
  else if (type.maxTakeoffLb > takeoffLb) {
    const what = `the aircraft’s maximum take-off weight is ${type.maxTakeoffLb} lb, more than ${takeoffLb} lb`;
    shortfalls.push({ what, cures: NO_CURE });
  }
  if (transportRotorcraftExcluded && type.transportCategory && type.category === 'rotorcraft')
    shortfalls.push({ what: 'the aircraft is a transport-category rotorcraft', cures: NO_CURE });
  if (crew.passengers > passengers) {
    const what = `${crew.passengers} passengers are planned, more than ${passengers}`;
    shortfalls.push({ what, cures: () => [takeFewerPassengers(flight, crew.passengers - passengers)] });
  }
  if (flight.forHire)
    shortfalls.push({ what: 'the flight is for compensation or hire', cures: () => [FLY_WITHOUT_HIRE] });
  if (flight.maxAltitudeFtMsl === null)
    conditions.push(`Stay at or below ${altitudeFt} ft above mean sea level (BasicMed).`);
  else if (flight.maxAltitudeFtMsl > altitudeFt) {
    const what = `${flight.maxAltitudeFtMsl} ft is planned, above ${altitudeFt} ft`;
    shortfalls.push({ what, cures: () => [stayAtOrBelow(altitudeFt)] });
  }
  if (flight.maxSpeedKias === null)
    conditions.push(`Keep to ${speedKias} knots indicated or less (BasicMed).`);
  else if (flight.maxSpeedKias > speedKias) {
    const what = `${flight.maxSpeedKias} knots are planned, more than ${speedKias}`;
    shortfalls.push({ what, cures: () => [stayAtOrUnder(speedKias)] });
  }
  return { shortfalls, missing, conditions };
}
