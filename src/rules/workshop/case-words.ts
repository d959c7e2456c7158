/** Words that facts know, so that a case with a misspelt one is refused and does not test nothing. */
import type { ItemKind, MeterKind } from '../facts/aircraft.js';
import type { AirspaceClass, FlightFacts, Purpose } from '../facts/flight.js';
import type {
  AircraftCategory,
  AircraftClass,
  CertificateLevel,
  EndorsementKind,
  LogFact,
  RatingKind,
  ReviewKind,
} from '../facts/person.js';

const categories: AircraftCategory[] = [
  'airplane',
  'rotorcraft',
  'glider',
  'lighter-than-air',
  'powered-lift',
];
const classes: AircraftClass[] = [
  'single-engine-land',
  'single-engine-sea',
  'multi-engine-land',
  'multi-engine-sea',
  'helicopter',
  'gyroplane',
  'none',
];
const purposes: Purpose[] = ['solo', 'passengers', 'dual', 'checkout', 'maintenance', 'ferry-to-inspection'];
const rules: FlightFacts['flightRules'][] = ['VFR', 'IFR'];
const airspace: AirspaceClass[] = ['A', 'B', 'C', 'D', 'E', 'G'];
const levels: CertificateLevel[] = [
  'student',
  'sport',
  'recreational',
  'lapl',
  'private',
  'commercial',
  'atp',
];
const roles: LogFact['role'][] = [
  'pilot-in-command',
  'second-in-command',
  'dual-received',
  'instructor',
  'solo',
];
const reviews: ReviewKind[] = [
  'flight-review',
  'practical-test',
  'proficiency-check',
  'instrument-proficiency-check',
  'faa-proficiency-phase',
  'instructor-practical-test',
  'instructor-renewal',
  'safety-seminar',
  'self-paced-study',
  'written-examination',
];
const ratings: RatingKind[] = [
  'single-engine-piston-land',
  'single-engine-piston-sea',
  'multi-engine-piston-land',
  'multi-engine-piston-sea',
  'touring-motor-glider',
  'type',
  'instrument',
  'night',
  'language',
];
const endorsements: EndorsementKind[] = [
  'solo',
  'solo-night',
  'solo-cross-country-training',
  'solo-cross-country-flight',
  'solo-other-airport-25nm',
  'solo-repeated-route-50nm',
  'complex',
  'high-performance',
  'high-altitude',
  'tailwheel',
  'recreational-50nm',
  'recreational-cross-country',
  'recreational-airspace',
  'recreational-refresher',
  'sport-night',
  'sport-airspace',
  'sport-controllable-propeller',
  'sport-retractable-gear',
  'grandfather-complex',
  'grandfather-high-performance',
  'grandfather-high-altitude',
  'grandfather-tailwheel',
  'differences-variable-pitch',
  'differences-retractable-gear',
  'differences-tailwheel',
  'differences-pressurised',
];
const items: ItemKind[] = [
  'annual',
  'hours-100',
  'progressive',
  'altimeter-static',
  'transponder',
  'elt-inspection',
  'elt-battery',
  'vor-check',
  'directive',
  'club',
];
const meters: MeterKind[] = ['hobbs', 'tachometer', 'airframe'];

/** The words each field of a subject may hold, where they are few. */
export const WORDS: Record<string, readonly string[]> = {
  'flight.purpose': purposes,
  'flight.flightRules': rules,
  'flight.airspace': airspace,
  'reservations.purpose': purposes,
  'type.category': categories,
  'type.class': classes,
  'log.category': categories,
  'log.class': classes,
  'log.role': roles,
  'reviews.category': categories,
  'reviews.kind': reviews,
  'endorsements.kind': endorsements,
  'ratings.kind': ratings,
  'certificates.level': levels,
  'certificates.instrument': categories,
  'certificates.ratings.category': categories,
  'certificates.ratings.class': classes,
  'checks.kind': ['identity', 'citizenship', 'background'],
  'insurance.minimums.leastLevel': levels,
  'items.kind': items,
  'items.scope': ['all', 'ifr', 'hire-or-instruction', 'night', 'transponder-use', 'advice'],
  'meters.kind': meters,
  'work.state': ['in-work', 'signed'],
  'squawks.state': ['reported', 'grounding', 'deferred', 'fixed', 'no-fault-found'],
  'checkouts.kind': ['model', 'differences', 'annual-check', 'equipment', 'condition'],
  'checkouts.condition': ['night', 'mountain', 'short-field', 'high-crosswind'],
  'standing.state': ['good', 'arrears', 'suspended'],
  'teachingHours.kind': ['weekly', 'date'],
  'limits.setBy': ['member', 'instructor'],
  'weighing.source': ['weighing', 'computed', 'equipment-change'],
  'loading.fuelKind': ['avgas', 'jet'],
  'loading.stations.kind': ['seats', 'fuel', 'baggage', 'other'],
  'loading.envelopes.category': ['normal', 'utility'],
  'use.status': ['in-service', 'out-of-service'],
};
