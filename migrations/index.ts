/** Every migration, in order. Listed by name: a file that is not here does not run. */
import { Clubs1764000000001 } from './0001-clubs.js';
import { Members1764000000002 } from './0002-members.js';
import { Fleet1764000000003 } from './0003-fleet.js';
import { Log1764000000004 } from './0004-log.js';
import { Bookings1764000000005 } from './0005-bookings.js';
import { ClubRules1764000000006 } from './0006-club-rules.js';
import { DecisionChain1764000000007 } from './0007-decision-chain.js';
import { ForeignPapers1764000000008 } from './0008-foreign-papers.js';
import { EquipmentChanges1764000000009 } from './0009-equipment-changes.js';
import { UpgradeWishes1764000000010 } from './0010-upgrade-wishes.js';
import { Squawks1764000000011 } from './0011-squawks.js';
import { WorkOrders1764000000012 } from './0012-work-orders.js';
import { Directives1764000000013 } from './0013-directives.js';
import { Loading1764000000014 } from './0014-loading.js';
import { Documents1764000000015 } from './0015-documents.js';
import { Practice1764000000016 } from './0016-practice.js';
import { ReportsAndReviews1764000000017 } from './0017-reports-and-reviews.js';
import { LogConditions1764000000018 } from './0018-log-conditions.js';
import { LogImports1764000000019 } from './0019-log-imports.js';
import { CheckoutSyllabus1764000000020 } from './0020-checkout-syllabus.js';
import { PersonalLimits1764000000021 } from './0021-personal-limits.js';
import { InsuranceAndIdentity1764000000022 } from './0022-insurance-and-identity.js';
import { StandingAnswers1764000000024 } from './0024-standing-answers.js';
import { StartingValues1764000000025 } from './0025-starting-values.js';
import { DispatchReturn1764000000026 } from './0026-dispatch-return.js';
import { BookingChanges1764000000027 } from './0027-booking-changes.js';
import { Standby1764000000028 } from './0028-standby.js';
import { WeatherReports1764000000029 } from './0029-weather-reports.js';
import { WeatherValues1764000000030 } from './0030-weather-values.js';
import { Notices1764000000031 } from './0031-notices.js';
import { Feeds1764000000032 } from './0032-feeds.js';
import { NoticeValues1764000000033 } from './0033-notice-values.js';
import { Charges1764000000034 } from './0034-charges.js';
import { ChargeValues1764000000035 } from './0035-charge-values.js';
import { DueBack1764000000036 } from './0036-due-back.js';
import { WeatherRounds1764000000037 } from './0037-weather-rounds.js';
import { FactMarks1764000000038 } from './0038-fact-marks.js';
import { Progressive1764000000039 } from './0039-progressive.js';

export const MIGRATIONS = [
  Clubs1764000000001,
  Members1764000000002,
  Fleet1764000000003,
  Log1764000000004,
  Bookings1764000000005,
  ClubRules1764000000006,
  DecisionChain1764000000007,
  ForeignPapers1764000000008,
  EquipmentChanges1764000000009,
  UpgradeWishes1764000000010,
  Squawks1764000000011,
  WorkOrders1764000000012,
  Directives1764000000013,
  Loading1764000000014,
  Documents1764000000015,
  Practice1764000000016,
  ReportsAndReviews1764000000017,
  LogConditions1764000000018,
  LogImports1764000000019,
  CheckoutSyllabus1764000000020,
  PersonalLimits1764000000021,
  InsuranceAndIdentity1764000000022,
  StandingAnswers1764000000024,
  StartingValues1764000000025,
  DispatchReturn1764000000026,
  BookingChanges1764000000027,
  Standby1764000000028,
  WeatherReports1764000000029,
  WeatherValues1764000000030,
  Notices1764000000031,
  Feeds1764000000032,
  NoticeValues1764000000033,
  Charges1764000000034,
  ChargeValues1764000000035,
  DueBack1764000000036,
  WeatherRounds1764000000037,
  FactMarks1764000000038,
  Progressive1764000000039,
];
