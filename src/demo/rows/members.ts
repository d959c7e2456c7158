/** Rows about members and their papers. */
import type { Instant, LocalDate } from '../../rules/index.js';
import type { Recorded, Row } from './row.js';

interface Paper extends Recorded {
  member_id: string;
  verified_by: string | null;
  verified_at: Instant | null;
}

export interface MemberRow extends Recorded {
  name: string;
  email: string;
  birth_date: LocalDate;
  standing: 'good' | 'arrears' | 'suspended';
  standing_since: LocalDate;
  membership_from: LocalDate;
  membership_through: LocalDate | null;
}
/** Limits beyond the law, as somebody set them. */
export interface PersonalLimitsRow extends Recorded {
  member_id: string;
  set_by: string;
  valid_from: LocalDate;
  binds_through: LocalDate | null;
  wind_kt: number | null;
  crosswind_kt: number | null;
  gust_spread_kt: number | null;
  ceiling_day_ft_agl: number | null;
  ceiling_night_ft_agl: number | null;
  visibility_day_sm: number | null;
  visibility_night_sm: number | null;
  runway_ft: number | null;
  night: boolean | null;
  note: string;
}
export interface MemberRoleRow extends Row {
  member_id: string;
  role: 'member' | 'instructor' | 'safety-officer' | 'maintenance-coordinator' | 'administrator';
}
/** The password's hash is made when the rows are loaded. */
export interface AccountRow extends Recorded {
  member_id: string;
  email: string;
}
export interface CertificateRow extends Paper {
  level: 'student' | 'sport' | 'recreational' | 'lapl' | 'private' | 'commercial' | 'atp';
  issued_on: LocalDate;
  valid_through: LocalDate | null;
  limitations: string[];
}
export interface CertificateRatingRow extends Row {
  id: string;
  certificate_id: string;
  kind: 'category-class' | 'instrument' | 'type';
  category: string | null;
  class: string | null;
  type_designator: string | null;
}
export interface InstructorCertificateRow extends Paper {
  issued_on: LocalDate;
  ratings: string[];
  recent_experience_on: LocalDate | null;
  printed_end_on: LocalDate | null;
}
export interface MedicalRow extends Paper {
  class: 1 | 2 | 3;
  exam_on: LocalDate;
  limitations: string[];
  withdrawn_on: LocalDate | null;
}
export interface BasicMedRow extends Paper {
  exam_on: LocalDate;
  course_on: LocalDate;
  licence_valid_through: LocalDate;
  held_medical_after_2006_07_14: boolean;
  last_application_denied: boolean;
  last_certificate_revoked_or_suspended: boolean;
}
export interface ReviewRow extends Paper {
  kind: string;
  reviewed_on: LocalDate;
  ground_tenths: number | null;
  flight_tenths: number | null;
  category: string | null;
  endorsed_as_review: boolean;
}
export interface EndorsementRow extends Paper {
  kind: string;
  endorsed_on: LocalDate;
  make_model: string | null;
  airfields: string[];
  expires_on: LocalDate | null;
  given_by: string | null;
}
/** A scan beside a medical or a certificate; the content as PostgreSQL writes bytes. */
export interface DocumentRow extends Recorded {
  member_id: string;
  added_by: string;
  medical_id: string | null;
  certificate_id: string | null;
  media_type: string;
  size_bytes: number;
  sha256: string;
  content: string;
}
