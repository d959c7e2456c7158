/** The words the fleet's API accepts, held by the compiler against the facts' types. */
import type {
  AircraftCategory,
  AircraftClass,
  AircraftType,
  AircraftUse,
  EquipmentKind,
  ItemDetail,
  ItemFact,
  ItemKind,
  MeterKind,
  SquawkFact,
} from '../rules/index.js';

/** Every member of a union exactly once: a missing key or a strange one does not compile. */
const words = <T extends string>(all: Record<T, true>): T[] => Object.keys(all) as T[];

export const CATEGORIES = words<AircraftCategory>({
  airplane: true,
  rotorcraft: true,
  glider: true,
  'lighter-than-air': true,
  'powered-lift': true,
});

export const CLASSES = words<AircraftClass>({
  'single-engine-land': true,
  'single-engine-sea': true,
  'multi-engine-land': true,
  'multi-engine-sea': true,
  helicopter: true,
  gyroplane: true,
  none: true,
});

export const KINDS_OF_OPERATION = words<AircraftType['kindsOfOperation'][number]>({
  'day-vfr': true,
  'night-vfr': true,
  ifr: true,
});

export const AIRCRAFT_STATUSES = words<AircraftUse['status']>({ 'in-service': true, 'out-of-service': true });

export const METER_KINDS = words<MeterKind>({ hobbs: true, tachometer: true, airframe: true });

export const ITEM_KINDS = words<ItemKind>({
  annual: true,
  'hours-100': true,
  progressive: true,
  'altimeter-static': true,
  transponder: true,
  'elt-inspection': true,
  'elt-battery': true,
  'vor-check': true,
  directive: true,
  club: true,
});

export const ITEM_SCOPES = words<ItemFact['scope']>({
  all: true,
  ifr: true,
  'hire-or-instruction': true,
  night: true,
  'transponder-use': true,
  advice: true,
});

export const VOR_METHODS = words<NonNullable<ItemDetail['vorMethod']>>({
  'test-signal': true,
  'ground-checkpoint': true,
  'airborne-checkpoint': true,
  'airborne-route': true,
  dual: true,
});

export const SQUAWK_STATES = words<SquawkFact['state'] | 'duplicate'>({
  reported: true,
  grounding: true,
  deferred: true,
  fixed: true,
  'no-fault-found': true,
  duplicate: true,
});

export const EQUIPMENT_KINDS = words<EquipmentKind>({
  'airspeed-indicator': true,
  altimeter: true,
  'sensitive-altimeter': true,
  'magnetic-direction': true,
  tachometer: true,
  'oil-pressure': true,
  'oil-temperature': true,
  'coolant-temperature': true,
  'manifold-pressure': true,
  'fuel-quantity': true,
  'gear-position': true,
  'safety-belts': true,
  'shoulder-harness': true,
  elt: true,
  'anti-collision-lights': true,
  'position-lights': true,
  'landing-light': true,
  'electrical-source': true,
  'spare-fuses': true,
  'flotation-gear': true,
  'pyrotechnic-signal': true,
  'two-way-radio': true,
  'nav-receiver': true,
  'vor-receiver': true,
  'gps-navigator': true,
  dme: true,
  'rate-of-turn': true,
  'slip-skid': true,
  clock: true,
  generator: true,
  'attitude-indicator': true,
  'heading-indicator': true,
  'vertical-speed': true,
  transponder: true,
  'ads-b-out': true,
  autopilot: true,
  'air-pump': true,
  'backup-battery': true,
  'engine-monitor': true,
  'pitot-heat': true,
  'cabin-equipment': true,
  other: true,
});
