/** What each act of the catalogue asks for, written down a second time: what an act is, not what it costs. Common practice, no source. */
import { ACTS, catalogue, type ActEntry } from '../../../src/rules/ways/acts.js';

/** `lead` null: it can be done at once. Fees are the member's unless they are said to be the club's. */
const ASKED: [string, Partial<ActEntry> & Pick<ActEntry, 'kind' | 'lead'>][] = [
  [
    // An applicant needs a medical (14 CFR 61.39(a)(4)).
    `add-class-rating add-instrument-rating add-type-rating pass-class-rating-test pass-instructor-practical-test
     pass-proficiency-check renew-class-rating renew-instructor-certificate`,
    {
      kind: 'appointment',
      lead: 'examiner',
      air: 'test',
      ground: 'test-ground',
      fee: 'practical-test',
      sketch: { with: 'examiner', light: 'day', alsoMet: ['medical.'] },
    },
  ],
  [
    'pass-language-assessment',
    { kind: 'appointment', lead: 'examiner', ground: 'appointment', fee: 'document' },
  ],
  ['pass-medical-exam', { kind: 'appointment', lead: 'medical', ground: 'appointment', fee: 'medical-exam' }],
  [
    'complete-basicmed renew-basicmed',
    { kind: 'appointment', lead: 'medical', ground: 'appointment', fee: 'physician' },
  ],
  [
    'get-endorsement-solo-cross-country-flight',
    { kind: 'appointment', lead: 'instructor', ground: 'office', instructed: true },
  ],

  [
    'fly-landings-day',
    { kind: 'flight', lead: 'alone', air: 'landing', sketch: { with: 'nobody', light: 'any' } },
  ],
  [
    'fly-landings-night',
    { kind: 'flight', lead: 'alone', air: 'landing', sketch: { with: 'nobody', light: 'night' } },
  ],
  [
    'fly-to-revalidate',
    { kind: 'flight', lead: 'alone', air: 'logged', sketch: { with: 'nobody', light: 'any' } },
  ],
  // 14 CFR 91.407(b): nobody but crew goes along.
  [
    'fly-check-flight',
    { kind: 'flight', lead: 'alone', air: 'check', sketch: { with: 'nobody', light: 'day' } },
  ],
  // 14 CFR 91.109(c): under the hood a safety pilot is required.
  [
    'fly-instrument-tasks',
    { kind: 'flight', lead: 'others', air: 'instrument', sketch: { with: 'safety-pilot', light: 'any' } },
  ],
  ['fly-checkout fly-club-check fly-condition-checkout', taught('check', 'day')],
  ['fly-night-checkout', taught('check', 'night')],
  ['fly-differences fly-equipment-checkout train-differences', taught('differences', 'day')],
  // 14 CFR 61.56(a): an hour of flight and an hour on the ground.
  ['fly-flight-review regain-privileges', { ...taught('review', 'any'), ground: 'review-ground' }],
  ['fly-landings-model', taught('landing', 'any')],
  ['fly-missing-with-instructor', taught('logged', 'any')],
  ['pass-instrument-proficiency-check', taught('instrument', 'any')],
  [
    `get-endorsement-complex get-endorsement-high-altitude get-endorsement-high-performance get-endorsement-recreational-50nm
     get-endorsement-recreational-airspace get-endorsement-recreational-cross-country get-endorsement-recreational-refresher
     get-endorsement-solo get-endorsement-solo-cross-country get-endorsement-solo-other-airport-25nm
     get-endorsement-sport-airspace get-endorsement-sport-controllable-propeller get-endorsement-sport-retractable-gear
     get-endorsement-tailwheel`,
    taught('training', 'day'),
  ],
  ['get-endorsement-solo-night get-endorsement-sport-night get-night-rating', taught('training', 'night')],

  ['complete-instructor-refresher', { kind: 'paper', lead: 'course', ground: 'course', fee: 'course' }],
  ['complete-self-paced-study', { kind: 'paper', lead: null, ground: 'review-ground' }],
  ['renew-certificate', { kind: 'paper', lead: 'document', ground: 'office', fee: 'document' }],
  [
    'obtain-special-flight-permit renew-registration',
    { kind: 'paper', lead: 'document', fee: 'document', payer: 'club' },
  ],

  [
    'ask-officer have-papers-verified show-papers-to-officer',
    { kind: 'office', lead: 'office', ground: 'office' },
  ],
  ['renew-membership', { kind: 'office', lead: 'office', ground: 'office', fee: 'document' }],
  ['settle-account', { kind: 'office', lead: null, ground: 'office' }],
  [
    'lift-suspension lift-suspension-of-pilot',
    { kind: 'office', lead: 'office', ground: 'office', points: 'officer' },
  ],
  ['return-to-service', { kind: 'office', lead: 'office', ground: 'office', points: 'others-asked' }],
  ['ask-for-the-aircraft', { kind: 'office', lead: 'others', ground: 'office', points: 'others-asked' }],
  ['give-up-commitment', { kind: 'office', lead: null, points: 'others-asked' }],

  ['sign-annual', workshop('inspection', 'annual')],
  ['sign-100-hour', workshop('inspection', 'hundred-hour')],
  ['comply-with-directives do-advice-items do-club-items sign-progressive', workshop('inspection', 'items')],
  ['sign-altimeter-static sign-elt-inspection sign-transponder', workshop('repair', 'test')],
  ['defer-squawk fix-squawk replace-elt-battery sign-work', workshop('repair', 'repair')],
  ['install-equipment', workshop('fitting', 'fitting')],
  // A pilot may make it (14 CFR 91.171(b)).
  ['check-vor', { kind: 'maintenance', lead: null, ground: 'office' }],

  [
    `avoid-transponder-airspace change-to-ifr change-to-vfr choose-runway correct-persons-on-board declare-passengers depart-after-night
     depart-after-sunrise depart-later fly-alone fly-with-essential-crew fly-with-instructor fly-without-hire
     fly-without-instruction fly-without-transponder fly-without-vor keep-out-of-airspace land-before-night
     land-before-sunset leave-at-another-time leave-passengers move-load name-another-instructor name-instructor reduce-load
     shorten-booking shorten-flight stay-below-class-a stay-local stay-low stay-slow take-fewer-passengers
     take-fewer-persons take-more-fuel take-other-aircraft use-transponder`,
    { kind: 'change-of-request', lead: null },
  ],
];

function taught(air: NonNullable<ActEntry['air']>, light: 'day' | 'night' | 'any') {
  return {
    kind: 'flight' as const,
    lead: 'instructor' as const,
    air,
    instructed: true,
    sketch: { with: 'instructor' as const, light },
  };
}

function workshop(lead: NonNullable<ActEntry['lead']>, fee: NonNullable<ActEntry['fee']>) {
  return { kind: 'maintenance' as const, lead, fee, payer: 'club' as const };
}

const rows = ASKED.flatMap(([acts, of]) =>
  acts.split(/\s+/).map((act): [string, ActEntry] => [
    act,
    {
      air: null,
      ground: null,
      fee: null,
      payer: 'member',
      instructed: false,
      points: null,
      sketch: null,
      ...of,
    },
  ]),
);

test.each(rows)('%s', (act, entry) => {
  expect(catalogue(act)).toEqual(entry);
});

test('no act is left out, and none is listed twice', () => {
  expect(rows.map(([act]) => act).sort()).toEqual(ACTS);
});
