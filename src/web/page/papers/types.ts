/** A member's paper of any kind, as its list gives it. */
export interface Paper {
  id: string;
  memberId: string;
  verified: { by: string; at: string } | null;
  rowVersion: number;
  [field: string]: unknown;
}

export interface PaperDocument {
  id: string;
  kind: string;
  paperId: string;
  mediaType: string;
  sizeBytes: number;
  recordedAt: string;
}

export interface Unverified {
  kind: string;
  id: string;
  memberId: string;
  memberName: string;
  documents: number;
}

/** One thing a paper is good for. */
export interface Hold {
  purpose: string;
  through: string | null;
  note: string | null;
}

/** Until when one's papers hold, as of a day. */
export interface PapersHold {
  on: string;
  items: { paperId: string; holds: Hold[] }[];
  caution: string;
}

/** That an officer saw something of a member. */
export interface Check {
  id: string;
  kind: 'identity' | 'citizenship' | 'background';
  seenOn: string;
  expiresOn: string | null;
  voided: { reason: string } | null;
}
