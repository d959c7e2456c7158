import { DayField, TextField, WordField } from '../../platform/http/fields.js';
import { ChangesOf } from '../../platform/http/views.js';
import type { RatingKind } from '../../rules/facts/person.js';
import { RATING_KINDS } from '../vocabulary.js';
import { PaperViewOf, showPaper } from './paper.dto.js';
import { paperKind } from './paper-kind.js';
import { Rating } from './rating.entity.js';

/** A rating as endorsed on a European licence (FCL.740, FCL.625, FCL.810, FCL.055). */
export class RatingDto {
  @WordField(RATING_KINDS)
  kind: RatingKind;

  @TextField({
    nullable: true,
    max: 30,
    description: 'Type designator of a type rating, language of a language endorsement; null for the others',
  })
  designator?: string | null;

  @DayField({ description: 'When it was issued, or revalidated or renewed last' })
  issuedOn: string;

  @DayField({ nullable: true, description: 'Last valid date as endorsed; null where it does not end' })
  validThrough?: string | null;
}

/** Changes to a rating. */
export class RatingChanges extends ChangesOf(RatingDto) {}

/** A rating as the API shows it. */
export class RatingView extends PaperViewOf(RatingDto) {}

/** Ratings with an end; their columns have the names of the API. */
export const RATINGS = paperKind<Rating, RatingDto, RatingView>({
  path: 'ratings',
  name: { one: 'Rating', many: 'Ratings' },
  noun: 'rating on a licence',
  entity: Rating,
  draft: RatingDto,
  patch: RatingChanges,
  view: RatingView,
  values: (draft) => ({ ...draft }),
  views: async (_em, rows) => rows.map((row) => showPaper(RatingView, row)),
});
