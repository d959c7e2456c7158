/** The parts of the practice API's answers that the page shows. */

export interface RustList {
  model: string;
  caution: string;
  items: {
    key: string;
    title: string;
    condition: string;
    rust: number;
    spaced: number;
    halfLifeDays: number | null;
    says: string[];
  }[];
}

export interface Plan {
  totalH: number;
  totalMinutes: number;
  transitMinutes: number;
  dual: boolean;
  notes: string[];
  cautions: string[];
  items: {
    manoeuvre: string;
    title: string;
    condition: string;
    times: number;
    minutes: number;
    withInstructor: boolean;
    tolerances: string[];
    document: string | null;
    why: string[];
  }[];
  leftOut: { title: string; condition: string; why: string[] }[];
}

export interface PracticeRecord {
  id: string;
  title: string;
  manoeuvre: string;
  level: string;
  flownOn: string;
  measured: Record<string, { least: number; most: number } | null | undefined> | null;
  night: boolean | null;
  crosswindKt: number | null;
  gustSpreadKt: number | null;
  equipment: string[] | null;
  logEntryId: string | null;
  runwayFt: number | null;
  toStandard: boolean | null;
  note: string;
  seenBy: 'self' | 'instructor';
  instructor: { id: string; name: string } | null;
  trackEvent: string | null;
  because: string | null;
  withdraws: boolean;
  correctedBy: string | null;
  verdict: {
    status: 'judged' | 'no-edition' | 'task-not-asked';
    document: string | null;
    within: boolean | null;
    measures: { measure: string; within: boolean }[];
  };
}

export interface TrackReading {
  trackSha256: string;
  from: string;
  to: string;
  picture: { at: string; latitudeDeg: number; longitudeDeg: number }[];
  events: {
    id: string;
    kind: string;
    at: string;
    airfield: string | null;
    runway: string | null;
    fullStop: boolean | null;
    bankDeg: number | null;
    windFromDeg: number | null;
    windKt: number | null;
    until: string;
    altitudeDevFt: { least: number; most: number } | null;
    confidence: number;
    factors: { says: string; factor: number }[];
  }[];
  log: {
    field: string;
    value: string | number | boolean | null;
    evidence: string[];
    confidence: number;
    caveats: string[];
  }[];
  practice: {
    event: string;
    title: string;
    record: Record<string, unknown>;
    confidence: number;
    caveats: string[];
    onRecord: boolean;
  }[];
  unseen: string[];
  loggedAlready: string | null;
  caution: string;
}
