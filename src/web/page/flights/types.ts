import type { Booking, Decision } from '../api/types.js';

export type MeterKind = 'hobbs' | 'tachometer' | 'airframe';

/** Meters in the words of the page. */
export const METER_WORD: Record<MeterKind, string> = {
  hobbs: 'Hobbs meter',
  tachometer: 'Tachometer',
  airframe: 'Airframe time',
};

export interface Dispatch {
  id: string;
  dispatchedAt: string;
  personsOnBoard: number;
  fuelUsGal: number;
  oilQt: number | null;
  meters: { kind: MeterKind; shownH: number; gapH: number }[];
  conditionsAccepted: string[];
  takenBack: { reason: string } | null;
}

export interface Entry {
  memberId: string;
  role: string;
  soleManipulator: boolean;
  totalH: number;
  nightH: number;
  crossCountryH: number;
  actualInstrumentH?: number;
  simulatedInstrumentH?: number;
  dualGivenH?: number;
  takeoffs: number;
  landings: number;
  fullStopLandings: number;
  nightTakeoffs: number;
  nightFullStopLandings: number;
  approaches?: number;
  holding?: boolean;
  interceptTrack?: boolean;
}

export interface Returned {
  id: string;
  returnedAt: string;
  because: string | null;
  departedAt: string;
  arrivedAt: string;
  fromAirfield: string;
  toAirfield: string;
  meters: { kind: MeterKind; shownH: number; flownH: number }[];
  fuelUsGal: number | null;
  fuelBoughtUsGal: number;
  fuelPaid: number;
  oilAddedQt: number;
  payerId: string;
  entries: Entry[];
}

/** A booked flight with what became of it. */
export interface Flight {
  booking: Booking;
  planned: { fromAirfield: string; toAirfield: string; personsOnBoard: number } | null;
  dispatch: Dispatch | null;
  return: Returned | null;
  /** Null when it is not out. */
  dueBackAt: string | null;
  overdue: boolean;
  caution: string;
}

export interface Sheet {
  decision: Decision;
  mayGo: boolean;
  setAside: string[];
  squawks: { id: string; title: string; detail: string; state: string; reportedAt: string }[];
  meters: { kind: MeterKind; shownH: number; readAt: string }[];
  selfAssessment: { item: string; asks: string }[];
  selfAssessmentSource: string;
  from: string;
  caution: string;
}

export interface FlightOut {
  bookingId: string;
  registration: string;
  memberName: string;
  dueBackAt: string;
  overdue: boolean;
  mine: boolean;
}
