/** The parts of the limits API's answers that the page shows. */

export type Figure =
  | 'windKt'
  | 'crosswindKt'
  | 'gustSpreadKt'
  | 'ceilingDayFtAgl'
  | 'ceilingNightFtAgl'
  | 'visibilityDaySm'
  | 'visibilityNightSm'
  | 'runwayFt';

/** Null: not limited. Night: false is no flying at night. */
export type Limits = Record<Figure, number | null> & { night: boolean | null };

export interface LimitsSet extends Limits {
  id: string;
  validFrom: string;
  bindsThrough: string | null;
  setBy: { id: string; name: string };
  note: string;
}

export interface Side {
  inForce: LimitsSet | null;
  toCome: LimitsSet[];
}

export interface MemberLimits {
  today: string;
  own: Side;
  instructor: Side;
  looserFrom: string;
  caution: string;
}

export interface Suggestions {
  from: string;
  to: string;
  suggestions: {
    limit: keyof Limits;
    value: number | boolean | null;
    evidence: { id: string; on: string }[];
    says: string;
  }[];
}
