/** A booking as the API shows it. Times are UTC instants; the aircraft is taken from `departs` up to, not including, `arrives`. */
export interface BookingRow {
  id: string;
  kind: 'flight' | 'maintenance' | 'club';
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
  people: { memberId: string; name: string; role: 'pilot' | 'instructor' | 'second-pilot' }[];
  overrides: { ruleId: string; officerId: string; reason: string }[];
  rowVersion: number;
}
