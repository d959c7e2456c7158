import { DayField, FlagField, HoursField, WordField } from '../../platform/http/fields.js';
import { ChangesOf, hoursOf, tenthsOf } from '../../platform/http/views.js';
import type { AircraftCategory, ReviewKind } from '../../rules/facts/person.js';
import { AIRCRAFT_CATEGORIES, REVIEW_KINDS } from '../vocabulary.js';
import { PaperViewOf, showPaper } from './paper.dto.js';
import { paperKind } from './paper-kind.js';
import { Review } from './review.entity.js';

/** A flight review, or an event that may stand for one (14 CFR 61.56). */
export class ReviewDto {
  @WordField(REVIEW_KINDS)
  kind: ReviewKind;

  @DayField()
  reviewedOn: string;

  @HoursField({ nullable: true, description: 'Ground training; null when not recorded' })
  groundH?: number | null;

  @HoursField({ nullable: true, description: 'Flight training; null when not recorded' })
  flightH?: number | null;

  @WordField(AIRCRAFT_CATEGORIES, { nullable: true, description: 'Category it was flown in' })
  category?: AircraftCategory | null;

  @FlagField({
    optional: true,
    description: 'An instrument proficiency check that was endorsed as a flight review too',
  })
  endorsedAsReview?: boolean;
}

/** Changes to a review. */
export class ReviewChanges extends ChangesOf(ReviewDto) {}

/** A review as the API shows it. */
export class ReviewView extends PaperViewOf(ReviewDto) {}

/** Flight reviews and what stands for them. */
export const REVIEWS = paperKind<Review, ReviewDto, ReviewView>({
  path: 'reviews',
  name: { one: 'Review', many: 'Reviews' },
  noun: 'flight review or check',
  entity: Review,
  draft: ReviewDto,
  patch: ReviewChanges,
  view: ReviewView,
  values: ({ groundH, flightH, ...draft }) => ({
    ...draft,
    groundTenths: tenthsOf(groundH),
    flightTenths: tenthsOf(flightH),
  }),
  views: async (_em, rows) =>
    rows.map((row) =>
      showPaper(ReviewView, row, { groundH: hoursOf(row.groundTenths), flightH: hoursOf(row.flightTenths) }),
    ),
});
