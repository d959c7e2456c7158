/** The season plan as the page shows it. */
export interface SeasonWork {
  id: string;
  title: string;
  kind: 'need' | 'wish';
  week: string;
  dueWeek: string | null;
  shopDays: number;
}

export interface SeasonVisit {
  aircraftId: string;
  registration: string;
  from: string;
  to: string;
  firstDay: string;
  lastDay: string;
  booked: boolean;
  work: SeasonWork[];
  why: string[];
  otherWeeks: { week: string; more: number | null }[];
}

export interface Beside {
  total: number | null;
  left: string[];
}

export interface Season {
  status: 'optimal' | 'found' | 'infeasible' | 'stopped';
  weeks: string[];
  visits: SeasonVisit[];
  wishesLeft: string[];
  cost: Record<
    'booked' | 'expected' | 'life' | 'waiting' | 'visits' | 'wishes' | 'saved' | 'total',
    number
  > | null;
  leastPossible: number | null;
  byHand: Beside | null;
  asBooked: Beside | null;
  tooSoon: string[];
  because: string | null;
  caution: string;
}
