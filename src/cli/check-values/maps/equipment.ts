/** Inoperative equipment (14 CFR 91.213) and where transponder and ADS-B Out are needed (91.215, 91.225). */
import type { AirspaceClass, DeferralFact, EquipmentKind } from '../../../rules/index.js';
import { EQUIPMENT, SQUAWK } from '../../../rules/workshop/records.js';
import {
  adsBOverGulf,
  transponderNeed,
} from '../../../rules/packs/us/aircraft/equipment/transponder-airspace.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { CATEGORY } from './words.js';

const ON = '2027-03-01';

const KIND: Record<string, EquipmentKind> = {
  landing_light: 'landing-light',
  position_lights: 'position-lights',
  position_light: 'position-lights',
  anti_collision_light: 'anti-collision-lights',
  anti_collision_lights: 'anti-collision-lights',
  cabin_clock: 'cabin-equipment',
  cabin_light: 'cabin-equipment',
  clock: 'clock',
  fuel_gauge: 'fuel-quantity',
  fuel_quantity: 'fuel-quantity',
  airspeed_indicator: 'airspeed-indicator',
  altimeter: 'altimeter',
  magnetic_compass: 'magnetic-direction',
  compass: 'magnetic-direction',
  tachometer: 'tachometer',
  oil_pressure: 'oil-pressure',
  oil_pressure_gauge: 'oil-pressure',
  oil_temperature: 'oil-temperature',
  oil_temperature_gauge: 'oil-temperature',
  manifold_pressure: 'manifold-pressure',
  gear_position: 'gear-position',
  gear_position_indicator: 'gear-position',
  seat_belt: 'safety-belts',
  safety_belts: 'safety-belts',
  elt: 'elt',
  attitude_indicator: 'attitude-indicator',
  heading_indicator: 'heading-indicator',
  directional_gyro: 'heading-indicator',
  turn_coordinator: 'rate-of-turn',
  rate_of_turn: 'rate-of-turn',
  slip_skid: 'slip-skid',
  slip_skid_indicator: 'slip-skid',
  vertical_speed: 'vertical-speed',
  vertical_speed_indicator: 'vertical-speed',
  generator: 'generator',
  alternator: 'generator',
  spare_fuses: 'spare-fuses',
  electrical_source: 'electrical-source',
  radio: 'two-way-radio',
  com_radio: 'two-way-radio',
  nav_receiver: 'nav-receiver',
  vor: 'vor-receiver',
  vor_receiver: 'vor-receiver',
  dme: 'dme',
  transponder: 'transponder',
  ads_b_out: 'ads-b-out',
  autopilot: 'autopilot',
  pitot_heat: 'pitot-heat',
};

const FLIGHT: Record<string, { flightRules: 'VFR' | 'IFR'; night: boolean }> = {
  day_vfr: { flightRules: 'VFR', night: false },
  night_vfr: { flightRules: 'VFR', night: true },
  ifr: { flightRules: 'IFR', night: false },
  day_ifr: { flightRules: 'IFR', night: false },
  night_ifr: { flightRules: 'IFR', night: true },
};

const AIRSPACE: Record<string, AirspaceClass> = { A: 'A', B: 'B', C: 'C', D: 'D', E: 'E', G: 'G' };

/** 14 CFR 91.215(b)(2). */
const VEIL_NM = 30;

const inoperative: Mapping = {
  rules: ['equipment.inoperative'],
  map(facts) {
    const flag = (...keys: string[]): boolean | undefined => facts.oneOf(keys, (key) => facts.flag(key));
    const { flightRules, night } = facts.choice('flight', FLIGHT) ?? FLIGHT.day_vfr!;
    const scene = new Scene(facts.date('as_of') ?? ON, night ? 22 * 60 : 12 * 60);
    const kind = facts.need('item', facts.choice('item', KIND));
    const forHire = flag('for_hire', 'hire') ?? false;
    const airspace = facts.choice('airspace', AIRSPACE);
    scene.flight({ flightRules, forHire, ...(airspace === undefined ? {} : { airspace: [airspace] }) });
    if (forHire) scene.passengers(1);
    // The base field lies near a listed primary airport; an entry that names no distance means a flight away from all.
    const miles = facts.oneOf(['nm_from_class_b_primary', 'nm_from_primary'], (key) => facts.number(key));
    const home = scene.sheet.flight.route[0]!;
    const field =
      miles !== undefined && miles <= VEIL_NM ? home : { ...home, latitudeDeg: home.latitudeDeg + 3 };
    scene.flight({ route: [field, field] });
    const listed = flag('mel', 'approved_mel', 'mel_approved', 'approved_equipment_list');
    const listedItem = flag('in_mel', 'mel_item', 'on_mel', 'mel_allows') ?? listed ?? false;
    scene.aircraft({
      approvedEquipmentList: listed,
      turbine: flag('turbine'),
      maxTakeoffLb: facts.number('max_takeoff_lb'),
      category: facts.oneOf(['category', 'aircraft'], (key) => facts.choice(key, CATEGORY)),
    });
    const { equipment } = scene.sheet.aircraft;
    if (!equipment.known) throw new Error('the base sheet knows its equipment');
    const id = `equipment-${kind}`;
    const others = equipment.value.filter((one) => one.kind !== kind);
    scene.set('aircraft.equipment', [...others, { ...EQUIPMENT, id, kind, name: kind }]);

    const required = flag('in_type_cert_or_koel') ?? false;
    const removed = flag('removed');
    const off = flag('deactivated');
    const hazard = flag('hazard', 'hazard_to_flight') ?? false;
    const determined = flag('no_hazard_determined', 'hazard_determination', 'no_hazard') ?? !hazard;
    const deferral: DeferralFact = {
      id: 'deferral-1',
      on: '2027-01-10',
      deadlineOn: null,
      requiredByTypeDesign: flag('in_type_cert', 'type_cert') ?? required,
      requiredByEquipmentList: flag('koel', 'on_koel', 'equipment_list') ?? required,
      requiredByDirective: flag('ad', 'required_by_ad') ?? false,
      removedOrDeactivated:
        off === undefined && removed === undefined ? false : off === true || removed === true,
      placarded: flag('placarded') ?? false,
      recorded: flag('recorded', 'logbook_entry', 'maintenance_record') ?? true,
      noHazardDeterminedBy: determined ? 'M. Mechanic' : null,
      equipmentListItem: listed && listedItem ? 'item 1' : null,
    };
    scene.set('aircraft.squawks', [{ ...SQUAWK, state: 'deferred', equipmentId: id, deferral }]);
    return {
      allowed: () => {
        const answer = scene.allows('equipment.inoperative');
        // Hazard not determined: the rule cannot tell, and a flight that cannot be cleared is not allowed.
        return typeof answer === 'string' && !determined ? false : answer;
      },
    };
  },
};

const transponder: Mapping = {
  rules: ['equipment.transponder'],
  map(facts) {
    const number = (...keys: string[]): number | null =>
      facts.oneOf(keys, (key) => facts.number(key)) ?? null;
    const flag = (...keys: string[]): boolean | undefined => facts.oneOf(keys, (key) => facts.flag(key));
    const scene = new Scene(facts.date('as_of') ?? ON);
    const p = scene.parameters(TRANSPONDER_FIGURES);
    const named = facts.choice('airspace', AIRSPACE);
    const above = facts.choice('above_class', AIRSPACE);
    const classes = [
      ...(named === undefined ? [] : [named]),
      ...(above === undefined ? [] : [above]),
      ...(flag('above_class_b') ? (['B'] as const) : []),
      ...(flag('above_class_c') ? (['C'] as const) : []),
    ];
    const category = facts.choice('category', CATEGORY);
    const excepted =
      flag('electrical_system', 'engine_driven_electrical') === false ||
      flag('no_electrical_system', 'no_electrical') === true ||
      category === 'glider' ||
      category === 'lighter-than-air';
    const altitudeFtMsl = number('altitude_msl', 'altitude_ft_msl');
    const need = transponderNeed(
      {
        classes: classes.length > 0 ? classes : null,
        maxAltitudeFtMsl: altitudeFtMsl,
        nearestPrimaryNm: number('nm_from_class_b_primary', 'nm_from_primary'),
        heightFtAgl: number('altitude_agl', 'altitude_ft_agl'),
        excepted,
      },
      p.number('us.transponder.from-ft'),
      p.number('us.transponder.veil-nm'),
      p.number('us.transponder.surface-ft'),
    ).needed;
    const overGulf = flag('gulf', 'gulf_of_mexico', 'over_gulf', 'gulf_of_america') ?? false;
    const coastNm = number('nm_from_coast', 'nm_from_coastline', 'nm_offshore', 'gulf_nm_from_coast');
    const gulf =
      (overGulf || facts.has('gulf_nm_from_coast')) &&
      adsBOverGulf(
        { altitudeFtMsl, coastNm },
        p.number('us.ads-b.gulf-from-ft'),
        p.number('us.ads-b.gulf-within-nm'),
      );
    return {
      transponder_required: () => need,
      ads_b_out_required: () => p.flag('us.ads-b.required') && (need || gulf),
    };
  },
};

/** Parameters that the two functions are called with. */
const TRANSPONDER_FIGURES = [
  'us.transponder.from-ft',
  'us.transponder.veil-nm',
  'us.transponder.surface-ft',
  'us.ads-b.required',
  'us.ads-b.gulf-from-ft',
  'us.ads-b.gulf-within-nm',
];

export const EQUIPMENT_MAPS: readonly Mapping[] = [inoperative, transponder];
