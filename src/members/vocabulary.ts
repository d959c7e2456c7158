/** The words the API accepts, held by the compiler against the facts' types. */
import type {
  AircraftCategory,
  AircraftClass,
  CertificateLevel,
  EndorsementKind,
  InstructorFact,
  RatingKind,
  ReviewKind,
} from '../rules/facts/person.js';

/** Every member of a union exactly once: a missing key or a strange one does not compile. */
const words = <T extends string>(all: Record<T, true>): T[] => Object.keys(all) as T[];

export const CERTIFICATE_LEVELS = words<CertificateLevel>({
  student: true,
  sport: true,
  recreational: true,
  lapl: true,
  private: true,
  commercial: true,
  atp: true,
});

export const INSTRUCTOR_RATINGS = words<InstructorFact['ratings'][number]>({
  'airplane-single-engine': true,
  'airplane-multiengine': true,
  'instrument-airplane': true,
  'rotorcraft-helicopter': true,
  glider: true,
});

export const REVIEW_KINDS = words<ReviewKind>({
  'flight-review': true,
  'practical-test': true,
  'proficiency-check': true,
  'instrument-proficiency-check': true,
  'faa-proficiency-phase': true,
  'instructor-practical-test': true,
  'instructor-renewal': true,
  'safety-seminar': true,
  'self-paced-study': true,
  'written-examination': true,
});

export const RATING_KINDS = words<RatingKind>({
  'single-engine-piston-land': true,
  'single-engine-piston-sea': true,
  'multi-engine-piston-land': true,
  'multi-engine-piston-sea': true,
  'touring-motor-glider': true,
  type: true,
  instrument: true,
  night: true,
  language: true,
});

export const ENDORSEMENT_KINDS = words<EndorsementKind>({
  solo: true,
  'solo-night': true,
  'solo-cross-country-training': true,
  'solo-cross-country-flight': true,
  'solo-other-airport-25nm': true,
  'solo-repeated-route-50nm': true,
  complex: true,
  'high-performance': true,
  'high-altitude': true,
  tailwheel: true,
  'recreational-50nm': true,
  'recreational-cross-country': true,
  'recreational-airspace': true,
  'recreational-refresher': true,
  'sport-night': true,
  'sport-airspace': true,
  'sport-controllable-propeller': true,
  'sport-retractable-gear': true,
  'grandfather-complex': true,
  'grandfather-high-performance': true,
  'grandfather-high-altitude': true,
  'grandfather-tailwheel': true,
  'differences-variable-pitch': true,
  'differences-retractable-gear': true,
  'differences-tailwheel': true,
  'differences-pressurised': true,
});

/** Classes within each category. Balloons and airships are not told apart here. Source: 14 CFR 61.5(b)(1)-(4). */
export const CLASSES_OF: Record<AircraftCategory, AircraftClass[]> = {
  airplane: ['single-engine-land', 'single-engine-sea', 'multi-engine-land', 'multi-engine-sea'],
  rotorcraft: ['helicopter', 'gyroplane'],
  glider: ['none'],
  'lighter-than-air': ['none'],
  'powered-lift': ['none'],
};

export const AIRCRAFT_CATEGORIES = Object.keys(CLASSES_OF) as AircraftCategory[];
export const AIRCRAFT_CLASSES = [...new Set(Object.values(CLASSES_OF).flat())];

/** Whether the class belongs to the category. */
export const classFits = (category: AircraftCategory, aircraftClass: AircraftClass): boolean =>
  CLASSES_OF[category].includes(aircraftClass);
