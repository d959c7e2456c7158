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
