export interface StatusTime {
  kind: 'hobbs' | 'tachometer' | 'airframe';
  shownH: number;
  totalH: number;
  readAt: string;
  countsForInspections: boolean;
}

export interface StatusItem {
  id: string;
  kind: string;
  title: string;
  reference: string | null;
  scope: string;
  calendarMonths: number | null;
  plainMonths: number | null;
  days: number | null;
  intervalH: number | null;
  fixedDueOn: string | null;
  fixedDueH: number | null;
  recurring: boolean;
  equipment: { name: string; serialNumber: string | null } | null;
  last: { doneOn: string; doneH: number | null; signedBy: string } | null;
  state: 'overdue' | 'never-done' | 'unknown' | 'running' | 'settled';
  nextDueOn: string | null;
  nextDueH: number | null;
  leftDays: number | null;
  leftH: number | null;
}

export interface StatusPiece {
  id: string;
  kind: string;
  name: string;
  basis: string;
  document: string | null;
  partNumber: string | null;
  serialNumber: string | null;
  weightLb: number | null;
  armIn: number | null;
  requiredByTypeDesign: boolean;
  installedOn: string;
  removedOn: string | null;
}

export interface StatusWeight {
  effectiveOn: string | null;
  emptyWeightLb: number;
  emptyArmIn: number | null;
  emptyMomentLbIn: number | null;
  usefulLoadLb: number | null;
  source: string;
  note: string;
}

export interface StatusSquawk {
  id: string;
  title: string;
  detail: string;
  state: 'reported' | 'grounding' | 'deferred';
  reportedAt: string;
  deferredOn: string | null;
  deadlineOn: string | null;
  openSteps: string[];
}

export interface Status {
  on: string;
  zone: string;
  aircraft: {
    id: string;
    registration: string;
    makeModel: string;
    serialNumber: string | null;
    manufacturedOn: string | null;
  };
  times: StatusTime[];
  items: StatusItem[];
  directives: StatusItem[];
  equipment: StatusPiece[];
  weight: StatusWeight | null;
  squawks: StatusSquawk[];
  cautions: string[];
  caution: string;
  printedBy: string;
  printedAt: string;
}

export interface ImportRow {
  line: number;
  section: string;
  title: string;
  outcome: 'added' | 'done-again' | 'unchanged' | 'left-out' | 'refused';
  writes: string[];
  warnings: string[];
  because: string | null;
}

export interface ImportResult {
  preview: string;
  columns: { heading: string; fields: string[]; unit: string | null; note: string | null }[];
  dates: string;
  rows: ImportRow[];
  counts: { added: number; doneAgain: number; unchanged: number; leftOut: number; refused: number };
  bookingsJudged: number;
  bookings: { bookingId: string; memberName: string; departs: string; before: string; after: string }[];
  caution: string;
}
