/** What a sport pilot may fly: light-sport aircraft until 2025-10-22, the limits of 14 CFR 61.316 since. */
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { need } from '../../../../engine/unknown.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import type { EndorsementFact } from '../../../../facts/person.js';
import { endorsementFor, getEndorsement } from '../../../common/people/endorsements.js';
import { NO_CURE, type Shortfall } from '../../../common/people/shortfalls.js';
import type { Found } from './limits.js';

/** Stall speed, seats and cabin: under both laws, with the numbers of the day. */
function both(type: AircraftType, p: Parameters): Shortfall[] {
  const kind = type.category === 'airplane' ? 'airplane' : 'other';
  const wrong: string[] = [];
  const most = p.number(`us.sport.${kind}-vs1-kcas`);
  const vs1 = need(type.vs1Kcas, 'aircraft.type', 'the stall speed VS1 of the aircraft is not on record');
  if (vs1 > most) wrong.push(`the stall speed VS1 is ${vs1} knots, more than ${most}`);
  const seats = p.number(`us.sport.${kind}-seats`);
  if (type.seats > seats) wrong.push(`the aircraft has ${type.seats} seats, more than ${seats}`);
  if (type.pressurised) wrong.push('the cabin is pressurised');
  return wrong.map((what) => ({ what, cures: NO_CURE }));
}

/** 14 CFR 61.316(a), (b). Controllable propeller and retractable gear are open with their endorsements (61.331). */
export function sportAircraft(
  type: AircraftType,
  endorsements: readonly EndorsementFact[],
  moment: Moment,
  p: Parameters,
): Found {
  const shortfalls = both(type, p);
  const trained = (kind: 'sport-controllable-propeller' | 'sport-retractable-gear', what: string) => {
    if (endorsementFor(endorsements, moment, { kind })) return;
    const title = `Train with an instructor on ${what} and be endorsed.`;
    shortfalls.push({
      what: `there is no endorsement for ${what}`,
      cures: () => getEndorsement(moment, { kind }, title),
    });
  };
  if (type.controllablePropeller) trained('sport-controllable-propeller', 'a controllable-pitch propeller');
  if (type.retractableGear && type.category !== 'glider')
    trained('sport-retractable-gear', 'retractable landing gear');
  return { shortfalls, conditions: [] };
}

/** 14 CFR 1.1 as it stood: the light-sport aircraft. */
export function lightSportAircraft(type: AircraftType, p: Parameters): Found {
  const shortfalls = both(type, p);
  const water = type.class.endsWith('-sea');
  const most = p.number(water ? 'us.sport.takeoff-water-lb' : 'us.sport.takeoff-lb');
  const lb = need(type.maxTakeoffLb, 'aircraft.type', 'the maximum take-off weight is not on record');
  const wrong: string[] = [];
  if (lb > most) wrong.push(`the maximum take-off weight is ${lb} lb, more than ${most}`);
  if (type.engines > 1) wrong.push('the aircraft has more than one engine');
  if (type.turbine) wrong.push('the engine is a turbine');
  if (type.controllablePropeller) wrong.push('the propeller is controllable in flight');
  if (type.retractableGear && !water && type.category !== 'glider') wrong.push('the landing gear retracts');
  shortfalls.push(...wrong.map((what) => ({ what, cures: NO_CURE })));
  const speed = p.number('us.sport.level-speed-kcas');
  return {
    shortfalls,
    conditions: [
      `Make sure that the aircraft flies no faster than ${speed} knots in level flight at full power.`,
    ],
  };
}
