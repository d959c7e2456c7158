import type { CertificateLevel } from '../../rules/index.js';
import type { ModelKey } from '../fleet/models.js';
import type { MemberRoleRow } from '../rows.js';

/** A flight that must lie in a member's log, so many days before today. */
export interface Must {
  daysAgo: number;
  model: ModelKey;
  /** `landings`: by day; `night`: after dark, to full stops; `approaches`: under instrument rules; `trip`: away and back. */
  what: 'landings' | 'night' | 'approaches' | 'trip';
  landings?: number;
  approaches?: number;
  /** Key of the instructor aboard. */
  with?: string;
}

/** A model the member is checked out in, and since how many days. */
export interface ModelCheckout {
  model: ModelKey;
  daysAgo: number;
}

/**
 * One member of the club as told: what they hold, since when, how they fly. Every span counts back from today, so the
 * story stays the same whenever it is told.
 */
export interface Story {
  key: string;
  name: string;
  age: number;
  /** Beyond 'member'. */
  roles?: Exclude<MemberRoleRow['role'], 'member'>[];
  joinedMonthsAgo: number;

  level: CertificateLevel;
  certificateMonthsAgo: number;
  multiEngine?: boolean;
  instrument?: boolean;
  /** Flight instructor: ratings, and the month of the newest recent experience. */
  instructor?: {
    ratings: ('airplane-single-engine' | 'airplane-multiengine' | 'instrument-airplane')[];
    experienceMonthsAgo: number;
  };
  /** `runs-out-soon`: so that it ends within six weeks, for a member over forty. */
  medical?: { class: 1 | 2 | 3; monthsAgo: number | 'runs-out-soon'; unverified?: boolean };
  basicMed?: { examMonthsAgo: number; courseMonthsAgo: number };
  reviewMonthsAgo?: number;
  /** Newest club check. */
  checkDaysAgo?: number;
  models: ModelCheckout[];
  /** Shown the changed panel of the converted aircraft, so many days ago. */
  differencesDaysAgo?: number;
  /** A recreational pilot's endorsement to fly within 50 nautical miles of home. */
  nearHome?: boolean;
  /** Student: solo endorsement in the trainer, so many days ago; it holds for 90 days. */
  soloDaysAgo?: number;
  standing?: { state: 'arrears' | 'suspended'; daysAgo: number };
  membershipEndsInDays?: number;

  /** Flights a month in season. */
  rate: number;
  /** No flights in the last so many days, other than those below. */
  quietDays?: number;
  night?: boolean;
  trips?: boolean;
  /** Flies approaches now and then. */
  approaches?: boolean;
  musts?: Must[];
}

/** Days between the sets of approaches that keep instrument privileges from lapsing (14 CFR 61.57(c): six months). */
const SET_EVERY = 150;

/** The flights a story asks for; who flies approaches has kept them up without a gap. */
export function mustsOf(story: Story, span: number, firstIfr: ModelKey | undefined): Must[] {
  const told = story.musts ?? [];
  if (!story.approaches || firstIfr === undefined) return told;
  const newest = Math.min(
    ...told.filter(({ what }) => what === 'approaches').map(({ daysAgo }) => daysAgo),
    45,
  );
  const sets: Must[] = told.some(({ what }) => what === 'approaches') ? [] : [set(firstIfr, newest)];
  for (let daysAgo = newest + SET_EVERY; daysAgo < span - 20; daysAgo += SET_EVERY)
    sets.push(set(firstIfr, daysAgo));
  return [...told, ...sets];
}

const set = (model: ModelKey, daysAgo: number): Must => ({
  daysAgo,
  model,
  what: 'approaches',
  approaches: 6,
});

/** Is the member learning towards a first certificate? */
export const isStudent = (story: Story): boolean => story.level === 'student';
