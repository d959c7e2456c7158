/** A booking as the API shows it. Times are UTC instants; the aircraft is taken from `departs` up to, not including, `arrives`. */
export interface BookingRow {
  id: string;
  kind: 'flight' | 'maintenance' | 'club' | 'hold';
  status: 'booked' | 'dispatched' | 'returned' | 'cancelled';
  aircraftId: string;
  registration: string;
  memberId: string;
  memberName: string;
  departs: string;
  arrives: string;
  expectedTenths: number;
  note: string;
  decisionId: string | null;
  /** The series it was booked with. */
  seriesId: string | null;
  /** A hold's: until when it keeps the slot. */
  holdUntil: string | null;
  cancelledAt: string | null;
  cancelledLate: boolean;
  cancelReason: string;
  people: { memberId: string; name: string; role: 'pilot' | 'instructor' | 'second-pilot' }[];
  /** Of the decision it stands on; those of a decision before an edit no longer count. */
  overrides: { ruleId: string; officerId: string; reason: string }[];
  /** The offer to another member that is open. */
  handOver: { id: string; toId: string; toName: string; offeredById: string } | null;
  rowVersion: number;
}
