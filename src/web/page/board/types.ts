/** What the service says, as far as the board shows it. */
export interface LapseCost {
  bookingId: string;
  registration: string;
  departs: string;
  answer: string;
  alone: boolean;
}
export interface Lapse {
  memberId: string;
  memberName: string;
  rule: string;
  title: string;
  weight: 'law' | 'club';
  on: string;
  inDays: number;
  says: string;
  aircraft: string[] | null;
  costs: LapseCost[];
}
export interface Lapses {
  from: string;
  through: string;
  flight: string;
  members: number;
  lapses: Lapse[];
  lacking: { rule: string; title: string; members: number }[];
  caution: string;
}
export interface Override {
  id: string;
  departs: string;
  memberName: string;
  registration: string;
  ruleId: string;
  officerName: string;
  reason: string;
  reviewOn: string | null;
  review: 'unplanned' | 'planned' | 'due' | 'reviewed';
  reviews: { reviewOn: string | null; finding: string | null; reviewedBy: string }[];
}
export interface Week {
  week: string;
  decisions: number;
}
export interface Refusals {
  from: string;
  through: string;
  asked: Week[];
  rules: { rule: string; title: string; decisions: number; members: number; weeks: Week[] }[];
}
export interface Step {
  id: string;
  what: string;
  responsibleId: string;
  responsibleName: string;
  dueOn: string;
  doneOn: string | null;
  outcome: string | null;
  rowVersion: number;
}
export interface Report {
  id: string;
  kind: 'hazard' | 'occurrence';
  happenedOn: string;
  place: string | null;
  registration: string | null;
  title: string;
  narrative: string;
  confidential: boolean;
  reporterName: string | null;
  state: 'open' | 'closed';
  finding: string | null;
  steps: Step[];
}
export interface Told {
  title: string;
  state: 'open' | 'closed';
  finding: string | null;
  steps: Step[];
}
export interface Paged<T> {
  items: T[];
  nextCursor: string | null;
}
export interface PracticeGap {
  title: string;
  condition: string;
  key: string;
  members: number;
  never: number | null;
  rusty: number | null;
  fresh: number | null;
  middleDays: number | null;
}
export interface PracticeGaps {
  on: string;
  members: number;
  rustFrom: number;
  fewestTold: number;
  gaps: PracticeGap[];
  caution: string;
}
