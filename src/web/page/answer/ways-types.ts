/** Ways to yes as the service sends them: what the page shows of them. */

export interface Cost {
  hours: number;
  money: number;
  clubMoney: number;
  days: number;
  points: number;
  total: number;
}

export interface WayStep {
  act: string;
  title: string;
  by:
    | 'member'
    | 'instructor'
    | 'examiner'
    | 'medical-examiner'
    | 'maintenance-coordinator'
    | 'mechanic'
    | 'officer'
    | 'administrator';
  cost: Cost;
  startsOn: string;
  doneBy: string;
  /** The practice flight it is flown on. */
  sortie: number | null;
}

export interface WaySortie {
  number: number;
  says: string;
  departs: string;
  arrives: string;
}

export interface Way {
  steps: WayStep[];
  sorties: WaySortie[];
  cost: Cost;
  rests: ('officer' | 'instructor')[];
  restSays: string[];
  conditions: string[];
}

export interface WaysToYes {
  currency: string;
  plans: Way[];
  none: { says: string; because: { rule: string; title: string; says: string; why: string }[] } | null;
  later: { departs: string; arrives: string; says: string; way: Way } | null;
  bound: 'nodes' | 'time' | null;
  caution: string;
}
