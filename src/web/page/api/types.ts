/** The parts of the API's answers that the pages show (see /api/v1/openapi.json for the whole). */

export type Answer = 'yes' | 'yes-with-conditions' | 'dual-only' | 'ask-officer' | 'no';
export type Status = 'met' | 'short' | 'unknown' | 'not-applicable' | 'error';

export interface Finding {
  rule: string;
  version: number;
  title: string;
  weight: 'law' | 'club' | 'advice';
  status: Status;
  says: string;
  citation: { text: string; status: string; reading?: string };
  counted: { id: string; on: string | null; what: string }[];
  conditions: string[];
  reads: string[];
  remedies: { act: string; title: string; by: string }[];
  until: string | null;
}

export interface Decision {
  id: string;
  aircraft: { id: string; registration: string; makeModel: string };
  memberId: string;
  answer: Answer;
  says: string;
  asOf: string;
  crew: { picId: string | null; picBecause: string; passengers: number };
  findings: Finding[];
  conditions: string[];
  horizon: { until: string | null; becomes: Answer | null; because: string[]; searchedTo: string };
  caution: string;
}

export interface Answers {
  decisions: Decision[];
  caution: string;
}

export interface Booking {
  id: string;
  kind: 'flight' | 'maintenance' | 'club' | 'hold';
  status: 'booked' | 'dispatched' | 'returned' | 'cancelled';
  aircraftId: string;
  registration: string;
  memberId: string;
  memberName: string;
  departs: string;
  arrives: string;
  note: string;
  people: { memberId: string; name: string; role: string }[];
  seriesId: string | null;
  holdUntil: string | null;
  handOver: { id: string; toId: string; toName: string; offeredById: string } | null;
  rowVersion: number;
}

/** What became of the flights of a series. */
export interface Series {
  id: string | null;
  occurrences: {
    departs: string;
    arrives: string;
    booking: Booking | null;
    problem: { code: string; title: string; detail: string } | null;
  }[];
}

export interface Airfield {
  id: string;
  code: string;
  name: string;
}

export interface PersonName {
  id: string;
  name: string;
  instructor: boolean;
}

export interface Me {
  memberId: string;
  name: string;
  roles: string[];
  club: { name: string; slug: string; zone: string };
}

/** RFC 9457 problem document. */
export interface Problem {
  type: string;
  title: string;
  status: number;
  detail: string;
  code: string;
  errors?: { field: string; message: string }[];
  /** Of a block: the bookings that would have to make room. */
  inTheWay?: { bookingId: string; memberName: string; departs: string; arrives: string; kind: string }[];
  /** Of a series: what stands in the way of each flight. */
  occurrences?: Series['occurrences'];
  conflict?: { holder: string; registration: string; departs: string; arrives: string; kind: string };
  requestId?: string;
}
