/** What the service says of accounts and rates. */

export interface MoneyUnit {
  currency: string;
  minorPerUnit: number;
}

export interface ChargeLine {
  kind: 'aircraft' | 'days-away' | 'fuel' | 'fuel-back' | 'instruction';
  quantity: number;
  unit: 'h' | 'min' | 'US gal';
  perUnitMinor: number | null;
  exactMinor: number;
  amountMinor: number;
  rateId: string;
}

export interface Entry extends MoneyUnit {
  id: string;
  memberId: string;
  kind: 'flight' | 'receipt' | 'adjustment' | 'reversal';
  postedOn: string;
  ofDay: string;
  amountMinor: number;
  balanceMinor: number;
  words: string;
  bookingId: string | null;
  chargeNo: number | null;
  lines: ChargeLine[];
  reverses: string | null;
  reversedBy: string | null;
  registration: string | null;
  departedAt: string | null;
  arrivedAt: string | null;
}

export interface Statement extends MoneyUnit {
  memberId: string;
  memberName: string;
  from: string;
  to: string;
  openingMinor: number;
  closingMinor: number;
  overdueMinor: number;
  dueThrough: string | null;
  entries: Entry[];
  rounding: string;
}

export interface Balance {
  memberId: string;
  memberName: string;
  balanceMinor: number;
  overdueMinor: number;
  oldestUnpaidOn: string | null;
}

export interface Rate extends MoneyUnit {
  id: string;
  validFrom: string;
  perHourMinor: number;
  inForce: boolean;
  basis?: 'hobbs' | 'tachometer' | 'clock';
  fuel?: 'wet' | 'dry';
  fuelPerUsGalMinor?: number;
}

export interface Uncharged {
  bookingId: string;
  aircraftId: string;
  registration: string;
  memberId: string;
  memberName: string;
  instructorId: string | null;
  departs: string;
  arrives: string;
}

export interface Estimates {
  currency: string | null;
  minorPerUnit: number | null;
  estimates: {
    aircraftId: string;
    amountMinor: number | null;
    lines: ChargeLine[];
    missing: string | null;
  }[];
}
