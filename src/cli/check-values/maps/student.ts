/** What students may do alone (14 CFR 61.87, 61.89, 61.93). */
import { addDays, type EndorsementFact, type EndorsementKind } from '../../../rules/index.js';
import { AIRCRAFT_TYPE, CERTIFICATE } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { endorsement, flagOf, NIGHT, NOON, ON, withLight, withVisibility } from './pilot-flights.js';
import { AWAY_CODE, fieldAt } from './route.js';

const SOLO = 'student.solo';
const SOLO_AWAY = 'student.solo.cross_country';
const LOCAL_NM = 25;

const student: Mapping = {
  rules: [SOLO, SOLO_AWAY],
  map(facts) {
    const asOf = facts.date('as_of') ?? ON;
    const night = facts.flag('night') ?? false;
    const scene = new Scene(asOf, night ? NIGHT : NOON);
    withLight(facts, scene, asOf);
    const model = facts.text('model') ?? AIRCRAFT_TYPE.makeModel;
    const endorsed = facts.text('endorsed_model') ?? model;
    scene.aircraft({ makeModel: model });
    scene.set('member.certificates', [{ ...CERTIFICATE, level: 'student', ratings: [] }]);
    const miles = facts.number('distance_nm') ?? 0;
    const lands = facts.oneOf(['lands_elsewhere', 'landing_elsewhere'], (key) => facts.flag(key));
    // The request names landings, so going farther than local without one is laid as a landing there (strict).
    if (lands === true || miles > LOCAL_NM) scene.flight({ route: fieldAt(scene, miles) });
    scene.passengers(facts.number('passengers') ?? 0);
    scene.flight({ forHire: flagOf(facts, 'compensation', 'for_hire') ?? false });
    facts.remark('surface_reference', true);
    withVisibility(scene, facts.number('visibility_sm'));
    scene.set('member.endorsements', studentEndorsements(facts, asOf, endorsed));
    return { allowed: () => scene.allowsAll(SOLO, SOLO_AWAY), solo_allowed: () => scene.allows(SOLO) };
  },
};

function studentEndorsements(facts: NeutralFacts, asOf: string, makeModel: string): EndorsementFact[] {
  const recent = addDays(asOf, -10);
  const given: EndorsementFact[] = [];
  /** A date, or true for one given lately. */
  const take = (kind: EndorsementKind, keys: string[], fields: Partial<EndorsementFact> = {}): void => {
    const on = facts.oneOf(keys, (key) =>
      facts.isFlag(key) ? (facts.flag(key) ? recent : undefined) : facts.date(key),
    );
    if (on !== undefined) given.push(endorsement(kind, on, { makeModel, ...fields }));
  };
  take('solo', ['solo_endorsement']);
  take('solo-night', ['night_endorsement', 'night_solo_endorsement']);
  take('solo-other-airport-25nm', ['other_airport_endorsement'], { airfields: [AWAY_CODE] });
  take('solo-repeated-route-50nm', ['repeated_route_endorsement'], { airfields: [AWAY_CODE] });
  // 61.93(b)(2) asks for the cross-country training as well, so whoever has the one is taken to have the other.
  if (given.some((one) => one.kind === 'solo-repeated-route-50nm'))
    given.push(endorsement('solo-cross-country-training', recent, { makeModel }));
  take('solo-cross-country-training', [
    'cross_country_training_endorsement',
    'xc_training_endorsement',
    'training_endorsement',
  ]);
  take('solo-cross-country-flight', [
    'cross_country_flight_endorsement',
    'planning_endorsement',
    'planning_review',
    'flight_planning_endorsement',
    'xc_flight_endorsement',
  ]);
  const both = flagOf(facts, 'cross_country_endorsement', 'xc_endorsement', 'solo_cross_country_endorsement');
  if (both === true) {
    given.push(endorsement('solo-cross-country-training', recent, { makeModel }));
    given.push(endorsement('solo-cross-country-flight', recent, { makeModel }));
  }
  return given;
}

export const STUDENT_MAPS: readonly Mapping[] = [student];
