/** What people are told when the database refuses a member or a paper. Imported for its effect by the module. */
import { registerConstraint } from '../platform/database/constraint-problems.js';
import {
  type ConstraintWords,
  registerChecks,
  registerReferences,
} from '../platform/database/constraint-words.js';

const CHECKS: ConstraintWords[] = [
  ['members_name_chk', 'name', 'Give the name in up to 120 characters.'],
  ['members_email_chk', 'email', 'Give an e-mail address, in lower case.'],
  ['members_standing_chk', 'standing', 'Name one of good, arrears, suspended.'],
  [
    'members_membership_chk',
    'membershipThrough',
    'Membership ends on or after the day it begins. Check both dates.',
  ],
  ['member_roles_role_chk', 'roles', 'Name one of the roles of a club.'],
  [
    'certificates_level_chk',
    'level',
    'Name one of student, sport, recreational, lapl, private, commercial, atp.',
  ],
  [
    'certificates_span_chk',
    'validThrough',
    'A certificate is valid through the day it was issued or a later one. Check both dates.',
  ],
  ['certificate_ratings_kind_chk', 'ratings', 'A rating is one of category-class, instrument, type.'],
  [
    'certificate_ratings_shape_chk',
    'ratings',
    'A rating names a category and class, or a category, or a type, according to its kind.',
  ],
  ['instructor_certificates_ratings_chk', 'ratings', 'Name only the ratings of an instructor certificate.'],
  ['suspensions_one_chk', undefined, 'A suspension belongs to one certificate.'],
  ['suspensions_span_chk', 'to', 'A suspension ends on or after the day it begins. Check both dates.'],
  ['medicals_class_chk', 'class', 'Give the class: 1, 2, 3 or 4.'],
  ['reviews_kind_chk', 'kind', 'Name one of the kinds of reviews.'],
  ['reviews_ground_chk', 'groundH', 'Give hours of ground training, 0 or more.'],
  ['reviews_flight_chk', 'flightH', 'Give hours of flight training, 0 or more.'],
  ['endorsements_kind_chk', 'kind', 'Name one of the kinds of endorsements that the club records.'],
  [
    'endorsements_span_chk',
    'expiresOn',
    'An endorsement is valid through the day it was given or a later one. Check both dates.',
  ],
  ['ratings_kind_chk', 'kind', 'Name one of the kinds of ratings.'],
  [
    'ratings_designator_chk',
    'designator',
    'Name the type of a type rating and the language of a language endorsement; leave it out for the others.',
  ],
  [
    'ratings_span_chk',
    'validThrough',
    'A rating is valid through the day it was issued or a later one. Check both dates.',
  ],
];

const DOCUMENTS = 'A document belongs to one paper of the member.';
CHECKS.push(
  ['documents_media_chk', 'document', 'Send a picture (JPEG, PNG, WebP) or a PDF.'],
  ['documents_size_chk', 'document', 'Send at most 8 MB.'],
  ['documents_one_chk', undefined, DOCUMENTS],
  ['documents_content_chk', 'document', 'Size and digest are those of the content.'],
  ['documents_count_chk', 'document', 'A paper holds six documents at most. Delete one first.'],
  ['documents_append_only', undefined, 'A document is added or deleted, never changed.'],
  ['erasures_reason_chk', 'reason', 'Say why, in 5 to 500 characters.'],
  ['erasures_other_chk', undefined, 'Nobody erases their own data. Ask another administrator.'],
  ['erasures_append_only', undefined, 'An erasure stays on record.'],
);

const PAPERS = [
  'certificates',
  'instructor_certificates',
  'medicals',
  'basic_med',
  'reviews',
  'endorsements',
  'ratings',
];

for (const table of PAPERS) {
  CHECKS.push([
    `${table}_verified_chk`,
    undefined,
    'A verified paper says who verified it and when, or neither.',
  ]);
}

const REFERENCES: ConstraintWords[] = [
  ...PAPERS.flatMap((table): ConstraintWords[] => [
    [
      `${table}_member_fk`,
      undefined,
      'A paper belongs to a member of the club, and a member with papers is not deleted.',
    ],
    [`documents_${table}_fk`, undefined, DOCUMENTS],
    [
      `${table}_verified_fk`,
      undefined,
      'Papers are verified by a member of the club, who is not deleted while papers name them.',
    ],
  ]),
  ['documents_added_fk', undefined, 'A member of the club adds a document.'],
  ['erasures_member_fk', 'memberId', 'The data of a member of the club is erased.'],
  ['erasures_by_fk', undefined, 'A member of the club erases.'],
  ['members_club_id_fkey', undefined, 'A member belongs to a club.'],
  ['member_roles_member_fk', undefined, 'Roles are given to a member of the club.'],
  ['certificate_ratings_certificate_fk', undefined, 'A rating belongs to a certificate.'],
  ['suspensions_certificate_fk', undefined, 'A suspension belongs to a pilot certificate of the club.'],
  ['suspensions_instructor_fk', undefined, 'A suspension belongs to an instructor certificate of the club.'],
  [
    'endorsements_given_fk',
    'givenBy',
    'An endorsement is given by a member of the club, or the name is left out.',
  ],
];

registerChecks(CHECKS);
registerReferences(REFERENCES);
registerConstraint(
  {
    ...{
      constraint: 'members_email_uq',
      code: 'email-taken',
      status: 409,
      title: 'E-mail address already there',
      field: 'email',
    },
    detail: 'Another member of the club has this e-mail address. Look for the member, or check the address.',
  },
  {
    ...{
      constraint: 'certificate_ratings_uq',
      code: 'rating-already-there',
      status: 409,
      title: 'Rating already there',
      field: 'ratings',
    },
    detail: 'The certificate has this rating already. Name each rating once.',
  },
  {
    ...{
      constraint: 'member_roles_pkey',
      code: 'role-already-there',
      status: 409,
      title: 'Role already there',
      field: 'roles',
    },
    detail: 'The member has this role already. Name each role once.',
  },
  {
    ...{ constraint: 'documents_once_uq', code: 'document-already-there', status: 409, field: 'document' },
    ...{
      title: 'Document already there',
      detail: 'This document is with the paper already. Read the list again.',
    },
  },
  {
    ...{ constraint: 'erasures_member_uq', code: 'erased-already', status: 409 },
    ...{ title: 'Erased already', detail: "This member's data was erased before." },
  },
  ...PAPERS.map((table) => ({
    ...{ constraint: `${table}_of_member_uq`, code: 'paper-already-there', status: 409 },
    ...{ title: 'Paper already there', detail: 'It is on record already. Read it again.' },
  })),
);
