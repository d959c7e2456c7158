/** Arbitrary people: papers, log, sign-offs and standing, in order in some ways and not in others. */
import fc from 'fast-check';
import type { PersonFacts } from '../../src/rules/index.js';
import * as records from '../../src/rules/workshop/records.js';
import { commitment, day, fact, flag, maybe, mostly, several } from './engine-parts.js';

const count = fc.integer({ min: 0, max: 6 });

const log = fc
  .record({
    on: day(-700, 20),
    takeoffs: count,
    landings: count,
    stops: flag,
    night: flag,
    approaches: count,
    holding: flag,
    interceptTrack: flag,
    soleManipulator: fc.oneof(
      { weight: 4, arbitrary: fc.constant(true) },
      { weight: 1, arbitrary: fc.constant(false) },
    ),
    tailwheel: flag,
    modelId: fc.constantFrom('model-lark', 'model-other'),
    device: fc.oneof(
      { weight: 6, arbitrary: fc.constant(null) },
      {
        weight: 1,
        arbitrary: fc.constantFrom('flight-training-device' as const, 'aviation-training-device' as const),
      },
    ),
    role: fc.constantFrom('pilot-in-command' as const, 'dual-received' as const, 'solo' as const),
  })
  .map(({ stops, night, ...fields }) => ({
    ...records.LOG,
    ...fields,
    departedAt: `${fields.on}T19:00:00Z`,
    fullStopLandings: stops ? fields.landings : 0,
    nightTakeoffs: night ? fields.takeoffs : 0,
    nightFullStopLandings: night && stops ? fields.landings : 0,
  }));

const suspensions = several(
  fc.record({ id: fc.constant(''), from: day(-200, 60), to: maybe(day(61, 120)) }),
  1,
  'suspension',
);

const certificate = fc
  .record({
    level: fc.constantFrom(
      ...([
        'student',
        'sport',
        'recreational',
        'lapl',
        'private',
        'private',
        'private',
        'commercial',
      ] as const),
    ),
    issuedOn: day(-3000, -10),
    instrument: fc.constantFrom<'airplane'[]>([], ['airplane']),
    validThrough: maybe(day(-100, 400)),
    suspensions: fc.oneof({ weight: 4, arbitrary: fc.constant([]) }, { weight: 1, arbitrary: suspensions }),
  })
  .map((fields) => ({
    ...records.CERTIFICATE,
    ...fields,
    ratings: fields.level === 'student' ? [] : records.CERTIFICATE.ratings,
  }));

/** Ratings of a European licence. */
const rating = fc
  .record({
    kind: fc.constantFrom(
      ...(['single-engine-piston-land', 'single-engine-piston-land', 'multi-engine-piston-land'] as const),
      ...(['instrument', 'night', 'language', 'type'] as const),
    ),
    on: day(-900, 5),
    validThrough: maybe(day(-30, 500)),
  })
  .map((fields) => ({
    ...records.LICENCE_RATING,
    ...fields,
    designator: fields.kind === 'language' ? 'English' : fields.kind === 'type' ? 'WREN' : null,
  }));

const logBefore = fc
  .record({
    through: maybe(day(-900, -701)),
    sums: fc.array(
      fc
        .record({
          role: fc.constantFrom('pilot-in-command' as const, 'dual-received' as const),
          totalTenths: fc.integer({ min: 0, max: 5000 }),
        })
        .map((fields) => ({ ...records.LOG_SUM, ...fields })),
      { maxLength: 3 },
    ),
  })
  .map(({ through, sums }) => ({ through: through && `${through}T19:00:00Z`, sums }));

export const person = (base: PersonFacts): fc.Arbitrary<PersonFacts> =>
  fc
    .record({
      birthDate: fact(fc.constantFrom('1990-06-01', '1960-02-29', '1987-03-01')),
      certificates: fact(several(certificate, 2, 'certificate', 1)),
      medicals: fact(
        several(
          fc
            .record({
              class: fc.constantFrom(1, 2, 2, 3, 4),
              examOn: day(-2000, 5),
              withdrawnOn: maybe(day(-100, 200)),
            })
            .map((fields) => ({ ...records.MEDICAL, ...fields, withdrawnOn: fields.withdrawnOn })),
          2,
          'medical',
        ),
      ),
      basicMed: fact(
        several(
          fc
            .record({
              examOn: maybe(day(-1600, 0)),
              courseOn: maybe(day(-900, 0)),
              lastApplicationDenied: maybe(flag),
              heldMedicalAfter20060714: maybe(flag),
            })
            .map((fields) => ({ ...records.BASIC_MED, ...fields })),
          1,
          'basicmed',
        ),
      ),
      reviews: fact(
        several(
          fc
            .record({
              kind: fc.constantFrom(
                'flight-review',
                'practical-test',
                'proficiency-check',
                'safety-seminar',
                'self-paced-study',
                'instrument-proficiency-check',
                'instructor-renewal',
              ),
              on: day(-900, 5),
              groundTenths: maybe(fc.integer({ min: 5, max: 15 })),
              flightTenths: maybe(fc.integer({ min: 5, max: 15 })),
              endorsedAsReview: flag,
            })
            .map((fields) => ({ ...records.REVIEW, ...fields })),
          3,
          'review',
        ),
      ),
      endorsements: fact(
        several(
          fc
            .record({
              kind: fc.constantFrom(
                'solo',
                'solo-night',
                'solo-cross-country-training',
                'solo-cross-country-flight',
                'complex',
                'high-performance',
                'high-altitude',
                'tailwheel',
                'recreational-50nm',
                'sport-night',
                'differences-tailwheel',
                'differences-variable-pitch',
              ),
              on: day(-200, 5),
              makeModel: fc.constantFrom('Harrow Lark 160', null),
            })
            .map((fields) => ({ ...records.ENDORSEMENT, ...fields })),
          4,
          'endorsement',
        ),
      ),
      ratings: fact(several(rating, 4, 'rating')),
      log: fact(several(log, 6, 'log')),
      logBefore: fact(logBefore),
      checkouts: fact(
        several(
          fc
            .record({
              kind: fc.constantFrom('model', 'annual-check', 'differences', 'equipment', 'condition'),
              modelId: fc.constantFrom('model-lark', 'model-other'),
              equipmentGroup: fc.constantFrom('glass-panel', 'autopilot', null),
              condition: fc.constantFrom('night', 'mountain', 'short-field', 'high-crosswind'),
              alsoModelIds: fc.constantFrom([], ['model-lark']),
              on: day(-500, 5),
              expiresOn: maybe(day(-100, 400)),
            })
            .map((fields) => ({
              ...records.CHECKOUT,
              ...fields,
              aircraftId: fields.kind === 'differences' ? 'aircraft-1' : null,
            })),
          6,
          'checkout',
        ),
      ),
      standing: fact(
        fc
          .record({
            state: fc.constantFrom('good', 'good', 'good', 'arrears', 'suspended'),
            since: day(-100, 60),
            membershipFrom: day(-800, 3),
            membershipThrough: maybe(day(-20, 500)),
          })
          .map((fields) => ({ ...records.STANDING, ...fields })),
      ),
      checks: fact(
        several(
          fc
            .record({
              kind: fc.constantFrom('identity', 'citizenship', 'background'),
              on: day(-500, 5),
              expiresOn: maybe(day(-20, 400)),
            })
            .map((fields) => ({ ...records.CHECK, ...fields })),
          3,
          'check',
        ),
      ),
      unpaid: fact(
        several(
          fc
            .record({ on: day(-120, 3), unpaidMinor: fc.integer({ min: 1, max: 60_000 }) })
            .map((fields) => ({ ...records.UNPAID, ...fields })),
          3,
          'charge',
        ),
      ),
      commitments: fact(several(commitment, 2, 'commitment')),
    })
    .chain((fields) => mostly(base, fields as Partial<PersonFacts>));
