/** What the pages show of a derivation and of the rule book (see /api/v1/openapi.json for the whole). */
import type { Finding, Status } from './types.js';

export interface WhyRecord {
  id: string | null;
  kind: string;
  says: string;
  counted: string | null;
}

export interface WhyFact {
  key: string;
  words: string;
  whose: string | null;
  known: boolean;
  because: string | null;
  firmnessWord: string | null;
  lastKnownAt: string | null;
  records: WhyRecord[];
  more: number;
  nothing: string | null;
}

export interface WhyNumber {
  id: string;
  title: string;
  says: string;
  from: string | null;
  to: string | null;
  reference: string;
  ofClub: boolean;
  checkedOn: string | null;
}

export interface Branch {
  name: string;
  status: Status;
  statusWord: string;
  says: string;
}

export interface Body {
  version: number;
  from: string | null;
  to: string | null;
  inForce: boolean;
  citation: Finding['citation'];
  sourceWord: string;
}

export interface Derivation {
  finding: Finding;
  statusWord: string;
  weightSays: string;
  bindsWord: string;
  withheld: string | null;
  note: string | null;
  facts: WhyFact[];
  unread: { key: string; words: string }[];
  request: string[];
  sun: { field: string; says: string[] }[];
  numbers: WhyNumber[];
  body: Body | null;
  branches: (Branch & { taken: boolean })[];
  change: {
    at: string | null;
    says: string;
    then: { statusWord: string; says: string; conditions: string[] } | null;
  } | null;
}

export interface DatedValue {
  from: string | null;
  to: string | null;
  says: string;
  reference: string;
}

export interface RuleParameter {
  id: string;
  title: string;
  ofClub: boolean;
  checkedOn: string | null;
  inForce: DatedValue | null;
  history: DatedValue[];
}

/** A rule as it stands in the book's list. */
export interface RuleListed {
  id: string;
  title: string;
  weight: 'law' | 'club' | 'advice';
  weightWord: string;
  bindsWord: string;
  inForce: Body | null;
  branches: Branch[];
  numbers: { id: string; title: string; says: string; ofClub: boolean }[];
}

/** The whole rule. */
export interface Rule extends Omit<RuleListed, 'numbers'> {
  weightSays: string;
  whenUnknown: string | null;
  bodies: Body[];
  reads: { key: string; words: string }[];
  parameters: RuleParameter[];
  cures: { act: string; example: string }[];
}

export interface RuleBook {
  on: string;
  jurisdiction: string;
  items: RuleListed[];
  caution: string;
}
