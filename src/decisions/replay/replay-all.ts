/** Judges stored decisions again, a page at a time, and tells those that do not come out the same. */
import { setImmediate as breathe } from 'node:timers/promises';
import type { SignedIn } from '../../accounts/current-user.js';
import type { TenantDb } from '../../platform/database/tenant.js';
import { THIS_RELEASE, type Release } from '../../rules/index.js';
import { DamagedDecision, readDecisions, type StoredDecision } from '../stored-decision.js';
import { replay, type Replay } from './replay.js';

/** A decision that does not come out the same. */
export interface Different extends Pick<Replay, 'lawKept' | 'differences' | 'parts'> {
  decisionId: string;
}

/** A decision that cannot be judged again. */
export interface Damaged {
  decisionId: string;
  because: string;
}

/** One page of replays. */
export interface ReplayedPage {
  checked: number;
  identical: number;
  different: Different[];
  damaged: Damaged[];
  /** Where the next page begins; null on the last one. */
  nextAfterId: string | null;
}

/** Replays up to `limit` decisions of the viewer's club after an id, in order of id. */
export async function replayPage(
  db: TenantDb,
  viewer: SignedIn,
  page: { afterId: string | null; limit: number },
  release: Release = THIS_RELEASE,
): Promise<ReplayedPage> {
  const { afterId, limit } = page;
  const read = await db.run(viewer.clubId, (em) => readDecisions(em, { afterId, limit: limit + 1 }), {
    readOnly: true,
  });
  const shown = read.slice(0, limit);
  const result: ReplayedPage = {
    ...{ checked: shown.length, identical: 0, different: [], damaged: [] },
    nextAfterId: read.length > limit ? shown.at(-1)!.id : null,
  };
  for (const stored of shown) {
    note(result, stored, viewer, release);
    // Judging takes milliseconds each: others are let through between two of them.
    await breathe();
  }
  return result;
}

function note(
  result: ReplayedPage,
  stored: StoredDecision | DamagedDecision,
  viewer: SignedIn,
  release: Release,
): void {
  try {
    if (stored instanceof DamagedDecision) throw stored;
    const { identical, lawKept, differences, parts } = replay(stored, viewer, release);
    if (identical) result.identical += 1;
    else result.different.push({ decisionId: stored.id, lawKept, differences, parts });
  } catch (error) {
    if (!(error instanceof DamagedDecision)) throw error;
    result.damaged.push({ decisionId: error.id, because: error.because });
  }
}
