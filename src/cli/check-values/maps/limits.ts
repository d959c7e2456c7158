/** What recreational and sport pilots may do (14 CFR 61.101, 61.315 to 61.329). */
import {
  addDays,
  type AirspaceClass,
  type EndorsementFact,
  type EndorsementKind,
} from '../../../rules/index.js';
import { BASIC_MED, CERTIFICATE } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import {
  endorsement,
  flagOf,
  NIGHT,
  NOON,
  numberOf,
  ON,
  withLight,
  withVisibility,
} from './pilot-flights.js';
import { LEVEL } from './pilot-levels.js';
import { AWAY_CODE, fieldAt } from './route.js';
import { CATEGORY, CLASS, USUAL_CLASS } from './words.js';

const AIRSPACE: Record<string, AirspaceClass> = { A: 'A', B: 'B', C: 'C', D: 'D', E: 'E', G: 'G' };

/** The aircraft and the flight, as recreational and sport entries give them. */
function flightAndAircraft(facts: NeutralFacts, scene: Scene): void {
  const category = facts.choice('category', CATEGORY);
  const seats = numberOf(facts, 'seats', 'occupant_seats');
  scene.aircraft({
    category,
    class: facts.choice('class', CLASS) ?? (category && USUAL_CLASS[category]),
    powerPerEngineHp: facts.number('engine_hp'),
    engines: facts.number('engines'),
    seats,
    occupantsCertificated: seats,
    vs1Kcas: facts.number('vs1_kcas'),
    maxTakeoffLb: facts.number('max_takeoff_lb'),
    retractableGear: flagOf(facts, 'retractable', 'retractable_gear'),
    controllablePropeller: flagOf(
      facts,
      'controllable_pitch_prop',
      'controllable_prop',
      'controllable_propeller',
    ),
  });
  scene.passengers(facts.number('passengers') ?? 0);
  const airspace = facts.choice('airspace', AIRSPACE);
  const altitude = numberOf(facts, 'altitude_msl', 'altitude_ft_msl');
  const above = numberOf(facts, 'altitude_agl', 'altitude_ft_agl');
  scene.flight({
    forHire: flagOf(facts, 'compensation', 'for_hire', 'business') ?? false,
    ...(airspace === undefined ? {} : { airspace: [airspace] }),
    ...(altitude === undefined ? {} : { maxAltitudeFtMsl: altitude }),
  });
  if (above !== undefined && altitude !== undefined) {
    // The ground under the flight lies where both heights agree.
    const elevationFt = altitude - above;
    scene.flight({ route: scene.sheet.flight.route.map((field) => ({ ...field, elevationFt })) });
  } else if (above !== undefined) {
    scene.flight({ maxAltitudeFtMsl: scene.sheet.flight.route[0]!.elevationFt + above });
  }
  const miles = facts.number('distance_nm');
  if (miles !== undefined) scene.flight({ route: fieldAt(scene, miles) });
  withVisibility(scene, facts.number('visibility_sm'));
}

const RECREATIONAL = 'recreational.limits';

const recreational: Mapping = {
  rules: [RECREATIONAL],
  map(facts) {
    const asOf = facts.date('as_of') ?? ON;
    const scene = new Scene(asOf, (facts.flag('night') ?? false) ? NIGHT : NOON);
    withLight(facts, scene, asOf);
    const level = facts.choice('certificate', LEVEL) ?? 'recreational';
    scene.set('member.certificates', [{ ...CERTIFICATE, level }]);
    flightAndAircraft(facts, scene);
    const given: [EndorsementKind, boolean | undefined][] = [
      // Every recreational flight needs it, so an entry that is silent takes it for granted.
      ['recreational-50nm', flagOf(facts, 'endorsed_50nm') ?? true],
      [
        'recreational-cross-country',
        flagOf(facts, 'endorsed_cross_country', 'cross_country_endorsement', 'endorsed_beyond_50nm'),
      ],
      [
        'recreational-airspace',
        flagOf(facts, 'endorsed_airspace', 'airspace_endorsement', 'trained_airspace'),
      ],
    ];
    scene.set(
      'member.endorsements',
      given
        .filter(([, held]) => held === true)
        .map(([kind]) => endorsement(kind, addDays(asOf, -30), airfieldsOf(kind))),
    );
    return { allowed: () => scene.allows(RECREATIONAL) };
  },
};

/** Endorsements for one airfield name it. */
const airfieldsOf = (kind: EndorsementKind): Partial<EndorsementFact> =>
  kind === 'recreational-50nm' ? { airfields: ['XQHB', AWAY_CODE] } : {};

const SPORT = 'sport.limits';

const sport: Mapping = {
  rules: [SPORT],
  map(facts) {
    const asOf = facts.date('as_of') ?? ON;
    const scene = new Scene(asOf, (facts.flag('night') ?? false) ? NIGHT : NOON);
    withLight(facts, scene, asOf);
    const level = facts.choice('certificate', LEVEL) ?? 'sport';
    // Small enough for the limits, unless the entry says otherwise.
    scene.aircraft({ seats: 2, occupantsCertificated: 2, vs1Kcas: 45, maxTakeoffLb: 1320 });
    scene.set('member.certificates', [{ ...CERTIFICATE, level }]);
    flightAndAircraft(facts, scene);
    const given: [EndorsementKind, boolean | undefined][] = [
      ['sport-night', facts.flag('night_endorsement')],
      [
        'sport-controllable-propeller',
        flagOf(facts, 'controllable_prop_endorsement', 'controllable_propeller_endorsement'),
      ],
      ['sport-retractable-gear', flagOf(facts, 'retractable_endorsement', 'retractable_gear_endorsement')],
    ];
    scene.set(
      'member.endorsements',
      given.filter(([, held]) => held === true).map(([kind]) => endorsement(kind, addDays(asOf, -30))),
    );
    const paper = facts.choice('medical', {
      drivers_license_only: 'licence',
      drivers_license: 'licence',
      medical_certificate: 'certificate',
      medical: 'certificate',
      basicmed: 'basicmed',
      none: 'none',
    } as const);
    const denied = facts.flag('last_application_denied') ?? false;
    if (paper !== undefined && paper !== 'certificate') scene.set('member.medicals', []);
    if (paper !== undefined && paper !== 'none') {
      const licence = { ...BASIC_MED, licenceValidThrough: '2099-12-31', lastApplicationDenied: denied };
      const taken = { examOn: addDays(asOf, -100), courseOn: addDays(asOf, -100) };
      scene.set('member.basicMed', [
        { ...licence, ...(paper === 'basicmed' ? taken : { examOn: null, courseOn: null }) },
      ]);
    }
    return { allowed: () => scene.allows(SPORT) };
  },
};

export const LIMIT_MAPS: readonly Mapping[] = [recreational, sport];
