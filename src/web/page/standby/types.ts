/** What the pages show of standby (see /api/v1/openapi.json for the whole). */
import type { Answer, Booking } from '../api/types.js';

export interface Offer {
  id: string;
  registration: string;
  state: 'open' | 'accepted' | 'declined' | 'expired' | 'withdrawn';
  holds: boolean;
  expiresAt: string;
}

export interface Entry {
  id: string;
  registration: string | null;
  departs: string;
  arrives: string;
  state: 'waiting' | 'booked' | 'withdrawn' | 'over';
  ahead: number;
  offer: Offer | null;
  rowVersion: number;
}

export interface FitPart {
  kind: 'conditions' | 'empty-seats' | 'scarce-features' | 'odd-hours';
  count: number;
  points: number;
  features: string[];
}

export interface Fit {
  aircraftId: string;
  registration: string;
  answer: Answer;
  bookable: boolean;
  points: number;
  parts: FitPart[];
}

export interface BookedAny {
  booking: Booking;
  order: Fit[];
  missedIds: string[];
}
