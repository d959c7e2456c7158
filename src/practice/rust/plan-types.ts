/** What a practice plan is made from and what it says. Every number that is a choice is an argument. */
import type { LocalDate } from '../../rules/calendar/dates.js';
import type { Known, Level, Limits, Measure, Task } from '../tolerances/standards.js';
import type { Condition, Conditions } from './conditions.js';
import type { Rust } from './rust.js';
import type { Said } from './words.js';

/** How one manoeuvre is practised. Minutes are whole. */
export interface Drill {
  manoeuvre: Task;
  /** Away from the airfield, or in its pattern; the way there and back is flown once. */
  where: 'practice-area' | 'pattern';
  /** Place within a flight, small first: easy before hard. */
  order: number;
  setUpMinutes: number;
  minutesEach: number;
  /** Least and most times that are worth it on one flight. */
  least: number;
  most: number;
  /** Never practised without an instructor. */
  alwaysDual: boolean;
}

/** Something a flight booked for later needs. */
export interface BookingNeed {
  bookingId: string;
  on: LocalDate;
  manoeuvre: Task;
  condition: Condition;
}

/** Something a checkout still lacks. */
export interface CheckoutLack {
  checkoutId: string;
  manoeuvre: Task;
  condition: Condition;
  times: number;
}

/** The flight that is planned for. Conditions that nobody can tell yet are null. */
export interface Offer extends Conditions {
  on: LocalDate;
  minutes: number;
  /** To the practice area and back. */
  transitMinutes: number;
  instructor: boolean;
}

export interface PlanSettings {
  /** Below this nothing is practised for rust alone. */
  rustFrom: number;
  /** From here on it is not practised alone. */
  dualFromRust: number;
  weightRust: number;
  weightBooking: number;
  weightCheckout: number;
  /** A booking so many days ahead weighs half as much as one today. */
  bookingHalfDays: number;
  /** What each further repetition is worth of the one before; 0 to 1. */
  repetitionShare: number;
}

/** Starting values, for tests and until a club sets its own: common practice, no source. */
export const PLAN_EXAMPLE: PlanSettings = {
  rustFrom: 0.35,
  dualFromRust: 0.85,
  weightRust: 1,
  weightBooking: 2,
  weightCheckout: 3,
  bookingHalfDays: 14,
  repetitionShare: 0.5,
};

export interface PlanInput {
  /** Whose standards hold, the first that asks for the task before the next: instrument, commercial. */
  levels: readonly Level[];
  offer: Offer;
  drills: readonly Drill[];
  /** What is watched for rust; bookings and checkouts are looked at besides. */
  watched: readonly { manoeuvre: Task; condition: Condition }[];
  bookings: readonly BookingNeed[];
  checkouts: readonly CheckoutLack[];
  /** Rust of a manoeuvre in a condition on the day of the flight. */
  rustOf: (manoeuvre: Task, condition: Condition) => Rust;
  settings: PlanSettings;
}

export interface PlanTolerance {
  document: string;
  known: Known;
  limits: Partial<Record<Measure, Limits>>;
}

export interface PlanItem {
  manoeuvre: Task;
  condition: Condition;
  times: number;
  minutes: number;
  /** Null where the level's standard has none. */
  tolerance: PlanTolerance | null;
  withInstructor: boolean;
  /** The flight may or may not offer the condition. */
  ifOffered: boolean;
  rust: number;
  why: Said[];
}

export interface LeftOut {
  manoeuvre: Task;
  condition: Condition;
  reason: 'no-time' | 'not-offered' | 'no-instructor' | 'no-drill';
  why: Said[];
}

export interface PracticePlan {
  /** In the order to be flown. */
  items: PlanItem[];
  leftOut: LeftOut[];
  /** An instructor is needed for at least one item. */
  dual: boolean;
  minutes: { items: number; transit: number; total: number; available: number };
  /** Rounded up. */
  totalTenths: number;
  cautions: Said[];
}
