/** Answers of the squawk endpoints, as far as the pages show them. */
import type { Answer } from '../api/types.js';

export interface Aircraft {
  id: string;
  registration: string;
  makeModel: string;
}
export interface Equipment {
  id: string;
  name: string;
  removedOn: string | null;
}
export interface Photo {
  id: string;
}
export type State = 'reported' | 'grounding' | 'deferred' | 'fixed' | 'no-fault-found' | 'duplicate';
export interface Part {
  partNumber: string;
  serialNumber: string | null;
  name: string;
  quantity: number;
}
export interface Squawk {
  id: string;
  aircraftId: string;
  title: string;
  detail: string;
  equipmentId: string | null;
  reportedAt: string;
  reportedBy: string;
  state: State;
  closedAt: string | null;
  correctiveAction: string | null;
  signedBy: string | null;
  signedCertificate: string | null;
  parts: Part[];
  duplicateOf: string | null;
  duplicates: string[];
  photos: Photo[];
  deferral: { deadlineOn: string | null; openSteps: string[] } | null;
}
export interface Similar {
  items: { squawk: Squawk; likeness: number; sameEquipment: boolean }[];
}
export interface GuideStep {
  id: string;
  paragraph: string;
  question: string;
  answer: 'yes' | 'no' | 'open';
  by: 'record' | 'rules' | 'person';
  field: string | null;
  stops: boolean;
  says: string;
}
export interface Guide {
  outcome: 'no-deferral' | 'open' | 'complete' | 'by-list' | 'club-procedure';
  says: string;
  steps: GuideStep[];
  deadlineOn: string | null;
  source: string;
  caution: string;
}
export interface Effect {
  verdict: 'no' | 'unknown' | 'conditions' | 'none';
  says: { rule: string; title: string; says: string }[];
  conditions: string[];
}
export interface Effects {
  kinds: {
    kind: string;
    title: string;
    because: string | null;
    now: Effect | null;
    then: Effect | null;
  }[];
  bookingsJudged: number;
  bookings: {
    bookingId: string;
    memberName: string;
    departs: string;
    before: Answer;
    after: Answer;
    because: { rule: string; says: string }[];
  }[];
  caution: string;
}
export interface Event {
  at: string;
  byName: string | null;
  what: string;
  changes: { field: string; before: string | null; after: string | null }[];
}
