import type { Role } from '../../accounts/roles.js';

/** When mail of a kind goes out: at once, with the day's, or not at all. It stands on the page in any case. */
export const DELIVERIES = ['now', 'daily', 'off'] as const;
export type Delivery = (typeof DELIVERIES)[number];

/** What a kind of notice is about. */
export interface NoticeKind {
  /** As it stands among the preferences. */
  title: string;
  /** Of one item, and of several. */
  heading: (count: number) => string;
  /** Unless the person chose otherwise. */
  delivery: Delivery;
  /** Whether mail of it may be turned off. What a flight's safety hangs on may not. */
  mayBeOff: boolean;
  /** Who gets such notices; without it, anybody. */
  for?: readonly Role[];
}

/**
 * Every kind of notice. A new one is a line here and a call of `postNotice` where the thing happens; preferences, mail
 * and the page follow from this.
 */
export const NOTICE_KINDS = {
  'flight-answer': {
    title: 'A flight of yours is answered otherwise than before',
    heading: (count) =>
      count === 1
        ? 'A booked flight of yours is answered otherwise now'
        : `${count} booked flights of yours are answered otherwise now`,
    delivery: 'now',
    mayBeOff: false,
  },
  'flight-displaced': {
    title: 'A flight of yours has to make room for the shop',
    heading: (count) =>
      count === 1 ? 'A flight of yours had to make room' : `${count} flights of yours had to make room`,
    delivery: 'now',
    mayBeOff: false,
  },
  overdue: {
    title: 'An aircraft you are named for is not back',
    heading: (count) => (count === 1 ? 'An aircraft is not back' : `${count} aircraft are not back`),
    delivery: 'now',
    mayBeOff: false,
  },
  'aircraft-late': {
    title: 'An aircraft you have booked is not back in time',
    heading: (count) =>
      count === 1
        ? 'An aircraft will be late for your flight'
        : `${count} of your flights wait for an aircraft that is late`,
    delivery: 'now',
    mayBeOff: false,
  },
  'standby-offer': {
    title: 'A slot you wait for is offered to you',
    heading: (count) =>
      count === 1 ? 'A slot is offered to you for a while' : `${count} slots are offered to you for a while`,
    delivery: 'now',
    mayBeOff: true,
  },
  'hand-over': {
    title: 'A flight is offered to you by another member',
    heading: (count) => (count === 1 ? 'A flight is offered to you' : `${count} flights are offered to you`),
    delivery: 'now',
    mayBeOff: true,
  },
  lapse: {
    title: 'Something of yours lapses soon',
    heading: (count) =>
      count === 1 ? 'Something of yours lapses soon' : `${count} things of yours lapse soon`,
    delivery: 'now',
    mayBeOff: true,
  },
  'maintenance-due': {
    title: 'An inspection falls due soon',
    heading: (count) => (count === 1 ? 'An inspection falls due soon' : `${count} inspections fall due soon`),
    delivery: 'daily',
    mayBeOff: true,
    for: ['maintenance-coordinator'],
  },
} as const satisfies Record<string, NoticeKind>;

export type KindOfNotice = keyof typeof NOTICE_KINDS;
export const KINDS_OF_NOTICE = Object.keys(NOTICE_KINDS) as KindOfNotice[];

/** A kind by its name; null for one that this release does not know any more. */
export const kindOf = (name: string): NoticeKind | null =>
  (NOTICE_KINDS as Record<string, NoticeKind>)[name] ?? null;

/** How a notice with so many items is headed. */
export const headingOf = (name: string, count: number): string => kindOf(name)?.heading(count) ?? 'A notice';
