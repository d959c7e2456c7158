/**
 * The catalogue of acts: everything a rule may name as a remedy, and the search's own.
 */
import type { ActEntry, ActKind, Fee, Hours, Lead, Sketch } from './act.js';

const entry = (
  kind: ActKind,
  lead: Lead | null,
  rest: Partial<Omit<ActEntry, 'kind' | 'lead'>> = {},
): ActEntry => ({
  kind,
  lead,
  air: null,
  ground: null,
  fee: null,
  payer: 'member',
  instructed: false,
  points: null,
  sketch: null,
  ...rest,
});

const alone = (air: Hours, light: Sketch['light'] = 'any'): ActEntry =>
  entry('flight', 'alone', { air, sketch: { with: 'nobody', light } });
const dual = (air: Hours, light: Sketch['light'] = 'day', ground: Hours | null = null): ActEntry =>
  entry('flight', 'instructor', {
    air,
    ground,
    instructed: true,
    sketch: { with: 'instructor', light },
  });
const test = (light: Sketch['light'] = 'day'): ActEntry =>
  entry('appointment', 'examiner', {
    air: 'test',
    ground: 'test-ground',
    fee: 'practical-test',
    sketch: {
      with: 'examiner',
      light,
      alsoMet: ['medical.'],
    },
  });
const workshop = (lead: Lead, fee: Fee): ActEntry => entry('maintenance', lead, { fee, payer: 'club' });
/** A change of the request: it takes no time, and is priced by what changes. */
export const CHANGE = entry('change-of-request', null);
/** A matter for the club's office. */
export const OFFICE = entry('office', 'office', { ground: 'office' });

const same = (acts: readonly string[], of: ActEntry): Record<string, ActEntry> =>
  Object.fromEntries(acts.map((act) => [act, of]));

/** The acts by name. */
export const CATALOGUE: Readonly<Record<string, ActEntry>> = {
  'fly-landings-day': alone('landing'),
  'fly-landings-night': alone('landing', 'night'),
  'fly-instrument-tasks': entry('flight', 'others', {
    air: 'instrument',
    sketch: { with: 'safety-pilot', light: 'any' },
  }),
  // 14 CFR 91.407(b): nobody but crew goes along.
  'fly-check-flight': alone('check', 'day'),
  'fly-landings-model': dual('landing', 'any'),
  'fly-flight-review': dual('review', 'any', 'review-ground'),
  'fly-checkout': dual('check'),
  'fly-club-check': dual('check'),
  'fly-differences': dual('differences'),
  'fly-equipment-checkout': dual('differences'),
  'fly-condition-checkout': dual('check'),
  'fly-night-checkout': dual('check', 'night'),
  'pass-instrument-proficiency-check': dual('instrument', 'any'),
  ...same(
    [
      'get-endorsement-solo',
      'get-endorsement-solo-cross-country',
      'get-endorsement-solo-other-airport-25nm',
      'get-endorsement-complex',
      'get-endorsement-high-performance',
      'get-endorsement-high-altitude',
      'get-endorsement-tailwheel',
      'get-endorsement-recreational-50nm',
      'get-endorsement-recreational-cross-country',
      'get-endorsement-recreational-airspace',
      'get-endorsement-recreational-refresher',
      'get-endorsement-sport-airspace',
      'get-endorsement-sport-controllable-propeller',
      'get-endorsement-sport-retractable-gear',
    ],
    dual('training'),
  ),
  ...same(
    ['get-endorsement-solo-night', 'get-endorsement-sport-night', 'get-night-rating'],
    dual('training', 'night'),
  ),
  'train-differences': dual('differences'),
  'regain-privileges': dual('review', 'any', 'review-ground'),
  'fly-missing-with-instructor': dual('logged', 'any'),
  'fly-to-revalidate': alone('logged'),
  // The instructor looks over the planning; nobody flies.
  'get-endorsement-solo-cross-country-flight': entry('appointment', 'instructor', {
    ground: 'office',
    instructed: true,
  }),

  ...same(
    [
      'add-class-rating',
      'add-type-rating',
      'add-instrument-rating',
      'pass-class-rating-test',
      'renew-class-rating',
      'pass-proficiency-check',
      'pass-instructor-practical-test',
      'renew-instructor-certificate',
    ],
    test(),
  ),
  'pass-language-assessment': entry('appointment', 'examiner', { ground: 'appointment', fee: 'document' }),
  'pass-medical-exam': entry('appointment', 'medical', { ground: 'appointment', fee: 'medical-exam' }),
  ...same(
    ['complete-basicmed', 'renew-basicmed'],
    entry('appointment', 'medical', { ground: 'appointment', fee: 'physician' }),
  ),

  'complete-self-paced-study': entry('paper', null, { ground: 'review-ground' }),
  'complete-instructor-refresher': entry('paper', 'course', { ground: 'course', fee: 'course' }),
  'renew-certificate': entry('paper', 'document', { ground: 'office', fee: 'document' }),
  'renew-registration': entry('paper', 'document', { fee: 'document', payer: 'club' }),
  'obtain-special-flight-permit': entry('paper', 'document', { fee: 'document', payer: 'club' }),

  'renew-membership': { ...OFFICE, fee: 'document' },
  'settle-account': { ...OFFICE, lead: null },
  'lift-suspension': { ...OFFICE, points: 'officer' },
  'lift-suspension-of-pilot': { ...OFFICE, points: 'officer' },
  'have-papers-verified': OFFICE,
  'show-papers-to-officer': OFFICE,
  'return-to-service': { ...OFFICE, points: 'others-asked' },
  'ask-for-the-aircraft': entry('office', 'others', { ground: 'office', points: 'others-asked' }),
  'give-up-commitment': entry('office', null, { points: 'others-asked' }),
  // An officer's leave is priced by the rules it sets aside.
  'ask-officer': OFFICE,

  'sign-annual': workshop('inspection', 'annual'),
  'sign-100-hour': workshop('inspection', 'hundred-hour'),
  ...same(['sign-altimeter-static', 'sign-transponder', 'sign-elt-inspection'], workshop('repair', 'test')),
  ...same(
    ['comply-with-directives', 'do-club-items', 'do-advice-items', 'sign-progressive'],
    workshop('inspection', 'items'),
  ),
  ...same(['replace-elt-battery', 'fix-squawk', 'defer-squawk', 'sign-work'], workshop('repair', 'repair')),
  'install-equipment': workshop('fitting', 'fitting'),
  'check-vor': entry('maintenance', null, { ground: 'office' }),

  ...same(
    [
      'change-to-vfr',
      'change-to-ifr',
      'fly-without-hire',
      'take-fewer-passengers',
      'take-fewer-persons',
      'correct-persons-on-board',
      'declare-passengers',
      'leave-passengers',
      'fly-alone',
      'fly-with-essential-crew',
      'fly-with-instructor',
      'name-instructor',
      'name-another-instructor',
      'fly-without-instruction',
      'stay-low',
      'stay-slow',
      'stay-local',
      'stay-below-class-a',
      'keep-out-of-airspace',
      'avoid-transponder-airspace',
      'use-transponder',
      'fly-without-transponder',
      'fly-without-vor',
      'land-before-night',
      'land-before-sunset',
      'depart-after-night',
      'depart-after-sunrise',
      'depart-later',
      'leave-at-another-time',
      'shorten-booking',
      'shorten-flight',
      'reduce-load',
      'move-load',
      'choose-runway',
      'take-more-fuel',
      'take-other-aircraft',
    ],
    CHANGE,
  ),
};
