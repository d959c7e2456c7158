import type { Aircraft } from '../fleet/aircraft.js';
import type { Person } from '../people/person.js';
import type { Place } from '../places.js';
import type { LocalDate } from '../../rules/index.js';

/** One flight from blocks to blocks. Minutes after midnight of the outing's date; lengths in tenths of an hour. */
export interface Leg {
  from: Place;
  to: Place;
  startMinute: number;
  tenths: number;
  takeoffs: number;
  landings: number;
  fullStops: number;
  approaches: number;
  holding: boolean;
}

/** What one or two people do with an aircraft on one day. */
export interface Outing {
  date: LocalDate;
  aircraft: Aircraft;
  pilot: Person;
  role: 'pilot-in-command' | 'dual-received' | 'solo';
  teacher: Person | null;
  legs: Leg[];
  remarks: string;
}

export const endMinute = (legs: readonly Leg[]): number => {
  const last = legs[legs.length - 1]!;
  return last.startMinute + last.tenths * 6;
};
