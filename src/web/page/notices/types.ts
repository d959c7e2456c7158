/** What the pages show of notices, mail and feeds (see /api/v1/openapi.json for the whole). */

export interface Notice {
  id: string;
  kind: string;
  heading: string;
  occurredAt: string;
  urgent: boolean;
  items: { title: string; says: string[]; ways: string[]; link: string }[];
  mail: 'gathering' | 'none' | 'waiting' | 'sent' | 'given-up';
  mailAt: string | null;
  readAt: string | null;
}

export interface NoticesPageOf {
  items: Notice[];
  nextCursor: string | null;
  unread: number;
  caution: string;
}

export type Delivery = 'now' | 'daily' | 'off';

export interface Preferences {
  choices: { kind: string; title: string; mayBeOff: boolean; delivery: Delivery }[];
  quietFrom: string | null;
  quietTo: string | null;
  digestHour: number;
  zone: string;
  email: string;
  mailGoesOut: boolean;
  rowVersion: number;
}

export interface Feed {
  id: string;
  shows: 'own' | 'aircraft' | 'club';
  aircraftId: string | null;
  title: string;
  madeAt: string;
}

export interface GivenUpMail {
  id: string;
  memberName: string;
  about: string[];
  attempts: number;
  fault: string;
  dueAt: string;
}
