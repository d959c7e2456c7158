/** Flight review (14 CFR 61.56) and the instructor's recent experience (61.197, 61.199). */
import { addDays, type ReviewFact, type ReviewKind } from '../../../rules/index.js';
import { CERTIFICATE, ENDORSEMENT, INSTRUCTOR, REVIEW } from '../../../rules/workshop/records.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { LEVEL } from './pilot-levels.js';
import { named, tenths } from './words.js';

const REVIEW_RULE = 'review.flight_24_months';
const INSTRUCTOR_RULE = 'instructor.recent_experience';

/** Events, as the kind recorded; null is recorded as nothing at all. */
const EVENT: Record<string, { kind: ReviewKind; asReview?: boolean } | null> = {
  none: null,
  flight_review: { kind: 'flight-review' },
  practical_test: { kind: 'practical-test' },
  practical_test_passed: { kind: 'practical-test' },
  practical_test_failed: null,
  proficiency_check: { kind: 'proficiency-check' },
  pilot_proficiency_check: { kind: 'proficiency-check' },
  faa_sponsored_proficiency_phase: { kind: 'faa-proficiency-phase' },
  instructor_practical_test: { kind: 'instructor-practical-test' },
  instructor_practical_test_passed: { kind: 'instructor-practical-test' },
  instructor_refresher_course_only: { kind: 'instructor-renewal' },
  instructor_refresher_course: { kind: 'instructor-renewal' },
  instructor_renewal: { kind: 'instructor-renewal' },
  ipc: { kind: 'instrument-proficiency-check' },
  ipc_only: { kind: 'instrument-proficiency-check' },
  instrument_proficiency_check: { kind: 'instrument-proficiency-check' },
  ipc_given_as_flight_review: { kind: 'instrument-proficiency-check', asReview: true },
  ipc_endorsed_as_flight_review: { kind: 'instrument-proficiency-check', asReview: true },
};

const flightReview: Mapping = {
  rules: [REVIEW_RULE],
  map(facts) {
    const asOf = facts.date('as_of') ?? '2027-03-01';
    const scene = new Scene(asOf);
    const event = facts.choice('event', EVENT);
    const on = facts.date('event_date') ?? facts.date('flight_review') ?? addDays(asOf, -30);
    const ground = facts.number('ground_hours');
    const flight = facts.number('flight_hours');
    const asReview = facts.oneOf(
      ['endorsed_as_flight_review', 'given_as_flight_review', 'endorsed_as_review'],
      (key) => facts.flag(key),
    );
    const renewed =
      facts.oneOf(['instructor_renewal', 'instructor_renewed'], (key) => facts.flag(key)) ?? false;
    const endorsed = facts.oneOf(['endorsement', 'endorsed'], (key) => facts.flag(key)) ?? true;
    const level = facts.choice('certificate', LEVEL) ?? 'private';
    const solo = facts.flag('solo_endorsement_current');
    const taught =
      facts.oneOf(['receiving_instruction', 'receiving_dual', 'dual'], (key) => facts.flag(key)) ?? false;

    const review = (kind: ReviewKind, at: string, endorsedAsReview = false): ReviewFact => ({
      ...REVIEW,
      id: `review-${kind}`,
      kind,
      on: at,
      groundTenths: tenths(ground ?? 1),
      flightTenths: tenths(flight ?? 1),
      endorsedAsReview,
    });
    const isReview =
      facts.has('flight_review') && event === undefined && facts.date('flight_review') !== undefined;
    const kind = event === undefined ? (isReview ? EVENT.flight_review : null) : event;
    scene.set('member.reviews', [
      // A review without the instructor's endorsement is none.
      ...(kind && endorsed ? [review(kind.kind, on, asReview ?? kind.asReview ?? false)] : []),
      ...(renewed ? [review('instructor-renewal', on)] : []),
    ]);
    const ratings = level === 'student' ? [] : CERTIFICATE.ratings;
    scene.set('member.certificates', [{ ...CERTIFICATE, level, ratings }]);
    const makeModel = 'Harrow Lark 160';
    const soloOn = addDays(asOf, solo === true ? -30 : -200);
    scene.set(
      'member.endorsements',
      solo === undefined ? [] : [{ ...ENDORSEMENT, kind: 'solo', on: soloOn, makeModel }],
    );
    const dual = (): void => {
      scene.flight({ purpose: 'dual', instructorId: 'instructor-1', personsOnBoard: 2 });
    };
    if (taught) dual();
    const receives = (): boolean | string => {
      dual();
      return scene.allows(REVIEW_RULE);
    };
    return {
      may_act_as_pic: () => scene.allows(REVIEW_RULE),
      valid: () => scene.allows(REVIEW_RULE),
      valid_through: () => scene.lastValidDate(REVIEW_RULE, [on]),
      flight_review_required: () => scene.finding(REVIEW_RULE).status !== 'not-applicable',
      may_receive_instruction: receives,
      may_receive_dual: receives,
    };
  },
};

const recentExperience: Mapping = {
  rules: [INSTRUCTOR_RULE],
  map(facts) {
    const scene = new Scene(facts.need('as_of', facts.date('as_of')));
    scene.flight({ purpose: 'dual', instructorId: 'instructor-1', personsOnBoard: 2 });
    const last = facts.oneOf(['last_recent_experience', 'last_renewal'], (key) => facts.date(key)) ?? null;
    const ends = [
      'printed_expiry',
      'printed_end',
      'printed_end_date',
      'certificate_end_date',
      'printed_expiration',
    ];
    const printed = facts.oneOf(ends, (key) => facts.date(key)) ?? null;
    const issued = facts.oneOf(['issued', 'certificate_issued', 'issue_date'], (key) => facts.date(key));
    scene.set('instructor.instructor', [
      {
        ...INSTRUCTOR,
        issuedOn: issued ?? '2010-06-01',
        recentExperienceOn: last,
        printedEndOn: printed,
      },
    ]);
    const acts = (): string[] => scene.acts(INSTRUCTOR_RULE);
    const refresher = (): boolean => acts().includes('complete-instructor-refresher');
    const test = (): boolean => acts().includes('pass-instructor-practical-test');
    return {
      may_instruct: () => scene.allows(INSTRUCTOR_RULE),
      valid_through: () => scene.lastValidDate(INSTRUCTOR_RULE, [printed ?? undefined, last ?? undefined]),
      reinstate_by_refresher: refresher,
      practical_test_required: () => test() && !refresher(),
      reinstate_by: (expected) => {
        if (refresher()) return named(expected, ['refresher', 'refresher_course']);
        return test() ? named(expected, ['practical_test', 'instructor_practical_test']) : null;
      },
    };
  },
};

export const REVIEW_MAPS: readonly Mapping[] = [flightReview, recentExperience];
