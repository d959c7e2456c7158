/** Rows of the demo club, table by table, named as in the database. What the database makes up itself is left out. */
import type { FlightAsk } from './flight-ask.js';
import type { ClubRow, AirfieldRow, ClubRuleRow, RunwayRow, PolicyRow } from './rows/club.js';
import type {
  PersonalLimitsRow,
  MemberRow,
  MemberRoleRow,
  AccountRow,
  CertificateRow,
  CertificateRatingRow,
  InstructorCertificateRow,
  MedicalRow,
  BasicMedRow,
  ReviewRow,
  EndorsementRow,
} from './rows/members.js';
import type {
  ModelRow,
  AircraftRow,
  RegistrationRow,
  EquipmentRow,
  WeighingRow,
  LoadingSheetRow,
  PerformanceSheetRow,
} from './rows/fleet.js';
import type {
  MeterReadingRow,
  ItemRow,
  ComplianceRow,
  SquawkRow,
  DeferralRow,
  DifferencesRow,
  UpgradeWishRow,
  DirectiveRow,
  DirectiveModelRow,
  SignerRow,
  WorkOrderRow,
  WorkLineRow,
} from './rows/maintenance.js';
import type {
  RequirementRow,
  VersionRow,
  SyllabusItemRow,
  PrerequisiteRow,
  TransferRow,
  AuthorityRow,
  MarkRow,
  QuestionRow,
  AttemptRow,
  DrawnRow,
  QuizResultRow,
} from './rows/checkouts.js';
import type { ChargeRateRow } from './rows/accounts.js';
import type { InsuranceNamedPilotRow, InsuranceTermsRow, MemberCheckRow } from './rows/insurance.js';
import type { LogEntryRow, CheckoutRow, BlockRow, PracticeRow } from './rows/flying.js';

export type * from './rows/club.js';
export type * from './rows/members.js';
export type * from './rows/fleet.js';
export type * from './rows/maintenance.js';
export type * from './rows/flying.js';
export type * from './rows/checkouts.js';
export type * from './rows/insurance.js';
export type * from './rows/accounts.js';

/** All rows by table, in an order in which they can be inserted. */
export interface DemoRows {
  clubs: ClubRow[];
  airfields: AirfieldRow[];
  runways: RunwayRow[];
  policy_values: PolicyRow[];
  members: MemberRow[];
  member_roles: MemberRoleRow[];
  accounts: AccountRow[];
  club_rules: ClubRuleRow[];
  certificates: CertificateRow[];
  certificate_ratings: CertificateRatingRow[];
  instructor_certificates: InstructorCertificateRow[];
  medicals: MedicalRow[];
  basic_med: BasicMedRow[];
  reviews: ReviewRow[];
  endorsements: EndorsementRow[];
  aircraft_models: ModelRow[];
  aircraft: AircraftRow[];
  registrations: RegistrationRow[];
  weighings: WeighingRow[];
  loading_sheets: LoadingSheetRow[];
  performance_sheets: PerformanceSheetRow[];
  insurance_terms: InsuranceTermsRow[];
  insurance_named_pilots: InsuranceNamedPilotRow[];
  member_checks: MemberCheckRow[];
  equipment: EquipmentRow[];
  meter_readings: MeterReadingRow[];
  directives: DirectiveRow[];
  directive_models: DirectiveModelRow[];
  airworthiness_items: ItemRow[];
  compliances: ComplianceRow[];
  squawks: SquawkRow[];
  deferrals: DeferralRow[];
  differences: DifferencesRow[];
  upgrade_wishes: UpgradeWishRow[];
  log_entries: LogEntryRow[];
  /** Signed before anything was laid down for them. */
  checkouts: CheckoutRow[];
  checkout_requirements: RequirementRow[];
  checkout_versions: VersionRow[];
  checkout_items: SyllabusItemRow[];
  checkout_prerequisites: PrerequisiteRow[];
  checkout_transfers: TransferRow[];
  checkout_instructors: AuthorityRow[];
  checkout_marks: MarkRow[];
  quiz_questions: QuestionRow[];
  quiz_attempts: AttemptRow[];
  quiz_drawn: DrawnRow[];
  quiz_results: QuizResultRow[];
  practice_records: PracticeRow[];
  personal_limits: PersonalLimitsRow[];
  bookings: BlockRow[];
  signers: SignerRow[];
  work_orders: WorkOrderRow[];
  work_lines: WorkLineRow[];
  charge_rates: ChargeRateRow[];
}

/** A flight the demo would like to book: it is booked when the engine's answer allows it. */
export interface FlightWish {
  id: string;
  memberId: string;
  instructorId: string | null;
  aircraftId: string;
  ask: FlightAsk;
}
