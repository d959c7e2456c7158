/** Arbitrary fact sheets, made from the workshop's complete records. */
import fc from 'fast-check';
import type { FactSheet } from '../../src/rules/index.js';
import { baseSheet } from '../../src/rules/workshop/base-sheet.js';
import { aircraft } from './engine-aircraft.js';
import { flight } from './engine-flights.js';
import { KNOWN_AT } from './engine-parts.js';
import { person } from './engine-people.js';

/** A fresh sheet, all parts arbitrary. */
export const anySheet: fc.Arbitrary<FactSheet> = fc
  .constant(null)
  .map(() => baseSheet())
  .chain((base) =>
    fc
      .record({
        jurisdiction: fc.constantFrom(
          'US' as const,
          'US' as const,
          'US' as const,
          'EU' as const,
          'CA' as const,
        ),
        flight: flight(base.flight),
        member: fc.oneof(person(base.people['member-1']!), fc.constant(base.people['member-1']!)),
        instructor: fc.oneof(person(base.people['instructor-1']!), fc.constant(base.people['instructor-1']!)),
        aircraft: fc.oneof(aircraft(base.aircraft), fc.constant(base.aircraft)),
      })
      .map(({ jurisdiction, flight: asked, member, instructor, aircraft: flown }) => ({
        ...base,
        knownAt: KNOWN_AT,
        jurisdiction,
        flight: asked,
        people: {
          ...base.people,
          'member-1': member,
          'instructor-1': {
            ...instructor,
            // An arbitrary certificate would say nothing of teaching; keep one who may teach.
            instructor: base.people['instructor-1']!.instructor,
          },
        },
        aircraft: flown,
      })),
  );

/** So many runs of a property, or a share of them where the specs are run over and over (mutation). */
export const runs = (count: number): number =>
  Math.max(1, Math.ceil(count * Number(process.env.PROPERTY_SHARE ?? 1)));

/** Seed of all runs; another may be given to look elsewhere. */
export const SEED = Number(process.env.PROPERTY_SEED ?? 20_261_125);
