import { BASIC_MED } from '../papers/basic-med.js';
import { CERTIFICATES } from '../papers/certificates.js';
import { ENDORSEMENTS } from '../papers/endorsements.js';
import { INSTRUCTOR_CERTIFICATES } from '../papers/instructor-certificates.js';
import { MEDICALS } from '../papers/medicals.js';
import type { Paper } from '../papers/paper.entity.js';
import type { PaperKind } from '../papers/paper-kind.js';
import { RATINGS } from '../papers/ratings.js';
import { REVIEWS } from '../papers/reviews.js';
import type { PaperDocument } from './document.entity.js';

/** Every kind of paper, with the columns that tie a document to one. */
const kind = (
  of: unknown,
  key: Exclude<keyof PaperDocument & `${string}Id`, 'clubId' | 'memberId' | 'paperId'>,
  table: string,
  column: string,
) => ({ kind: of as PaperKind<Paper>, key, table, column });

export const DOCUMENT_KINDS = [
  kind(CERTIFICATES, 'certificateId', 'certificates', 'certificate_id'),
  kind(
    INSTRUCTOR_CERTIFICATES,
    'instructorCertificateId',
    'instructor_certificates',
    'instructor_certificate_id',
  ),
  kind(MEDICALS, 'medicalId', 'medicals', 'medical_id'),
  kind(BASIC_MED, 'basicMedId', 'basic_med', 'basic_med_id'),
  kind(REVIEWS, 'reviewId', 'reviews', 'review_id'),
  kind(ENDORSEMENTS, 'endorsementId', 'endorsements', 'endorsement_id'),
  kind(RATINGS, 'ratingId', 'ratings', 'rating_id'),
];
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];
export const KIND_PATHS = DOCUMENT_KINDS.map(({ kind: { path } }) => path);

/** The kind of paper a document is of. */
export const kindOf = (document: PaperDocument): DocumentKind =>
  DOCUMENT_KINDS.find(({ key }) => document[key] !== null)!;
