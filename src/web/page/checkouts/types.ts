/** What the checkout pages read (see /api/v1/openapi.json for the whole). */

export interface Named {
  id: string;
  name: string;
}

export type Kind = 'model' | 'differences' | 'annual-check' | 'equipment' | 'condition';
export type State = 'not-begun' | 'in-progress' | 'ready' | 'standing' | 'ending' | 'ended';

/** An item of a checkout, and how far it is. */
export interface Item {
  itemId: string;
  position: number;
  title: string;
  standard: string;
  required: boolean;
  state: 'open' | 'signed' | 'not-yet';
  mark: { id: string; on: string; signedBy: Named; note: string } | null;
}

/** How far a member is with one checkout. */
export interface Progress {
  requirementId: string | null;
  kind: Kind;
  modelId: string | null;
  equipmentGroup: string | null;
  condition: string | null;
  subject: string;
  title: string;
  difference: {
    id: string;
    aircraftId: string;
    registration: string;
    title: string;
    since: string;
  } | null;
  state: State;
  ready: boolean;
  goodDays: number | null;
  signOff: {
    checkoutId: string;
    signedOn: string;
    expiresOn: string | null;
    signedBy: Named;
    likeModel: boolean;
  } | null;
  items: Item[];
  itemsLeft: number;
  quiz: {
    questions: number;
    passPercent: number;
    state: 'to-do' | 'open' | 'wait' | 'passed';
    bestPercent: number | null;
    notBefore: string | null;
    passedOn: string | null;
  } | null;
  prerequisites: { requirementId: string; title: string; standing: boolean }[];
  youMaySign: boolean;
}

export interface MemberProgress {
  member: Named;
  checkouts: Progress[];
  caution: string;
}

export interface Student {
  member: Named;
  because: ('booked' | 'signed' | 'in-progress')[];
  nextFlightAt: string | null;
  left: Progress[];
}

export interface Students {
  students: Student[];
  caution: string;
}

/** A quiz as it is asked, and as it was scored. */
export interface Attempt {
  id: string;
  title: string;
  startedAt: string;
  result: {
    handedInAt: string;
    rightCount: number;
    askedCount: number;
    passPercent: number;
    passed: boolean;
  } | null;
}
export interface WholeAttempt extends Attempt {
  questions: Question[];
  caution: string;
}
export interface Question {
  id: string;
  topic: Topic;
  kind: 'single' | 'multiple' | 'number';
  text: string;
  choices: { letter: string; text: string }[];
  unit: string | null;
  scored: {
    chosen: string[];
    value: number | null;
    right: boolean;
    rightLetters: string[];
    rightValue: number | null;
    tolerance: number | null;
    reference: string;
  } | null;
}
export type Topic = 'limits' | 'systems' | 'emergency-memory';

/** A checkout the club has laid down. */
export interface Requirement {
  id: string;
  rowVersion: number;
  kind: Exclude<Kind, 'differences'>;
  subject: string;
  modelId: string | null;
  equipmentGroup: string | null;
  alsoCalled: string[];
  retired: boolean;
  instructors: Named[];
  inForce: Version | null;
  draft: Version | null;
}
export interface Version {
  id: string;
  number: number;
  title: string;
  goodDays: number | null;
  prerequisites: { requirementId: string; title: string }[];
  alsoModels: { id: string; makeModel: string }[];
  quiz: { questions: number; passPercent: number } | null;
  items: { id: string; title: string; standard: string; manoeuvre?: string | null; required?: boolean }[];
  publishedAt: string | null;
}

/** A question of the bank, with its answer. */
export interface BankQuestion {
  id: string;
  rowVersion: number;
  topic: Topic;
  kind: Question['kind'];
  text: string;
  choices: { text: string; right: boolean }[];
  rightValue: number | null;
  tolerance: number | null;
  unit: string | null;
  reference: string;
  state: 'draft' | 'published' | 'retired';
}

export interface Model {
  id: string;
  makeModel: string;
}
