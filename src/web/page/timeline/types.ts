/** What the pages show of a timeline (see /api/v1/openapi.json for the whole). */
import type { Answer, Decision, Status } from '../api/types.js';

export interface Step {
  from: string;
  to: string;
  answer: Answer;
  inTheWay: { rule: string; title: string }[];
  changed: { rule: string; title: string; was: Status; is: Status; withInstructor: boolean }[];
}

export interface Slot {
  departs: string;
  arrives: string;
  answer: Answer;
}

export interface AircraftTimeline {
  aircraft: Decision['aircraft'];
  steps: Step[];
  firstSlot: Slot | null;
  firstDualSlot: Slot | null;
  horizonNote: string | null;
}

export interface Timelines {
  from: string;
  to: string;
  durationMinutes: number;
  knownAt: string;
  aircraft: AircraftTimeline[];
  across: (Slot & { aircraft: Decision['aircraft'] }) | null;
  caution: string;
}
