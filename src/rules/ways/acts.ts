/**
 * The catalogue of acts: everything a rule may name as a remedy, and the search's own. Each says what kind of act it is,
 * how long one waits for it, what it costs by the club's policy, and what flight it is where it is one.
 */

/** What sort of doing it is; plans that differ in kind are shown before plans that do not. */
export type ActKind = 'flight' | 'paper' | 'appointment' | 'maintenance' | 'change-of-request' | 'office';

/** Parameters of src/rules/parameters/club/costs.ts, without their prefix. */
type Hours =
  /** As many as the act enters in the log. */
  | 'logged'
  | 'landing'
  | 'review'
  | 'review-ground'
  | 'check'
  | 'differences'
  | 'instrument'
  | 'training'
  | 'test'
  | 'test-ground'
  | 'appointment'
  | 'course'
  | 'office';
type Fee =
  | 'medical-exam'
  | 'physician'
  | 'practical-test'
  | 'course'
  | 'document'
  | 'annual'
  | 'hundred-hour'
  | 'test'
  | 'items'
  | 'repair'
  | 'fitting';
type Points = 'others-asked' | 'officer';
export type Lead =
  | 'alone'
  | 'instructor'
  | 'examiner'
  | 'medical'
  | 'course'
  | 'inspection'
  | 'repair'
  | 'fitting'
  | 'document'
  | 'office'
  | 'others';

/** The flight an act is: it is judged like any other flight, and nothing may stand in its way. */
export interface Sketch {
  /** Who has to be aboard besides the person who practises; alone can always be with an instructor as well. */
  with: 'nobody' | 'instructor' | 'examiner';
  /** 'any': by day, but at night as well where it is flown together with something that needs the night. */
  light: 'day' | 'night' | 'any';
  /** Rules that bind the person although somebody else is in command: an applicant needs a medical (14 CFR 61.39(a)(4)). */
  alsoMet?: readonly string[];
}

/** One act of the catalogue. */
export interface ActEntry {
  kind: ActKind;
  /** How long one waits for it; null: it can be done at once. */
  lead: Lead | null;
  /** In the air, besides getting there and back; landings are counted in what the act records. */
  air: Hours | null;
  ground: Hours | null;
  fee: Fee | null;
  /** Whose money the fee is. */
  payer: 'member' | 'club';
  /** The time on the ground is an instructor's too. */
  instructed: boolean;
  points: Points | null;
  sketch: Sketch | null;
}

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
      alsoMet: ['medical.certificate', 'medical.basicmed', 'medical.easa.certificate'],
    },
  });
const workshop = (lead: Lead, fee: Fee): ActEntry => entry('maintenance', lead, { fee, payer: 'club' });
const CHANGE = entry('change-of-request', null);
const OFFICE = entry('office', 'office', { ground: 'office' });

const same = (acts: readonly string[], of: ActEntry): Record<string, ActEntry> =>
  Object.fromEntries(acts.map((act) => [act, of]));

/** Acts that put several things right at once: priced by the facts they touch, see `partsOf`. */
const COMPOSITE = 'keep-within-';

const CATALOGUE: Readonly<Record<string, ActEntry>> = {
  'fly-landings-day': alone('landing'),
  'fly-landings-night': alone('landing', 'night'),
  'fly-instrument-tasks': alone('instrument'),
  'fly-landings-model': dual('landing', 'any'),
  'fly-flight-review': dual('review', 'any', 'review-ground'),
  'fly-checkout': dual('check'),
  'fly-club-check': dual('check'),
  'fly-differences': dual('differences'),
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
  'return-to-service': { ...OFFICE, points: 'others-asked' },
  'ask-for-the-aircraft': entry('office', 'others', { ground: 'office', points: 'others-asked' }),
  'give-up-commitment': entry('office', null, { points: 'others-asked' }),
  // An officer's leave is priced by the rules it sets aside.
  'ask-officer': OFFICE,

  'sign-annual': workshop('inspection', 'annual'),
  'sign-100-hour': workshop('inspection', 'hundred-hour'),
  ...same(['sign-altimeter-static', 'sign-transponder', 'sign-elt-inspection'], workshop('repair', 'test')),
  ...same(['comply-with-directives', 'do-club-items', 'do-advice-items'], workshop('inspection', 'items')),
  ...same(['replace-elt-battery', 'fix-squawk', 'defer-squawk'], workshop('repair', 'repair')),
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
      'take-more-fuel',
      'take-other-aircraft',
    ],
    CHANGE,
  ),
};

/** All acts that are known, by name. */
export const ACTS: readonly string[] = Object.keys(CATALOGUE).sort();

/** Looks acts up: the catalogue, or another one where rules of another make are searched. */
export type Catalogue = (act: string) => ActEntry | undefined;

export const catalogue: Catalogue = (act) => {
  if (act.startsWith(COMPOSITE)) return CHANGE;
  return Object.hasOwn(CATALOGUE, act) ? CATALOGUE[act] : undefined;
};

/** What stands for a fact that a composite act touches. */
const BY_FACT: Readonly<Record<string, string>> = {
  'pic.medicals': 'pass-medical-exam',
  'pic.basicMed': 'complete-basicmed',
  'pic.endorsements': 'get-endorsement-solo',
  'pic.ratings': 'get-night-rating',
};

/** The entries an act is made of: one, but for acts that put several things right at once. */
export function partsOf(act: string, facts: readonly string[], look: Catalogue): ActEntry[] {
  if (!act.startsWith(COMPOSITE) || facts.length === 0) return [look(act) ?? OFFICE];
  return [...new Set(facts)].sort().map((fact) => look(BY_FACT[fact] ?? '') ?? OFFICE);
}
