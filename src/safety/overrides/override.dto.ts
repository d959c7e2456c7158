import { DayField, Shown, TextField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ViewOf } from '../../platform/http/views.js';

/** POST of a review. */
export class NewOverrideReview {
  @DayField({ nullable: true, description: 'When it is looked at next, after today; null: not again' })
  reviewOn?: string | null;

  @TextField({
    ...{ max: 2000, nullable: true, pattern: /\S.{3,}\S/s, says: 'a finding of at least 5 characters' },
    description: 'What the review found; needed where it is not looked at again',
  })
  finding?: string | null;
}

export class OverrideReviewView extends ViewOf(NewOverrideReview) {
  @Shown({ type: 'string' })
  reviewedBy: string;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
}

/** An override and how it was reviewed. It is part of the sealed chain and never changes. */
export class OverrideView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', format: 'uuid' })
  bookingId: string;
  @Shown({ type: 'string', format: 'date-time' })
  departs: string;
  @Shown({ type: 'string', description: 'Of the booking' })
  bookingStatus: string;
  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;
  @Shown({ type: 'string' })
  memberName: string;
  @Shown({ type: 'string' })
  registration: string;
  @Shown({ type: 'string' })
  ruleId: string;
  @Shown({ type: 'string' })
  officerName: string;
  @Shown({ type: 'string' })
  reason: string;
  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
  @Shown({ type: 'string', format: 'date', nullable: true, description: 'When it is looked at next' })
  reviewOn: string | null;
  @Shown({
    ...{ type: 'string', enum: ['unplanned', 'planned', 'due', 'reviewed'] },
    description: 'unplanned: no day is set; due: the day has come; reviewed: not looked at again',
  })
  review: 'unplanned' | 'planned' | 'due' | 'reviewed';
  @Shown({ type: () => OverrideReviewView, isArray: true, description: 'Oldest first' })
  reviews: OverrideReviewView[];
}

export class OverridePage extends PageShape {
  @Shown({ type: () => OverrideView, isArray: true })
  items: OverrideView[];
}
