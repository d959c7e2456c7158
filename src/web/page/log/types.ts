import type { Me } from '../api/types.js';

/** What the log page reads and sends. */
export interface LogCheck {
  check: string;
  field: string;
  outcome: 'fits' | 'flagged' | 'not-checkable';
  written: string;
  computed: string | null;
  says: string;
  source: string | null;
}

/** The hours of an entry, in hours. */
export interface EntryHours {
  totalH: number;
  nightH: number;
  crossCountryH: number;
  actualInstrumentH: number;
  simulatedInstrumentH: number;
  dualGivenH: number;
}

export interface LogEntry extends EntryHours {
  id: string;
  aircraftId: string | null;
  modelId: string | null;
  aircraftWords: string;
  category: string;
  class: string;
  typeRating: string | null;
  tailwheel: boolean;
  departedAt: string;
  arrivedAt: string;
  /** false: a file gave the day alone. */
  timesKnown: boolean;
  flownOn: string;
  fromAirfield: string;
  toAirfield: string;
  role: Role;
  soleManipulator: boolean;
  takeoffs: number;
  landings: number;
  fullStopLandings: number;
  nightTakeoffs: number;
  nightFullStopLandings: number;
  approaches: number;
  holding: boolean;
  interceptTrack: boolean;
  device: string | null;
  remarks: string;
  voidedAt: string | null;
  rowVersion: number;
  checks: LogCheck[];
}

export type Role = 'pilot-in-command' | 'second-in-command' | 'dual-received' | 'instructor' | 'solo';

export interface Sums extends EntryHours {
  flights: number;
  dualReceivedH: number;
  soloH: number;
  commandH: number;
  takeoffs: number;
  landings: number;
  fullStopLandings: number;
  nightTakeoffs: number;
  nightFullStopLandings: number;
  approaches: number;
}

export interface Totals extends Sums {
  on: string;
  deviceH: number;
  deviceInstrumentH: number;
  byCategory: (Sums & { category: string })[];
  byClass: (Sums & { category: string; class: string })[];
  byModel: (Sums & { model: string })[];
  byRole: (Sums & { role: Role })[];
  last90Days: Sums & { from: string; through: string };
}

export interface Requirement {
  rule: string;
  title: string;
  weight: 'law' | 'club';
  citation: string;
  flights: string[];
  aircraft: string[] | null;
  holds: boolean;
  says: string;
  lapsesOn: string | null;
  inDays: number | null;
  counted: { id: string; on: string | null; what: string }[];
  entryIds: string[];
}

export interface Recency {
  on: string;
  through: string;
  requirements: Requirement[];
  caution: string;
}

export interface ClubAircraft {
  id: string;
  registration: string;
  makeModel: string;
  seats: number;
}

export interface ClubModel {
  id: string;
  makeModel: string;
}

/** What is open on the page: whose log, and entries by id. */
export interface Opened {
  whose: string | null;
  ids: string[];
}

export const openedBy = (part: string): Opened => {
  const of = new URLSearchParams(part);
  return { whose: of.get('of'), ids: of.get('ids')?.split(',').filter(Boolean) ?? [] };
};

/** The address at which entries of a log are open. */
export const countedAt = (whose: string, reader: string, ids: readonly string[]): string =>
  `/log#${whose === reader ? '' : `of=${whose}&`}ids=${ids.join(',')}`;

/** May read other members' logs. */
export const readsOthers = ({ roles }: Me): boolean =>
  roles.some((role) => ['instructor', 'safety-officer', 'administrator'].includes(role));
