/**
 * What each kind of operation needs: 14 CFR 91.205(b), (c), (d), (e) and 91.207 as data. `when` says whether a line
 * applies to this aircraft on this flight; it is asked only when the equipment is wanting.
 */
import { grouped } from '../../../../explain/words.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { AircraftType, EquipmentKind } from '../../../../facts/aircraft.js';
import type { FlightFacts } from '../../../../facts/flight.js';
import type { NightKind } from '../../../../sky/nights.js';
import type { Panel } from './panel.js';

/** The lists; night and IFR come on top of day. */
export type EquipmentList = 'day' | 'night' | 'ifr';

/** What a line may look at. */
export interface RequirementContext {
  type: AircraftType;
  flight: Omit<FlightFacts, 'departs' | 'arrives'>;
  panel: Panel;
  p: Parameters;
  /** Exception of 14 CFR 91.207 this flight may use, or null. */
  eltException(): { conditions: string[] } | null;
}

/** Applies, does not, applies unless the conditions hold, or cannot be told. */
export type Applies = 'yes' | 'no' | { unless: string[] } | { unknown: string };

/** One line of a list. */
export interface Requirement {
  list: EquipmentList;
  /** What is wanted, in words: 'an airspeed indicator'. */
  words: string;
  /** Any of these kinds serves. */
  anyOf: readonly EquipmentKind[];
  /**
   * One that works is enough unless the law wants one for each engine, tank or occupant: then every one fitted must
   * work (for engines, on an aircraft with more than one).
   */
  each?: 'engine' | 'tank' | 'occupant';
  cite: string;
  /** Which night asks for it, on the night list. */
  night: NightKind;
  when(of: RequirementContext): Applies;
}

const always = (): Applies => 'yes';
const if_ = (applies: boolean): Applies => (applies ? 'yes' : 'no');

function line(
  list: EquipmentList,
  cite: string,
  words: string,
  anyOf: readonly EquipmentKind[],
  more: Partial<Pick<Requirement, 'each' | 'when' | 'night'>> = {},
): Requirement {
  return {
    list,
    words,
    anyOf,
    cite: `14 CFR ${cite}`,
    night: 'civil',
    when: always,
    ...more,
  };
}

/** For hire over water beyond gliding distance; the member may not have said. */
function overWater({ flight }: RequirementContext): Applies {
  if (!flight.forHire || flight.overWaterBeyondGlide === false) return 'no';
  if (flight.overWaterBeyondGlide === true) return 'yes';
  return { unless: ['Stay within power-off gliding distance of the shore.'] };
}

const DAY: readonly Requirement[] = [
  line('day', '91.205(b)(1)', 'an airspeed indicator', ['airspeed-indicator']),
  line('day', '91.205(b)(2)', 'an altimeter', ['altimeter', 'sensitive-altimeter']),
  line('day', '91.205(b)(3)', 'a magnetic direction indicator', ['magnetic-direction']),
  line('day', '91.205(b)(4)', 'a tachometer for each engine', ['tachometer'], { each: 'engine' }),
  line('day', '91.205(b)(5)', 'an oil pressure gauge for each engine', ['oil-pressure'], { each: 'engine' }),
  line(
    'day',
    '91.205(b)(6)',
    'a coolant temperature gauge for each liquid-cooled engine',
    ['coolant-temperature'],
    {
      each: 'engine',
      // An aircraft that has such a gauge has such an engine.
      when: ({ panel }) => if_(panel.fitted.some((one) => one.equipment.kind === 'coolant-temperature')),
    },
  ),
  line(
    'day',
    '91.205(b)(6), (7)',
    'an oil or coolant temperature gauge for each engine',
    ['oil-temperature', 'coolant-temperature'],
    { each: 'engine' },
  ),
  line('day', '91.205(b)(8)', 'a manifold pressure gauge for each altitude engine', ['manifold-pressure'], {
    each: 'engine',
    when: ({ type }) =>
      type.altitudeEngine === null
        ? { unknown: 'whether the aircraft has an altitude engine is not on record' }
        : if_(type.altitudeEngine),
  }),
  line('day', '91.205(b)(9)', 'a fuel gauge for each tank', ['fuel-quantity'], { each: 'tank' }),
  line('day', '91.205(b)(10)', 'a landing gear position indicator', ['gear-position'], {
    when: ({ type }) => if_(type.retractableGear),
  }),
  line('day', '91.205(b)(11)', 'anti-collision lights', ['anti-collision-lights'], {
    when: ({ type }) => if_(type.certificatedAfter19960311),
  }),
  line('day', '91.205(b)(12)', 'flotation gear for each occupant', ['flotation-gear'], { when: overWater }),
  line('day', '91.205(b)(12)', 'a pyrotechnic signalling device', ['pyrotechnic-signal'], {
    when: overWater,
  }),
  line('day', '91.205(b)(13)', 'a safety belt for each occupant', ['safety-belts'], { each: 'occupant' }),
  line('day', '91.205(b)(14)', 'shoulder harnesses for the front seats', ['shoulder-harness'], {
    when: ({ type, p }) => {
      if (type.category !== 'airplane') return 'no';
      if (type.manufacturedOn === null)
        return { unknown: 'when the airplane was made is not on record, so it may need shoulder harnesses' };
      return if_(type.manufacturedOn > p.text('us.equipment.harness-after'));
    },
  }),
  line('day', '91.207(a)', 'an emergency locator transmitter', ['elt'], {
    when: ({ eltException }) => {
      const exception = eltException();
      return exception ? { unless: exception.conditions } : 'yes';
    },
  }),
];

const NIGHT: readonly Requirement[] = [
  // Lit from sunset to sunrise, which is more than civil night.
  line('night', '91.205(c)(2), 91.209(a)', 'position lights', ['position-lights'], { night: 'lights' }),
  line('night', '91.205(c)(3)', 'anti-collision lights', ['anti-collision-lights']),
  line('night', '91.205(c)(4)', 'a landing light, as the flight is for hire', ['landing-light'], {
    when: ({ flight }) => if_(flight.forHire),
  }),
  line('night', '91.205(c)(5)', 'a source of electrical energy', ['electrical-source', 'generator']),
  line('night', '91.205(c)(6)', 'spare fuses', ['spare-fuses']),
];

const IFR: readonly Requirement[] = [
  line('ifr', '91.205(d)(2)', 'a two-way radio', ['two-way-radio']),
  line('ifr', '91.205(d)(2)', 'navigation equipment suitable for the route', [
    'nav-receiver',
    'vor-receiver',
    'gps-navigator',
  ]),
  line('ifr', '91.205(d)(2)', 'a VOR receiver, as VOR is used', ['vor-receiver', 'nav-receiver'], {
    when: ({ flight }) => if_(flight.usesVor === true),
  }),
  line('ifr', '91.205(d)(3)', 'a rate-of-turn indicator', ['rate-of-turn']),
  line('ifr', '91.205(d)(4)', 'a slip-skid indicator', ['slip-skid']),
  line('ifr', '91.205(d)(5)', 'a sensitive altimeter', ['sensitive-altimeter']),
  line('ifr', '91.205(d)(6)', 'a clock that shows seconds', ['clock']),
  line('ifr', '91.205(d)(7)', 'a generator or alternator', ['generator']),
  line('ifr', '91.205(d)(8)', 'an attitude indicator', ['attitude-indicator']),
  line('ifr', '91.205(d)(9)', 'a direction indicator', ['heading-indicator']),
  line('ifr', '91.205(e)', 'DME or RNAV', ['dme', 'gps-navigator'], {
    when: ({ flight, type, p }) => {
      const floor = p.number('us.equipment.dme-from-ft');
      if (flight.maxAltitudeFtMsl !== null) return if_(flight.maxAltitudeFtMsl >= floor);
      const ceiling = type.maxOperatingAltitudeFt ?? type.serviceCeilingFt;
      if (ceiling !== null && ceiling < floor) return 'no';
      return { unless: [`Remain below ${grouped(floor)} ft.`] };
    },
  }),
];

export const REQUIRED_EQUIPMENT: readonly Requirement[] = [...DAY, ...NIGHT, ...IFR];
