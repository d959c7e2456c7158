import { MemberCheck, MemberCheckVoid } from './checks/member-check.entity.js';
import { PaperDocument } from './documents/document.entity.js';
import { PersonalLimits } from './limits/limits.entity.js';
import { Member, MemberRole } from './member.entity.js';
import { Certificate, CertificateRating } from './papers/certificate.entity.js';
import { Endorsement } from './papers/endorsement.entity.js';
import { InstructorCertificate } from './papers/instructor-certificate.entity.js';
import { BasicMed, Medical } from './papers/medical.entity.js';
import { Rating } from './papers/rating.entity.js';
import { Review } from './papers/review.entity.js';
import { SuspensionRow } from './papers/suspension.entity.js';

/** Entities of this folder, for the data source. */
export const MEMBER_ENTITIES = [
  Member,
  MemberRole,
  Certificate,
  CertificateRating,
  InstructorCertificate,
  SuspensionRow,
  Medical,
  BasicMed,
  Review,
  Endorsement,
  Rating,
  PaperDocument,
  PersonalLimits,
  MemberCheck,
  MemberCheckVoid,
];
